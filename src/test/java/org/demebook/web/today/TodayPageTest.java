package org.demebook.web.today;

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
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.care.CareKind;
import org.demebook.care.GivenTasks;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is due is there, one tap does it, another takes it back; with script and without. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class TodayPageTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    private Colony colony;
    private String animal;

    @BeforeEach
    void found() {
        colony = Colony.found();
        animal = colony.female(WREN);
    }

    @Test
    void tasks_stand_under_late_today_and_the_next_days_and_births_by_themselves() {
        GivenTasks.give(colony, CareKind.BEDDING, animal, TODAY.minusDays(3));
        GivenTasks.give(colony, CareKind.WEIGHING, animal, TODAY);
        GivenTasks.give(colony, CareKind.LABOUR_CHECK, animal, TODAY.plusDays(2));
        GivenTasks.give(
                colony, CareKind.DUE_WINDOW, animal, TODAY.plusDays(90), TODAY.plusDays(85), TODAY.plusDays(105));
        var page = get(WREN, "/today").statusCode(200).extract().asString();
        assertThat(page)
                .containsSubsequence(
                        "<h2>Late</h2>",
                        "3 days late",
                        "Change the bedding",
                        "<h2>Today</h2>",
                        "Weigh",
                        "<h2>Next days</h2>",
                        "Look at the labour",
                        "<h2>Expected births</h2>",
                        "/litters/new?dam=" + animal);
        get(INES, "/today").body(not(containsString(animal)));
    }

    @Test
    void a_tap_says_that_the_animal_ate_and_another_takes_it_back() {
        GivenTasks.give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var once = UUID.randomUUID();
        var tap = Map.of("animal[]", animal, "tap", "ate", "back", base() + "/today");
        var written =
                post("/care-records/taps", once, tap).statusCode(303).extract().header("Location");
        // sent again, it is one meal
        post("/care-records/taps", once, tap).statusCode(303);
        records().body("items", hasSize(1)).body("items[0].outcome", equalTo("taken"));

        Browsing.as(WREN)
                .get(written)
                .then()
                .statusCode(200)
                .body(containsString("class=\"undo\""), containsString(animal + ": Meal, taken"));
        var entries = written.substring(written.indexOf("written=") + "written=".length());
        post("/care-records/withdrawal", UUID.randomUUID(), Map.of("written", entries, "back", base() + "/today"))
                .statusCode(303);
        records().body("items", hasSize(0));
    }

    @Test
    void a_part_of_the_page_takes_the_place_of_the_line_that_was_tapped() {
        var key = GivenTasks.give(colony, CareKind.BEDDING, animal, TODAY);
        var after = post("/care-tasks/" + key + "/completion", UUID.randomUUID(), Map.of())
                .statusCode(303)
                .extract()
                .header("Location");
        Browsing.as(WREN)
                .header("HX-Request", "true")
                .get(after)
                .then()
                .statusCode(200)
                .body(allOf(containsString("<li"), containsString("Take back"), not(containsString("<html"))));
        Browsing.as(WREN).get(after).then().body(containsString("class=\"undo\""));

        var back = post("/care-tasks/restorations", UUID.randomUUID(), Map.of("keys[]", key))
                .statusCode(303)
                .extract()
                .header("Location");
        Browsing.as(WREN)
                .header("HX-Request", "true")
                .get(back)
                .then()
                .body(containsString("Change the bedding"), not(containsString("<html")));
    }

    @Test
    void many_of_a_kind_are_one_line_and_are_done_by_one_tap_where_nothing_was_done_yet() {
        var rack = List.of(colony.male(WREN), colony.male(WREN), animal);
        rack.forEach(one -> GivenTasks.give(colony, CareKind.NEXT_MEAL, one, TODAY));
        get(WREN, "/today").body(containsString("3 animals"), containsString("All ate"));

        post("/care-records/taps", UUID.randomUUID(), Map.of("animal[]", animal, "tap", "refused", "back", "/"))
                .statusCode(303);
        var all = Browsing.as(WREN)
                .queryParam("once", UUID.randomUUID())
                .formParam("animal[]", rack)
                .formParam("tap", "ate")
                .formParam("back", base() + "/today")
                .post(base() + "/care-records/taps")
                .then()
                .statusCode(303)
                .extract()
                .header("Location");
        records().body("items.outcome", equalTo(List.of("refused")));
        Browsing.as(WREN).get(all).then().body(containsString("2 animals: Meal"));
    }

    @Test
    void a_task_is_moved_and_silenced_and_what_is_wrong_about_it_is_told_at_the_field() {
        var key = GivenTasks.give(colony, CareKind.BEDDING, animal, TODAY);
        post("/care-tasks/" + key + "/postponement", UUID.randomUUID(), Map.of("to", "the day after"))
                .statusCode(422)
                .body(containsString("value=\"the day after\""), containsString("id=\"e-to\""));
        post(
                        "/care-tasks/" + key + "/postponement",
                        UUID.randomUUID(),
                        Map.of("to", TODAY.plusDays(3).toString()))
                .statusCode(303);
        get(WREN, "/today").body(containsString("moved from"));
        post("/care-tasks/" + key + "/silence", UUID.randomUUID(), Map.of("scope", "kind"))
                .statusCode(303);
        get(WREN, "/today").body(not(containsString("Change the bedding")));
        get(WREN, "/care-silences").body(containsString("Change the bedding"), containsString("all of the kind"));
    }

    @Test
    void a_task_in_ones_own_words_is_kept_as_it_was_typed_until_it_is_right() {
        post("/care-tasks", UUID.randomUUID(), Map.of("what", "Order <mice>", "dueOn", "", "everyDays", "often"))
                .statusCode(422)
                .body(
                        containsString("value=\"Order &lt;mice&gt;\""),
                        containsString("id=\"e-dueOn\""),
                        containsString("id=\"e-everyDays\""));
        post("/care-tasks", UUID.randomUUID(), Map.of("what", "Order mice", "dueOn", TODAY.toString()))
                .statusCode(303);
        get(WREN, "/today").body(containsString("Order mice"));
    }

    @Test
    void the_address_of_a_calendar_is_shown_once_and_ends() {
        Browsing.as(WREN).post("/calendar").then().statusCode(200).body(containsString("/api/v1/calendars/"));
        Browsing.as(WREN)
                .get("/calendar")
                .then()
                .body(not(containsString("/api/v1/calendars/")), containsString("/calendar/closure"));
        Browsing.as(WREN).post("/calendar/closure").then().statusCode(303);
        Browsing.as(WREN).get("/calendar").then().body(not(containsString("/calendar/closure")));
    }

    private String base() {
        return "/populations/" + colony.code;
    }

    private ValidatableResponse get(String keeper, String below) {
        return Browsing.as(keeper).get(base() + below).then();
    }

    private ValidatableResponse post(String below, UUID once, Map<String, ?> form) {
        return Browsing.as(WREN)
                .contentType("application/x-www-form-urlencoded")
                .queryParam("once", once)
                .formParams(form)
                .post(base() + below)
                .then();
    }

    private ValidatableResponse records() {
        return colony.get(WREN, "/animals/" + animal + "/care-records");
    }
}
