package org.demebook.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.care.GivenTasks.give;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What is to be done in a collection, and what its keepers do about it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CareTaskTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    Colony colony;
    String animal;

    @BeforeEach
    void found() {
        colony = Colony.found();
        animal = colony.female(WREN);
    }

    @Test
    void overdue_tasks_come_first_then_the_others_by_day() {
        var later = give(colony, CareKind.NEXT_MEAL, animal, TODAY.plusDays(3));
        var todays = give(colony, CareKind.BEDDING, animal, TODAY);
        var overdue = give(colony, CareKind.NEXT_MEAL, animal, TODAY.minusDays(2));
        give(colony, CareKind.NEXT_MEAL, animal, TODAY.plusDays(40));

        list(WREN, "")
                .body("items.key", contains(overdue, todays, later))
                .body("items[0].overdueDays", equalTo(2))
                .body("items[0].kind", equalTo("next-meal"))
                .body("items[0].animal", equalTo(animal))
                .body("items[0].dueOn", equalTo(TODAY.minusDays(2).toString()))
                .body("items[0].why", equalTo("Since the test says so."))
                .body("items[1].overdueDays", equalTo(0));
        list(WREN, "?until=" + TODAY).body("items.key", contains(overdue, todays));
        list(WREN, "?until=" + TODAY.plusDays(40)).body("items", hasSize(4));
    }

    @Test
    void a_window_is_listed_once_its_first_day_is_near() {
        var window =
                give(colony, CareKind.DUE_WINDOW, animal, TODAY.plusDays(20), TODAY.plusDays(15), TODAY.plusDays(35));
        list(WREN, "?until=" + TODAY.plusDays(14)).body("items", empty());
        list(WREN, "?until=" + TODAY.plusDays(15))
                .body("items.key", contains(window))
                .body("items[0].fromOn", equalTo(TODAY.plusDays(15).toString()))
                .body("items[0].untilOn", equalTo(TODAY.plusDays(35).toString()));
    }

    @Test
    void a_long_list_comes_in_pages() {
        for (int day = 0; day < 5; day++) {
            give(colony, CareKind.NEXT_MEAL, animal, TODAY.plusDays(day - 2));
        }
        List<String> all = list(WREN, "").extract().path("items.key");
        var read = new ArrayList<String>();
        String next = null;
        do {
            var page = list(WREN, "?limit=2" + (next == null ? "" : "&after=" + next))
                    .extract();
            read.addAll(page.path("items.key"));
            next = page.path("next");
        } while (next != null);
        assertThat(read).hasSize(5).isEqualTo(all);
    }

    @Test
    void one_cannot_look_further_than_400_days_ahead() {
        list(WREN, "?until=" + TODAY.plusDays(400)).statusCode(200);
        colony.get(WREN, "/care-tasks?until=" + TODAY.plusDays(401))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"));
        colony.get(WREN, "/care-tasks?state=lost").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    // ── done ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_task_is_done_with_one_tap_and_listed_among_the_done() {
        var key = give(colony, CareKind.FIRST_MEAL, animal, TODAY.minusDays(1));
        act(WREN, key, "completion", Map.of())
                .statusCode(200)
                .body("doneOn", equalTo(TODAY.toString()))
                .body("doneBy", equalTo(WREN))
                .body("overdueDays", equalTo(0));
        list(WREN, "").body("items", empty());
        list(WREN, "?state=done").body("items.key", contains(key)).body("items[0].animal", equalTo(animal));
    }

    @Test
    void a_task_that_is_done_twice_is_done_once_and_another_day_corrects_the_first() {
        var key = give(colony, CareKind.FIRST_MEAL, animal, TODAY);
        var yesterday = TODAY.minusDays(1).toString();
        act(WREN, key, "completion", Map.of()).statusCode(200);
        act(WREN, key, "completion", Map.of()).statusCode(200).body("doneOn", equalTo(TODAY.toString()));
        act(WREN, key, "completion", Map.of("on", yesterday)).statusCode(200).body("doneOn", equalTo(yesterday));
        list(WREN, "?state=done").body("items", hasSize(1)).body("items[0].doneOn", equalTo(yesterday));
    }

    @Test
    void a_task_cannot_be_done_on_a_day_that_has_not_come() {
        var key = give(colony, CareKind.FIRST_MEAL, animal, TODAY.plusDays(5));
        act(WREN, key, "completion", Map.of("on", TODAY.plusDays(5).toString()))
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
        act(WREN, key, "completion", Map.of()).statusCode(200).body("doneOn", equalTo(TODAY.toString()));
    }

    @Test
    void what_was_done_by_mistake_is_to_be_done_again() {
        var key = give(colony, CareKind.FIRST_MEAL, animal, TODAY);
        act(WREN, key, "completion", Map.of()).statusCode(200);
        act(WREN, key, "restoration", "{}").statusCode(200).body("doneOn", nullValue());
        list(WREN, "").body("items.key", contains(key));
        list(WREN, "?state=done").body("items", empty());
    }

    @Test
    void what_was_done_stays_done_after_its_source_has_no_reason_for_it_any_more() {
        var key = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        act(WREN, key, "completion", Map.of()).statusCode(200);
        GivenTasks.takeBack(colony, key);
        list(WREN, "?state=done").body("items.key", contains(key));
        act(WREN, key, "completion", Map.of("on", TODAY.minusDays(1).toString()))
                .statusCode(200);
        act(WREN, key, "restoration", "{}").statusCode(200);
        list(WREN, "").body("items", empty());
        unknown(WREN, key);
    }

    @Test
    void a_whole_rack_is_done_at_once() {
        var keys = new ArrayList<String>();
        for (int tub = 0; tub < 4; tub++) {
            keys.add(give(colony, CareKind.NEXT_MEAL, colony.female(WREN), TODAY));
        }
        colony.post(
                        WREN,
                        "/care-tasks/completions",
                        Map.of("keys", keys, "on", TODAY.minusDays(1).toString()))
                .statusCode(200)
                .body("items.key", equalTo(keys))
                .body("items.doneOn.unique()", contains(TODAY.minusDays(1).toString()));
        list(WREN, "").body("items", empty());
    }

    @Test
    void an_unknown_task_among_many_refuses_all_and_every_unknown_one_is_told() {
        var key = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        colony.post(WREN, "/care-tasks/completions", Map.of("keys", List.of("next-meal:nobody", key, "bedding:x")))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-care-task"))
                .body("findings.value", contains("next-meal:nobody", "bedding:x"));
        list(WREN, "").body("items.key", contains(key));
    }

    @Test
    void two_who_share_a_collection_may_tap_at_once() throws InterruptedException {
        var shared = colony.post(INES, "/collections", Map.of("label", "household", "sharedWith", List.of(DOV)))
                .statusCode(201)
                .extract()
                .<String>path("id");
        var key = added(INES, Map.of("what", "water", "dueOn", TODAY.toString(), "everyDays", 2, "collection", shared));
        var statuses = new ConcurrentLinkedQueue<Integer>();
        var taps = Stream.of(INES, DOV, INES, DOV)
                .map(keeper -> new Thread(() -> statuses.add(
                        act(keeper, key, "completion", Map.of()).extract().statusCode())))
                .toList();
        taps.forEach(Thread::start);
        for (var tap : taps) {
            tap.join();
        }
        assertThat(statuses).hasSize(4).containsOnly(200);
        list(INES, "?state=done").body("items", hasSize(1));
        list(DOV, "").body("items.dueOn", contains(TODAY.plusDays(2).toString()));
    }

    @Test
    void a_tap_that_is_sent_again_has_one_effect_and_one_answer() {
        String own = added(WREN, Map.of("what", "check the thermostat", "dueOn", TODAY.toString(), "everyDays", 1));
        var tap = UUID.randomUUID().toString();
        var answers = new ArrayList<String>();
        for (int sent = 0; sent < 2; sent++) {
            answers.add(as(WREN, tap)
                    .body("{}")
                    .post(colony.path("/care-tasks/" + own + "/completion"))
                    .then()
                    .statusCode(200)
                    .extract()
                    .asString());
        }
        assertThat(answers.get(0)).isEqualTo(answers.get(1));
        list(WREN, "?state=done").body("items", hasSize(1));
    }

    // ── moved ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_moved_task_is_due_on_its_new_day_and_says_where_it_was() {
        var key = give(colony, CareKind.SEPARATION, animal, TODAY.minusDays(3));
        var to = TODAY.plusDays(2).toString();
        act(WREN, key, "postponement", Map.of("to", to))
                .statusCode(200)
                .body("dueOn", equalTo(to))
                .body("movedFrom", equalTo(TODAY.minusDays(3).toString()))
                .body("overdueDays", equalTo(0))
                .body("timesMoved", equalTo(1));
        list(WREN, "").body("items.dueOn", contains(to));

        act(WREN, key, "restoration", "{}")
                .statusCode(200)
                .body("dueOn", equalTo(TODAY.minusDays(3).toString()))
                .body("movedFrom", nullValue())
                .body("timesMoved", equalTo(2));
        act(WREN, key, "restoration", "{}").statusCode(200).body("timesMoved", equalTo(2));
    }

    @Test
    void a_birth_is_moved_by_no_keeper() {
        var key = give(colony, CareKind.DUE_WINDOW, animal, TODAY, TODAY.minusDays(5), TODAY.plusDays(15));
        act(WREN, key, "postponement", Map.of("to", TODAY.plusDays(1).toString()))
                .statusCode(422)
                .body("type", equalTo("/problems/care-task-fixed"))
                .body("detail", containsString("due window"));
    }

    @Test
    void a_task_is_moved_neither_into_the_past_nor_once_it_is_done() {
        var key = give(colony, CareKind.SEPARATION, animal, TODAY);
        for (var to : List.of(TODAY.minusDays(2), TODAY.plusDays(401))) {
            act(WREN, key, "postponement", Map.of("to", to.toString()))
                    .statusCode(422)
                    .body("findings[0].field", equalTo("to"));
        }
        act(WREN, key, "completion", Map.of()).statusCode(200);
        act(WREN, key, "postponement", Map.of("to", TODAY.plusDays(1).toString()))
                .statusCode(409)
                .body("type", equalTo("/problems/care-task-done"));
    }

    // ── silenced ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void one_task_one_kind_of_an_animal_or_one_kind_of_the_collection_is_silenced() {
        var other = colony.female(WREN);
        var meal = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var nextMeal = give(colony, CareKind.NEXT_MEAL, animal, TODAY.plusDays(7));
        var othersMeal = give(colony, CareKind.NEXT_MEAL, other, TODAY);
        var bedding = give(colony, CareKind.BEDDING, animal, TODAY);

        silence(meal, "task").body("silenced", equalTo("task"));
        list(WREN, "").body("items.key", containsInAnyOrder(nextMeal, othersMeal, bedding));
        silence(nextMeal, "kind-of-animal").body("silenced", equalTo("kind-of-animal"));
        list(WREN, "").body("items.key", containsInAnyOrder(othersMeal, bedding));
        silence(othersMeal, "kind").body("silenced", equalTo("kind"));
        list(WREN, "").body("items.key", contains(bedding));
        list(WREN, "?state=silenced").body("items.key", containsInAnyOrder(meal, nextMeal, othersMeal));

        // one that lies under several silences is heard of again after one restoration
        act(WREN, meal, "restoration", "{}").statusCode(200).body("silenced", nullValue());
        list(WREN, "").body("items.key", containsInAnyOrder(meal, nextMeal, othersMeal, bedding));
        colony.get(WREN, "/care-silences").body("$", empty());
    }

    @Test
    void a_silence_is_found_and_ended_when_no_task_lies_under_it_any_more() {
        var key = give(colony, CareKind.BEDDING, animal, TODAY);
        silence(key, "kind-of-animal");
        silence(key, "kind-of-animal");
        GivenTasks.takeBack(colony, key);
        String id = colony.get(WREN, "/care-silences")
                .statusCode(200)
                .body("$", hasSize(1))
                .body("[0].kind", equalTo("bedding"))
                .body("[0].scope", equalTo("kind-of-animal"))
                .body("[0].animal", equalTo(animal))
                .extract()
                .path("[0].id");

        colony.post(INES, "/care-silences/" + id + "/ending", "{}")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-silence"));
        colony.post(WREN, "/care-silences/" + id + "/ending", "{}").statusCode(204);
        colony.get(WREN, "/care-silences").body("$", empty());
    }

    @Test
    void tasks_of_ones_own_are_silenced_one_by_one() {
        var own = added(WREN, Map.of("what", "order mice", "dueOn", TODAY.toString(), "animal", animal));
        for (var scope : List.of("kind", "kind-of-animal")) {
            act(WREN, own, "silence", Map.of("scope", scope))
                    .statusCode(422)
                    .body("detail", containsString("one by one"));
        }
        silence(own, "task");
        list(WREN, "").body("items", empty());
    }

    // ── one's own ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_task_of_ones_own_is_done_once() {
        var key = added(WREN, Map.of("what", " order mice ", "dueOn", TODAY.toString()));
        colony.get(WREN, "/care-tasks/" + key)
                .body("what", equalTo("order mice"))
                .body("kind", equalTo("own"))
                .body("animal", nullValue());
        act(WREN, key, "completion", Map.of()).statusCode(200);
        list(WREN, "?until=" + TODAY.plusDays(400)).body("items", empty());
        act(WREN, key, "restoration", "{}").statusCode(200);
        list(WREN, "").body("items.key", contains(key));
    }

    @Test
    void a_recurring_task_is_due_again_its_days_after_it_was_done() {
        var first = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "everyDays", 14, "animal", animal));
        act(WREN, first, "postponement", Map.of("to", TODAY.plusDays(1).toString()))
                .statusCode(200);
        act(WREN, first, "completion", Map.of()).statusCode(200);
        list(WREN, "")
                .body("items", hasSize(1))
                .body("items[0].dueOn", equalTo(TODAY.plusDays(14).toString()))
                .body("items[0].key", not(equalTo(first)))
                .body("items[0].animal", equalTo(animal));

        act(WREN, first, "completion", Map.of("on", TODAY.minusDays(4).toString()))
                .statusCode(200);
        list(WREN, "").body("items.dueOn", contains(TODAY.plusDays(10).toString()));

        act(WREN, first, "restoration", "{}").statusCode(200);
        list(WREN, "")
                .body("items.key", contains(first))
                .body("items[0].dueOn", equalTo(TODAY.plusDays(1).toString()));
    }

    @Test
    void taking_back_an_earlier_time_leaves_the_next_one_where_it_is() {
        var first = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "everyDays", 3));
        act(WREN, first, "completion", Map.of()).statusCode(200);
        String second = list(WREN, "").extract().path("items[0].key");
        act(WREN, second, "completion", Map.of()).statusCode(200);
        String third = list(WREN, "").extract().path("items[0].key");
        act(WREN, first, "restoration", "{}").statusCode(200);
        list(WREN, "").body("items.key", contains(third));
    }

    @Test
    void a_task_of_ones_own_is_about_an_animal_in_ones_hands_and_lies_ahead() {
        var others = colony.female(INES);
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "animal", others))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.minusDays(9).toString()))
                .statusCode(422);
        add(WREN, Map.of("what", " ", "dueOn", TODAY.toString())).statusCode(422);
        add(WREN, Map.of("what", "feed\nBEGIN:VALARM", "dueOn", TODAY.toString()))
                .statusCode(422)
                .body("findings[0].field", equalTo("what"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "everyDays", 0))
                .statusCode(422);
        var elsewhere = colony.post(WREN, "/collections", Map.of("label", "cellar"))
                .extract()
                .<String>path("id");
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString(), "animal", animal, "collection", elsewhere))
                .statusCode(422)
                .body("findings[0].field", equalTo("collection"));
        add(WREN, Map.of("what", "feed", "dueOn", TODAY.toString()))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
    }

    // ── whose ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_task_vanishes_when_its_animal_dies_and_comes_back_when_the_death_was_a_mistake() {
        var given = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var own = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "animal", animal));
        colony.put(WREN, animal, "/death", Map.of("on", "2025-01-03")).statusCode(200);
        list(WREN, "").body("items", empty());
        unknown(WREN, given);
        unknown(WREN, own);

        as(WREN).header("If-Match", colony.etag(WREN, animal))
                .delete(colony.path("/animals/" + animal + "/death"))
                .then()
                .statusCode(200);
        list(WREN, "").body("items.key", containsInAnyOrder(given, own));
    }

    @Test
    void a_task_goes_with_its_animal_and_what_its_first_keeper_did_about_it_stays_behind() {
        var given = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var bedding = give(colony, CareKind.BEDDING, animal, TODAY);
        var own = added(WREN, Map.of("what", "weigh", "dueOn", TODAY.toString(), "animal", animal));
        act(WREN, bedding, "postponement", Map.of("to", TODAY.plusDays(5).toString()))
                .statusCode(200);
        silence(given, "kind");
        String offer = colony.post(WREN, "/transfers", Map.of("animal", animal, "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + offer + "/acceptance", Map.of()).statusCode(200);

        list(WREN, "").body("items", empty());
        list(INES, "")
                .body("items.key", containsInAnyOrder(given, bedding))
                .body("items.dueOn.unique()", contains(TODAY.toString()));
        unknown(WREN, given);
        unknown(INES, own);
    }

    @Test
    void a_task_about_a_litter_is_of_those_who_have_its_young() {
        String litter = colony.post(
                        WREN,
                        "/litters",
                        Map.of(
                                "dam", animal,
                                "sire", Map.of("kind", "unknown"),
                                "born", "2025-06-29",
                                "liveBorn", 2,
                                "stillborn", 0,
                                "unfertilised", 0,
                                "ovaFound", 2))
                .statusCode(201)
                .extract()
                .path("litter.id");
        var key = GivenTasks.giveForLitter(colony, CareKind.BEDDING, litter, TODAY);
        list(WREN, "").body("items.key", contains(key)).body("items[0].litter", equalTo(litter));
        list(INES, "").body("items", empty());
    }

    @Test
    void to_everybody_else_a_task_does_not_exist() {
        var key = give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var own = added(WREN, Map.of("what", "order mice", "dueOn", TODAY.toString()));
        list(INES, "").body("items", empty());
        for (var hidden : List.of(key, own)) {
            unknown(INES, hidden);
            act(INES, hidden, "completion", Map.of())
                    .statusCode(404)
                    .body("type", equalTo("/problems/no-such-care-task"));
        }
        act(WREN, own, "completion", Map.of()).statusCode(200);
        unknown(INES, own);
        colony.get(OUTSIDER, "/care-tasks").statusCode(404).body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void those_who_act_for_one_collection_share_its_tasks() {
        var shared = colony.post(INES, "/collections", Map.of("label", "household", "sharedWith", List.of(DOV)))
                .statusCode(201)
                .extract()
                .<String>path("id");
        var key = added(INES, Map.of("what", "order mice", "dueOn", TODAY.toString(), "collection", shared));
        list(DOV, "").body("items.key", hasItem(key));
        act(DOV, key, "completion", Map.of()).statusCode(200);
        list(INES, "").body("items", empty());
        list(INES, "?state=done").body("items[0].doneBy", equalTo(DOV));
    }

    private ValidatableResponse list(String keeper, String query) {
        return colony.get(keeper, "/care-tasks" + query).statusCode(200);
    }

    private ValidatableResponse add(String keeper, Map<String, Object> task) {
        return colony.post(keeper, "/care-tasks", task);
    }

    private String added(String keeper, Map<String, Object> task) {
        return add(keeper, task).statusCode(201).extract().path("key");
    }

    private ValidatableResponse act(String keeper, String key, String act, Object body) {
        return colony.post(keeper, "/care-tasks/" + key + "/" + act, body);
    }

    private ValidatableResponse silence(String key, String scope) {
        return act(WREN, key, "silence", Map.of("scope", scope)).statusCode(200);
    }

    private void unknown(String keeper, String key) {
        colony.get(keeper, "/care-tasks/" + key).statusCode(404).body("type", equalTo("/problems/no-such-care-task"));
    }
}
