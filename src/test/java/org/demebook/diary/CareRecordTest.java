package org.demebook.diary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.demebook.diary.DiaryStory.in;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is written down of an animal, and who sees it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CareRecordTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void a_meal_is_kept_with_what_was_written_and_what_it_means_in_grams() {
        var number = young();

        write(
                        WREN,
                        number,
                        "meal",
                        Map.of(
                                "on",
                                "2026-08-04",
                                "outcome",
                                "taken",
                                "prey",
                                "pinkie mouse",
                                "preyMass",
                                in("0.1", "oz")))
                .statusCode(201)
                .body("record.animal", equalTo(number))
                .body("record.kind", equalTo("meal"))
                .body("record.outcome", equalTo("taken"))
                .body("record.preyMass.grams", equalTo(2.835f))
                .body("record.preyMass.written", equalTo("0.1 oz"))
                .body("record.yours", equalTo(true))
                .body("warnings", nullValue());
    }

    @Test
    void lengths_are_from_snout_to_vent_unless_it_is_said_otherwise() {
        var number = young();

        write(WREN, number, "measures", Map.of("on", "2026-08-04", "length", in("18.5", "in")))
                .statusCode(201)
                .body("record.length.millimetres", equalTo(470))
                .body("record.lengthKind", equalTo("snout-vent"));
    }

    @Test
    void the_list_has_the_latest_first_and_is_read_page_by_page_and_kind_by_kind() {
        var number = young();
        for (var on : List.of("2026-08-04", "2026-08-18", "2026-08-11")) {
            taken(WREN, number, on);
        }
        write(WREN, number, "shed", Map.of("on", "2026-08-12")).statusCode(201);

        var first = colony.get(WREN, "/animals/" + number + "/care-records?limit=2")
                .statusCode(200)
                .body("items.day", contains("2026-08-18", "2026-08-12"));
        String next = first.extract().path("next");
        colony.get(WREN, "/animals/" + number + "/care-records?limit=2&after=" + next)
                .body("items.day", contains("2026-08-11", "2026-08-04"))
                .body("next", nullValue());
        colony.get(WREN, "/animals/" + number + "/care-records?kind=shed").body("items.day", contains("2026-08-12"));
        colony.get(WREN, "/animals/" + number + "/care-records?kind=dream")
                .statusCode(400)
                .body("detail", containsString("health-note"));
        colony.get(WREN, "/animals/" + number + "/care-records?after=MTIz").statusCode(400);
    }

    @Test
    void a_field_that_is_missing_or_of_another_kind_is_told() {
        var number = young();

        write(WREN, number, "meal", Map.of("on", "2026-08-04", "place", "tub 7"))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("findings.field", containsInAnyOrder("outcome", "place"));
        write(WREN, number, "measures", Map.of("on", "2026-08-04")).statusCode(422);
        write(WREN, number, "measures", Map.of("on", "2026-08-04", "mass", in("300", "kg")))
                .statusCode(422)
                .body("detail", containsString("check the unit"));
        write(WREN, number, "meal", Map.of("on", "2026-08-04", "outcome", "eaten"))
                .statusCode(422)
                .body("detail", containsString("taken, assisted or refused"));
        write(WREN, number, "quarantine", Map.of("from", "2026-08-04", "until", "2026-08-03"))
                .statusCode(422)
                .body("detail", containsString("2026-08-03 is before 2026-08-04"));
        colony.get(WREN, "/animals/" + number + "/care-records").body("items", empty());
    }

    @Test
    void a_doubtful_mass_is_saved_with_what_it_may_have_been() {
        var number = young();

        write(WREN, number, "measures", Map.of("on", "2026-06-29", "mass", in("30", "oz")))
                .statusCode(201)
                .body("warnings", hasSize(1))
                .body("warnings[0].level", equalTo("warning"))
                .body("warnings[0].rule", equalTo("measure-unit"))
                .body("warnings[0].field", equalTo("mass"))
                .body("warnings[0].likelier", equalTo("30 g (30.0 g) is likelier."))
                .body("warnings[0].message", containsString("g or oz?"));
        write(WREN, number, "meal", Map.of("on", "2028-08-04", "outcome", "taken"))
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
    }

    @Test
    void a_record_is_corrected_on_the_revision_that_was_read_and_withdrawn_for_good() {
        var number = young();
        var id = taken(WREN, number, "2026-08-04");
        var path = colony.path("/care-records/" + id);
        var etag = as(WREN).get(path).then().statusCode(200).extract().header("ETag");
        var assisted = Map.of("kind", "meal", "on", "2026-08-05", "outcome", "assisted");

        as(WREN).body(assisted).put(path).then().statusCode(428);
        as(WREN).header("If-Match", etag)
                .body(assisted)
                .put(path)
                .then()
                .statusCode(200)
                .body("record.outcome", equalTo("assisted"))
                .body("record.day", equalTo("2026-08-05"));
        as(WREN).header("If-Match", etag).body(assisted).put(path).then().statusCode(412);

        for (int time = 1; time <= 2; time++) {
            colony.post(WREN, "/care-records/" + id + "/withdrawal", "{}")
                    .statusCode(200)
                    .body("withdrawn", equalTo(true));
        }
        colony.get(WREN, "/animals/" + number + "/care-records").body("items", empty());
        colony.get(WREN, "/care-records/" + id).statusCode(200).body("withdrawn", equalTo(true));
        as(WREN).header("If-Match", as(WREN).get(path).header("ETag"))
                .body(assisted)
                .put(path)
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/care-record-withdrawn"));
    }

    @Test
    void a_health_note_is_open_until_it_is_ended_and_a_meal_has_no_end() {
        var number = young();
        String note = write(WREN, number, "health-note", Map.of("on", "2026-08-04", "text", "mites"))
                .statusCode(201)
                .body("record.endedOn", nullValue())
                .extract()
                .path("record.id");
        var meal = taken(WREN, number, "2026-08-04");

        end(note, "2026-08-03").statusCode(422).body("detail", containsString("began on 2026-08-04"));
        end(note, "2028-08-03").statusCode(422).body("type", equalTo("/problems/date-in-future"));
        end(note, "2026-08-20").statusCode(200).body("endedOn", equalTo("2026-08-20"));
        end(meal, "2026-08-20").statusCode(422).body("type", equalTo("/problems/care-record-has-no-end"));
    }

    @Test
    void to_a_fellow_member_nothing_was_written_down() {
        var number = young();
        var id = taken(WREN, number, "2026-08-04");

        colony.get(DOV, "/animals/" + number + "/care-records").statusCode(200).body("items", empty());
        for (var path : List.of("/care-records/" + id, "/care-records/" + UUID.randomUUID())) {
            colony.get(DOV, path).statusCode(404).body("type", equalTo("/problems/no-such-care-record"));
            colony.post(DOV, path + "/withdrawal", "{}").statusCode(404);
        }
        write(DOV, number, "shed", Map.of("on", "2026-08-04"))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void what_is_of_the_animal_goes_with_it_and_the_seller_does_not_see_what_follows() {
        // scenario B1
        var number = young();
        taken(WREN, number, "2026-08-25");
        for (var kind : List.of(
                Map.of("kind", "shed", "on", "2026-07-09"),
                Map.of("kind", "measures", "on", "2026-08-27", "mass", in("41.5", "g")),
                Map.of("kind", "move", "on", "2026-07-08", "place", "rack B, tub 4"),
                Map.of("kind", "health-note", "on", "2026-08-20", "text", "a dry shed"),
                Map.of("kind", "test", "sampledOn", "2026-08-20", "agent", "reptarenavirus", "result", "negative"),
                Map.of("kind", "quarantine", "from", "2026-08-20"))) {
            colony.post(WREN, "/animals/" + number + "/care-records", kind).statusCode(201);
        }
        sell(number);
        var later = taken(INES, number, "2026-09-02");

        colony.get(INES, "/animals/" + number + "/care-records")
                .body("items.kind", containsInAnyOrder("meal", "meal", "shed", "measures", "test"))
                .body("items.find { it.day == '2026-08-25' }.yours", equalTo(false));
        colony.get(WREN, "/animals/" + number + "/care-records")
                .body("items", hasSize(7))
                .body("items.day.findAll { it > '2026-08-29' }", empty());
        colony.get(WREN, "/care-records/" + later).statusCode(404);
        colony.get(DOV, "/animals/" + number + "/care-records").body("items", empty());
    }

    @Test
    void only_who_wrote_it_corrects_it_wherever_the_animal_is() {
        var number = young();
        var id = taken(WREN, number, "2026-08-25");
        sell(number);

        colony.post(INES, "/care-records/" + id + "/withdrawal", "{}")
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
        colony.post(WREN, "/care-records/" + id + "/withdrawal", "{}").statusCode(200);
        colony.get(INES, "/care-records/" + id).statusCode(404);
        write(WREN, number, "shed", Map.of("on", "2026-08-28")).statusCode(403);
    }

    @Test
    void nothing_is_written_down_under_a_number_for_which_another_stands() {
        var older = colony.female(WREN);
        var younger = colony.female(WREN);
        String claim = colony.post(WREN, "/animals/" + younger + "/same-animal-claims", Map.of("other", older))
                .statusCode(201)
                .extract()
                .path("id");
        colony.post(WREN, "/same-animal-claims/" + claim + "/confirmation", "{}")
                .statusCode(200);

        write(WREN, younger, "shed", Map.of("on", "2026-08-28"))
                .statusCode(409)
                .body("type", equalTo("/problems/animal-merged"))
                .body("detail", containsString(older));
    }

    @Test
    void sent_again_it_has_one_effect() {
        var number = young();
        var record = Map.of("kind", "shed", "on", "2026-07-09");
        var key = UUID.randomUUID().toString();
        var path = colony.path("/animals/" + number + "/care-records");

        String first = as(WREN, key)
                .body(record)
                .post(path)
                .then()
                .statusCode(201)
                .extract()
                .path("record.id");
        String again = as(WREN, key)
                .body(record)
                .post(path)
                .then()
                .statusCode(201)
                .extract()
                .path("record.id");

        assertThat(again).isEqualTo(first);
        colony.get(WREN, "/animals/" + number + "/care-records").body("items", hasSize(1));
    }

    private static String young() {
        return colony.register(WREN, animal("male", "2026-06-29"));
    }

    private static ValidatableResponse write(String keeper, String number, String kind, Map<String, ?> fields) {
        var record = new HashMap<String, Object>(fields);
        record.put("kind", kind);
        return colony.post(keeper, "/animals/" + number + "/care-records", record);
    }

    private static String taken(String keeper, String number, String on) {
        return write(keeper, number, "meal", Map.of("on", on, "outcome", "taken"))
                .statusCode(201)
                .extract()
                .path("record.id");
    }

    private static ValidatableResponse end(String id, String on) {
        return colony.post(WREN, "/care-records/" + id + "/end", Map.of("on", on));
    }

    private static void sell(String number) {
        String id = colony.post(
                        WREN,
                        "/transfers",
                        Map.of("animal", number, "kind", "sale", "to", INES, "handedOverOn", "2026-08-29"))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);
    }
}
