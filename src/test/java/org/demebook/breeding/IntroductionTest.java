package org.demebook.breeding;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.breeding.Notes.introduce;
import static org.demebook.breeding.Notes.introduction;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Who was put together with whom. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class IntroductionTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void an_introduction_is_opened_ended_and_corrected_on_the_revision_that_was_read() {
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        var id = introduce(colony, WREN, female, male, "2026-01-05", null);

        colony.get(WREN, "/introductions/" + id)
                .statusCode(200)
                .body("female", equalTo(female))
                .body("male", equalTo(male))
                .body("fromOn", equalTo("2026-01-05"))
                .body("untilOn", nullValue());
        var end = Map.of("untilOn", "2026-02-20");
        colony.post(WREN, "/introductions/" + id + "/end", end).statusCode(200).body("untilOn", equalTo("2026-02-20"));
        colony.post(WREN, "/introductions/" + id + "/end", end).statusCode(200);
        colony.post(WREN, "/introductions/" + id + "/end", Map.of("untilOn", "2026-02-21"))
                .statusCode(409)
                .body("type", equalTo("/problems/introduction-ended"));

        var etag = as(WREN).get(colony.path("/introductions/" + id)).header("ETag");
        var days = Map.of("fromOn", "2026-01-06", "untilOn", "2026-02-19");
        for (int status : new int[] {200, 412}) {
            as(WREN).header("If-Match", etag)
                    .body(days)
                    .put(colony.path("/introductions/" + id))
                    .then()
                    .statusCode(status);
        }
        colony.get(WREN, "/introductions/" + id)
                .body("fromOn", equalTo("2026-01-06"))
                .body("untilOn", equalTo("2026-02-19"));
    }

    @Test
    void one_male_may_be_with_two_females_and_a_female_with_two_males_is_worth_a_second_look() {
        var male = colony.male(WREN);
        var female = colony.female(WREN);
        introduce(colony, WREN, female, male, "2026-01-05", null);

        colony.post(WREN, "/introductions", introduction(colony.female(WREN), male, "2026-01-05", null))
                .statusCode(201)
                .body("warnings", nullValue());
        var second = colony.male(WREN);
        colony.post(WREN, "/introductions", introduction(female, second, "2026-02-01", null))
                .statusCode(201)
                .body("warnings", hasSize(1))
                .body("warnings[0].message", containsString("both will be candidates"));
        colony.get(WREN, "/introductions?animal=" + female + "&open=true")
                .statusCode(200)
                .body("items.male", contains(second, male));
    }

    /** Rule 27 of the trade's catalogue; 90 days are the profile's (common practice, no source). */
    @Test
    void an_animal_that_is_paired_before_its_quarantine_is_over_is_warned_of() {
        var male = colony.male(WREN);
        String noted = quarantine(male, "2026-01-05");

        paired(male, "2026-02-01")
                .body("warnings.rule", contains("quarantine-after-pairing"))
                .body("warnings[0].level", equalTo("warning"))
                .body("warnings[0].message", containsString(male + " is in quarantine from 2026-01-05"))
                .body("warnings[0].message", containsString("90 days here, until 2026-04-05"));
        paired(male, "2026-04-04").body("warnings.rule", contains("quarantine-after-pairing"));
        paired(male, "2026-04-05").body("warnings", nullValue());
        paired(male, "2026-01-04").body("warnings", nullValue());
        colony.post(WREN, "/care-records/" + noted + "/end", Map.of("on", "2026-02-01"))
                .statusCode(200);
        paired(male, "2026-02-01").body("warnings", nullValue());
        paired(male, "2026-01-31").body("warnings[0].message", containsString("which ended on 2026-02-01"));
    }

    @Test
    void a_newcomer_without_a_quarantine_is_warned_of_until_one_is_noted() {
        var female = colony.female(INES);
        var offer = Map.of("animal", female, "kind", "sale", "to", WREN);
        String transfer = colony.post(INES, "/transfers", offer).extract().path("transfer.id");
        colony.post(WREN, "/transfers/" + transfer + "/acceptance", Map.of("handedOverOn", "2026-08-01"))
                .statusCode(200);

        var male = colony.male(WREN);
        colony.post(WREN, "/introductions", introduction(female, male, "2026-08-20", "2026-08-21"))
                .statusCode(201)
                .body("warnings.rule", contains("quarantine-after-pairing"))
                .body("warnings[0].message", containsString(female + " came on 2026-08-01"))
                .body("warnings[0].message", containsString("until 2026-10-30"));
        colony.post(WREN, "/introductions", introduction(female, male, "2026-10-30", "2026-10-31"))
                .statusCode(201)
                .body("warnings", nullValue());
        var id = quarantine(female, "2026-08-01");
        colony.post(WREN, "/care-records/" + id + "/end", Map.of("on", "2026-08-30"))
                .statusCode(200);
        colony.post(WREN, "/introductions", introduction(female, male, "2026-09-01", "2026-09-02"))
                .statusCode(201)
                .body("warnings", nullValue());
    }

    private static String quarantine(String animal, String from) {
        return colony.post(WREN, "/animals/" + animal + "/care-records", Map.of("kind", "quarantine", "from", from))
                .statusCode(201)
                .extract()
                .path("record.id");
    }

    private static ValidatableResponse paired(String male, String fromOn) {
        return colony.post(WREN, "/introductions", introduction(colony.female(WREN), male, fromOn, null))
                .statusCode(201);
    }

    @Test
    void the_same_two_are_not_recorded_together_twice_at_a_time() {
        var male = colony.male(WREN);
        var female = colony.female(WREN);
        introduce(colony, WREN, female, male, "2026-01-05", "2026-02-20");

        colony.post(WREN, "/introductions", introduction(female, male, "2026-02-20", null))
                .statusCode(422)
                .body("type", equalTo("/problems/introduction-overlaps"))
                .body("detail", containsString("2026-01-05"));
        introduce(colony, WREN, female, male, "2026-02-21", null);
    }

    @Test
    void what_never_took_place_is_withdrawn_and_counts_for_nothing() {
        var male = colony.male(WREN);
        var female = colony.female(WREN);
        var id = introduce(colony, WREN, female, male, "2026-01-05", null);

        for (int again = 0; again < 2; again++) {
            colony.post(WREN, "/introductions/" + id + "/withdrawal", Map.of("reason", "another female"))
                    .statusCode(200)
                    .body("withdrawn", equalTo(true));
        }
        colony.get(WREN, "/introductions?animal=" + female).body("items", hasSize(0));
        colony.post(WREN, "/introductions/" + id + "/end", Map.of("untilOn", "2026-02-20"))
                .statusCode(409)
                .body("type", equalTo("/problems/record-withdrawn"));
        introduce(colony, WREN, female, male, "2026-01-10", null);
    }

    @Test
    void both_animals_are_in_the_hands_of_who_records_and_of_the_right_sex_and_alive() {
        var female = colony.female(WREN);
        var male = colony.male(WREN);

        colony.post(WREN, "/introductions", introduction(female, colony.male(INES), "2026-01-05", null))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        colony.post(WREN, "/introductions", introduction(male, female, "2026-01-05", null))
                .statusCode(422)
                .body("type", equalTo("/problems/dam-not-female"))
                .body("findings", hasSize(2));
        colony.put(WREN, male, "/death", Map.of("on", "2025-11-02")).statusCode(200);
        colony.post(WREN, "/introductions", introduction(female, male, "2026-01-05", null))
                .statusCode(422)
                .body("detail", containsString("died on 2025-11-02"));
        introduce(colony, WREN, female, male, "2025-10-01", "2025-11-02");
    }

    @Test
    void days_that_have_not_come_or_lie_the_wrong_way_round_are_refused_with_both() {
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        var future = LocalDate.now().plusDays(3).toString();

        colony.post(WREN, "/introductions", introduction(female, male, future, null))
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
        colony.post(WREN, "/introductions", introduction(female, male, "2026-02-20", "2026-01-05"))
                .statusCode(422)
                .body("detail", containsString("2026-02-20"))
                .body("detail", containsString("2026-01-05"));
        colony.post(WREN, "/introductions", introduction(female, male, "2019-02-20", null))
                .statusCode(422)
                .body("detail", containsString("born on 2020-06-01"));
    }

    @Test
    void to_others_there_is_no_introduction_until_they_hold_the_female() {
        var female = colony.female(WREN);
        var id = introduce(colony, WREN, female, colony.male(WREN), "2026-01-05", null);

        colony.get(INES, "/introductions/" + id)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-introduction"));
        colony.post(INES, "/introductions/" + id + "/end", Map.of("untilOn", "2026-02-20"))
                .statusCode(404);
        colony.get(INES, "/introductions?animal=" + female).statusCode(200).body("items", hasSize(0));
        colony.get(OUTSIDER, "/introductions/" + id)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-population"));

        sell(female, DOV);
        colony.get(DOV, "/introductions/" + id).statusCode(200);
        colony.post(DOV, "/introductions/" + id + "/withdrawal", Map.of())
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
    }

    private static void sell(String animal, String to) {
        var offer = new HashMap<String, Object>(
                Map.of("animal", animal, "kind", "sale", "to", to, "handedOverOn", "2026-03-29"));
        String id =
                colony.post(WREN, "/transfers", offer).statusCode(201).extract().path("transfer.id");
        String collection = colony.get(to, "/collections").extract().path("[0].id");
        colony.post(to, "/transfers/" + id + "/acceptance", Map.of("collection", collection))
                .statusCode(200);
    }
}
