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
