package org.demebook.web.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The young of a litter side by side, and what is written down of them. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class RearingPageTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    private Colony colony;
    private String board;
    private List<String> young;

    @BeforeEach
    void bear() {
        colony = Colony.found();
        var litter = new HashMap<String, Object>();
        litter.put("dam", colony.female(WREN));
        litter.put("sire", Map.of("kind", "unknown"));
        litter.put("born", TODAY.minusDays(30).toString());
        litter.put("liveBorn", 3);
        litter.put("stillborn", 0);
        litter.put("unfertilised", 0);
        litter.put("ovaFound", 3);
        var born = colony.post(WREN, "/litters", litter).statusCode(201).extract();
        board = "/litters/" + born.path("litter.id") + "/rearing";
        young = born.path("litter.young");
    }

    @Test
    void a_tap_writes_down_what_one_young_did_and_its_card_comes_back_alone() {
        var after = post(
                        "/care-records/taps",
                        Map.of(
                                "animal[]",
                                young.get(1),
                                "tap",
                                "shed",
                                "back",
                                base() + board + "?young=" + young.get(1)))
                .statusCode(303)
                .extract()
                .header("Location");
        records(young.get(1)).body("items[0].kind", equalTo("shed"));
        Browsing.as(WREN)
                .header("HX-Request", "true")
                .get(after)
                .then()
                .statusCode(200)
                .body(allOf(
                        containsString(young.get(1) + ": Shed"),
                        containsString("Take back"),
                        not(containsString(young.get(0))),
                        not(containsString("<html"))));
        get(board).body(containsString("class=\"young-grid\""), containsString(young.get(0)));
    }

    @Test
    void who_was_fed_least_stands_first() {
        write(young.get(0), Map.of("kind", "meal", "on", TODAY.minusDays(2).toString(), "outcome", "taken"));
        write(young.get(1), Map.of("kind", "meal", "on", TODAY.minusDays(9).toString(), "outcome", "refused"));
        var page = get(board).statusCode(200).extract().asString();
        assertThat(page)
                .containsSubsequence(
                        "id=\"y-" + young.get(2), "no meal yet",
                        "id=\"y-" + young.get(1), "refused 9 days ago",
                        "id=\"y-" + young.get(0), "ate 2 days ago");
    }

    @Test
    void a_litter_is_weighed_with_those_left_out_that_were_not_on_the_scales() {
        var form = Map.of(
                "on",
                TODAY.toString(),
                "unit",
                "g",
                "records[0].animal",
                young.get(0),
                "records[0].mass.value",
                "",
                "records[1].animal",
                young.get(1),
                "records[1].mass.value",
                "24,5",
                "records[2].animal",
                young.get(2),
                "records[2].mass.value",
                "heavy");
        post(board + "/weighing", form)
                .statusCode(422)
                .body(
                        containsString("value=\"heavy\""),
                        containsString("id=\"e-m-2\""),
                        not(containsString("id=\"e-m-1\"")));
        records(young.get(1)).body("items", hasSize(0));

        var right = new HashMap<>(form);
        right.put("records[2].mass.value", "25");
        var after = post(board + "/weighing", right).statusCode(303).extract().header("Location");
        records(young.get(0)).body("items", hasSize(0));
        records(young.get(1)).body("items[0].mass.written", equalTo("24.5 g"));
        Browsing.as(WREN).get(after).then().body(containsString("2 animals: Mass and length"));
    }

    @Test
    void the_form_of_every_kind_says_at_its_fields_what_is_missing() {
        for (var kind : RecordKind.all()) {
            get("/care-records/new?animal=" + young.get(0) + "&kind=" + kind.word())
                    .statusCode(200);
            var needed = kind == RecordKind.TEST ? "agent" : kind == RecordKind.QUARANTINE ? "from" : "on";
            post("/care-records", Map.of("kind", kind.word(), "animal", young.get(0)))
                    .statusCode(422)
                    .body(containsString("id=\"e-" + needed + "\""), containsString("value=\"" + young.get(0) + "\""));
        }
    }

    @Test
    void a_record_is_written_corrected_on_what_was_read_and_withdrawn() {
        post(
                        "/care-records",
                        Map.of(
                                "animal",
                                young.get(0),
                                "kind",
                                "measures",
                                "on",
                                TODAY.toString(),
                                "mass.value",
                                "1,1",
                                "mass.unit",
                                "oz",
                                "length.unit",
                                "cm",
                                "lengthKind",
                                "total"))
                .statusCode(303);
        String id = records(young.get(0))
                .body("items[0].mass.written", equalTo("1.1 oz"))
                .extract()
                .path("items[0].id");
        var page = get("/care-records/" + id).statusCode(200).extract().asString();
        assertThat(page).contains("value=\"1.1\"", "value=\"oz\" selected");
        var revision = page.replaceAll("(?s).*name=\"revision\" value=\"(\\d+)\".*", "$1");

        var anew = Map.of(
                "kind", "measures", "on", TODAY.toString(), "mass.value", "30", "mass.unit", "g", "revision", revision);
        post("/care-records/" + id, anew).statusCode(303);
        records(young.get(0)).body("items[0].mass.written", equalTo("30 g"));
        // somebody who read it before that is told
        post("/care-records/" + id, anew).statusCode(422).body(containsString("value=\"30\""));

        post("/care-records/" + id + "/withdrawal", Map.of()).statusCode(303);
        records(young.get(0)).body("items", hasSize(0));
    }

    @Test
    void what_is_worth_a_second_look_is_told_after_it_was_saved() {
        write(
                young.get(0),
                Map.of(
                        "kind",
                        "measures",
                        "on",
                        TODAY.minusDays(7).toString(),
                        "mass",
                        Map.of("value", 30, "unit", "g")));
        var after = post(
                        "/care-records",
                        Map.of(
                                "animal",
                                young.get(0),
                                "kind",
                                "measures",
                                "on",
                                TODAY.toString(),
                                "mass.value",
                                "20",
                                "mass.unit",
                                "g"))
                .statusCode(303)
                .extract()
                .header("Location");
        Browsing.as(WREN).get(after).then().body(containsString("Worth a second look"));
    }

    @Test
    void to_somebody_else_neither_the_board_nor_a_record_exists() {
        write(young.get(0), Map.of("kind", "move", "on", TODAY.toString(), "place", "the blue tub"));
        String id = records(young.get(0)).extract().path("items[0].id");
        Browsing.as(INES).get(base() + board).then().statusCode(404);
        Browsing.as(INES).get(base() + "/care-records/" + id).then().statusCode(404);
        Browsing.as(INES)
                .get(base() + "/animals/" + young.get(0) + "/care-records")
                .then()
                .body(not(containsString("the blue tub")));
        Browsing.as(INES)
                .queryParam("once", UUID.randomUUID())
                .formParam("animal[]", young.get(0))
                .formParam("tap", "ate")
                .post(base() + "/care-records/taps")
                .then()
                .statusCode(422)
                .body(containsString("is not in a collection of yours"));
        records(young.get(0)).body("items", hasSize(1));
    }

    private String base() {
        return "/populations/" + colony.code;
    }

    private ValidatableResponse get(String below) {
        return Browsing.as(WREN).get(base() + below).then();
    }

    private ValidatableResponse post(String below, Map<String, ?> form) {
        return Browsing.as(WREN)
                .contentType("application/x-www-form-urlencoded")
                .queryParam("once", UUID.randomUUID())
                .formParams(form)
                .post(base() + below)
                .then();
    }

    private void write(String animal, Map<String, Object> record) {
        colony.post(WREN, "/animals/" + animal + "/care-records", record).statusCode(201);
    }

    private ValidatableResponse records(String animal) {
        return colony.get(WREN, "/animals/" + animal + "/care-records");
    }
}
