package org.demebook.web.season;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.stringContainsInOrder;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.programme.Seasons;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What keepers and coordinators see and do on the pages of the season. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonPageTest {
    private static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);

    static Marrowfin own;
    static Colony colony;
    static Seasons seasons;

    /** A plan with 013, wren's, by 006, oyelaran's. */
    @BeforeAll
    static void planned() {
        own = Marrowfin.settled();
        colony = own.colony;
        seasons = Seasons.of(colony);
        issue();
    }

    private static String issue() {
        return seasons.issued(Map.of(
                "pairOn",
                PAIR_ON,
                "litters",
                2,
                "together",
                List.of(
                        Map.of("dam", own.number(20), "sire", own.number(14)),
                        Map.of("dam", own.number(13), "sire", own.number(6)))));
    }

    @Test
    void one_tap_accepts_and_the_page_says_so() {
        var plan = issue();
        var litter = litter(plan, 13);
        see(WREN, "/season").statusCode(200).body(containsString("/litters/" + litter + "/answer"));
        answer(WREN, plan, litter, Map.of("answer", "accept"))
                .statusCode(303)
                .header("Location", endsWith("/season#recommendations"));
        answer(OYELARAN, plan, litter, Map.of("answer", "accept")).statusCode(303);
        see(WREN, "/season").body(containsString("racks by the door"), containsString(OYELARAN));
    }

    @Test
    void a_reason_is_an_answer_and_its_note_is_for_coordinators() {
        var plan = issue();
        var litter = litter(plan, 20);
        answer(DOV, plan, litter, Map.of("reason", "no-room", "note", "The rack is full."))
                .statusCode(303);
        see(WREN, "/season-plans/" + plan + "/answers")
                .statusCode(200)
                .body(containsString("The rack is full."), containsString("no room"));
        see(INES, "/season-plans/" + plan)
                .statusCode(200)
                .body(containsString("not this year"), not(containsString("The rack is full.")));
    }

    @Test
    void an_answer_without_a_reason_is_shown_again_with_its_note() {
        var plan = issue();
        answer(WREN, plan, litter(plan, 13), Map.of("note", "Let me think."))
                .statusCode(422)
                .body(containsString("Let me think."), containsString("aria-invalid=\"true\""));
    }

    @Test
    void what_is_asked_of_others_is_not_on_the_page_of_a_member() {
        var plan = issue();
        see(INES, "/season")
                .statusCode(200)
                .body(containsString(litter(plan, 20)), not(containsString(litter(plan, 13))))
                .body(not(containsString("season-drafts")));
        see(INES, "/season-drafts").statusCode(403);
        see(INES, "/season-plans/" + plan + "/answers").statusCode(403);
        see(INES, "/season-plans/" + plan + "/outlook").statusCode(403);
    }

    @Test
    void a_coordinator_sees_the_two_figures_with_the_bound_and_what_each_litter_adds() {
        var plan = colony.get(WREN, "/season-plans/" + inForce()).extract();
        see(WREN, "/season")
                .statusCode(200)
                .body(containsString("%.4f".formatted(plan.<Float>path("geneDiversityAfter"))))
                .body(containsString("%.4f".formatted(plan.<Float>path("geneDiversityAtBest"))))
                .body(containsString(plan.<String>path("computedFrom")));
        see(WREN, "/season-plans/" + inForce() + "/recomputation")
                .statusCode(200)
                .body(containsString("notice good"));
        see(WREN, "/season-plans/" + inForce() + "/outcome").statusCode(200).body(containsString(own.number(13)));
    }

    @Test
    void a_draft_that_was_asked_for_twice_is_computed_once_is_held_against_the_plan_and_issued() {
        var once = UUID.randomUUID().toString();
        var first = ask(once, own.number(13) + " " + own.number(14))
                .statusCode(303)
                .extract()
                .header("Location");
        ask(once, own.number(13) + " " + own.number(14)).statusCode(303).header("Location", equalTo(first));
        var draft = first.substring(first.lastIndexOf('/') + 1);
        seasons.over(draft).body("state", equalTo("ready"));
        see(WREN, "/season-drafts/" + draft)
                .statusCode(200)
                .body(stringContainsInOrder(own.number(13), own.number(14)))
                .body(containsString("/season-plans?once="));
        see(WREN, "/season-drafts/new?from=" + draft)
                .statusCode(200)
                .body(
                        containsString(own.number(13) + " " + own.number(14)),
                        containsString("value=\"" + PAIR_ON + "\""));
        var key = UUID.randomUUID().toString();
        for (int sent = 0; sent < 2; sent++) {
            Browsing.as(WREN)
                    .formParam("draft", draft)
                    .post(page("/season-plans?once=" + key))
                    .then()
                    .statusCode(303)
                    .header("Location", endsWith("/season"));
        }
        see(WREN, "/season").body(containsString("/litters/" + litter(inForce(), 13) + "/answer"));
    }

    @Test
    void a_draft_that_cannot_be_asked_for_so_keeps_what_was_typed_and_says_why() {
        ask(UUID.randomUUID().toString(), own.number(13) + " MC-H-9999-X")
                .statusCode(422)
                .body(containsString("MC-H-9999-X"), containsString("role=\"alert\""));
        Browsing.as(WREN)
                .formParam("pairOn", "in spring")
                .formParam("littersAtMost", "9999")
                .post(page("/season-drafts?once=" + UUID.randomUUID()))
                .then()
                .statusCode(422)
                .body(containsString("id=\"e-pairOn\""), containsString("id=\"e-littersAtMost\""));
    }

    @Test
    void imagined_founders_are_looked_at_and_not_issued() {
        var draft = seasons.draft(Map.of("pairOn", PAIR_ON, "litters", 1, "whatIf", Map.of("newMales", 1)))
                .extract()
                .<String>path("id");
        see(WREN, "/season-drafts/" + draft).statusCode(200).body(not(containsString("/season-plans?once=")));
    }

    @Test
    void years_ahead_are_reckoned_when_somebody_asks() {
        var address = "/season-plans/" + inForce() + "/outlook";
        see(WREN, address).statusCode(200).body(not(containsString("<svg class=\"plot-svg")));
        see(WREN, address + "?seasons=3&target=0.5").statusCode(200).body(containsString("<svg class=\"plot-svg"));
        see(WREN, address + "?seasons=300")
                .statusCode(422)
                .body(containsString("id=\"e-seasons\""), containsString("value=\"300\""));
    }

    @Test
    void where_no_plan_was_issued_the_page_says_what_to_do() {
        var young = Colony.found();
        Browsing.as(INES)
                .get("/populations/" + young.code + "/season")
                .then()
                .statusCode(200)
                .body(containsString("class=\"empty\""));
    }

    private static String inForce() {
        return colony.get(WREN, "/season-plans").extract().path("items[0].id");
    }

    private static String litter(String plan, int dam) {
        return colony.get(WREN, "/season-plans/" + plan)
                .statusCode(200)
                .extract()
                .path("litters.find { it.dam == '" + own.number(dam) + "' }.id");
    }

    private static ValidatableResponse ask(String once, String together) {
        return Browsing.as(WREN)
                .formParam("pairOn", PAIR_ON.toString())
                .formParam("littersAtMost", "2")
                .formParam("togetherLines", together)
                .post(page("/season-drafts?once=" + once))
                .then();
    }

    private static ValidatableResponse answer(String keeper, String plan, String litter, Map<String, String> fields) {
        return Browsing.as(keeper)
                .formParams(fields)
                .post(page("/season-plans/" + plan + "/litters/" + litter + "/answer"))
                .then();
    }

    private static ValidatableResponse see(String keeper, String below) {
        return Browsing.as(keeper).get(page(below)).then();
    }

    private static String page(String below) {
        return "/populations/" + colony.code + below;
    }
}
