package org.demebook.breeding;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.breeding.Notes.note;
import static org.demebook.breeding.Notes.noted;
import static org.demebook.breeding.Notes.sign;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What was seen of a female's cycle. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class BreedingSignTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void signs_are_noted_and_listed_the_latest_noted_first() {
        var female = colony.female(WREN);
        var male = colony.male(INES);

        note(colony, WREN, female, sign("copulation", "2026-01-20", Map.of("male", male)))
                .statusCode(201)
                .body("sign.male", equalTo(male))
                .body("sign.howKnown", equalTo("seen"))
                .body("warnings", nullValue());
        noted(colony, WREN, female, sign("ovulation", "2026-02-24"));
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14", Map.of("howKnown", "skin-found")));
        colony.get(WREN, "/animals/" + female + "/breeding-signs")
                .statusCode(200)
                .body("items.kind", contains("post-ovulation-shed", "ovulation", "copulation"));
        colony.get(WREN, "/animals/" + female + "/breeding-signs?limit=1")
                .body("items", hasSize(1))
                .body("next", notNullValue());
    }

    @Test
    void a_correction_takes_the_place_of_what_was_noted_on_the_revision_that_was_read() {
        var female = colony.female(WREN);
        var id = noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-15"));
        var etag = as(WREN).get(colony.path("/breeding-signs/" + id)).header("ETag");
        var corrected = sign("post-ovulation-shed", "2026-03-14", Map.of("howKnown", "skin-found"));

        as(WREN).body(corrected)
                .put(colony.path("/breeding-signs/" + id))
                .then()
                .statusCode(428);
        for (int status : new int[] {200, 412}) {
            as(WREN).header("If-Match", etag)
                    .body(corrected)
                    .put(colony.path("/breeding-signs/" + id))
                    .then()
                    .statusCode(status);
        }
        colony.get(WREN, "/animals/" + female + "/due-window?onDay=2026-06-01")
                .body("due.countedFromOn", equalTo("2026-03-14"))
                .body("due.expectedOn", equalTo("2026-06-27"));
    }

    @Test
    void a_withdrawn_sign_counts_for_nothing() {
        var female = colony.female(WREN);
        var id = noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-15"));

        for (int again = 0; again < 2; again++) {
            colony.post(WREN, "/breeding-signs/" + id + "/withdrawal", Map.of("reason", "an ordinary shed"))
                    .statusCode(200)
                    .body("withdrawn", equalTo(true));
        }
        colony.get(WREN, "/animals/" + female + "/breeding-signs").body("items", hasSize(0));
        colony.get(WREN, "/animals/" + female + "/due-window?onDay=2026-06-01")
                .body("gravid", equalTo(false))
                .body("due", nullValue());
        as(WREN).header(
                        "If-Match",
                        as(WREN).get(colony.path("/breeding-signs/" + id)).header("ETag"))
                .body(sign("post-ovulation-shed", "2026-03-14"))
                .put(colony.path("/breeding-signs/" + id))
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/record-withdrawn"));
    }

    @Test
    void a_second_shed_in_one_cycle_is_saved_with_the_question_which_one_is_ordinary() {
        var female = colony.female(WREN);
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14"));

        note(colony, WREN, female, sign("post-ovulation-shed", "2026-04-20"))
                .statusCode(201)
                .body("warnings", hasSize(1))
                .body("warnings[0].message", containsString("ordinary shed"));
    }

    @Test
    void what_does_not_belong_to_the_kind_of_sign_is_refused() {
        var female = colony.female(WREN);

        note(colony, WREN, female, sign("ovulation", "2026-02-24", Map.of("male", colony.male(WREN))))
                .statusCode(422)
                .body("detail", containsString("Only a copulation"));
        note(colony, WREN, female, sign("ovulation", "2026-02-24", Map.of("eggs", 4)))
                .statusCode(422)
                .body("detail", containsString("Only a laying"));
        note(colony, WREN, female, sign("ovulation", "2026-02-24", Map.of("howKnown", "skin-found")))
                .statusCode(422)
                .body("detail", containsString("Only a shed"));
        note(colony, WREN, female, sign("labour-started", "2026-02-24", Map.of("happenedAt", "2026-02-26T12:00:00Z")))
                .statusCode(422)
                .body("detail", containsString("not on 2026-02-24 anywhere on earth"));
        note(colony, WREN, female, sign("copulation", "2026-02-24", Map.of("male", colony.female(WREN))))
                .statusCode(422)
                .body("type", equalTo("/problems/sire-not-male"));
        note(colony, WREN, colony.male(WREN), sign("ovulation", "2026-02-24"))
                .statusCode(422)
                .body("type", equalTo("/problems/dam-not-female"));
    }

    @Test
    void only_who_holds_the_female_notes_and_others_see_no_sign() {
        var female = colony.female(WREN);
        var id = noted(colony, WREN, female, sign("ovulation", "2026-02-24"));

        note(colony, INES, female, sign("ovulation", "2026-02-24"))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        colony.get(INES, "/animals/" + female + "/breeding-signs")
                .statusCode(200)
                .body("items", hasSize(0));
        colony.get(INES, "/breeding-signs/" + id)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-breeding-sign"));
        colony.post(INES, "/breeding-signs/" + id + "/withdrawal", Map.of()).statusCode(404);
        colony.get(INES, "/animals/" + female + "/due-window")
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        colony.get(INES, "/animals/" + female + "/candidate-sires").statusCode(403);
    }
}
