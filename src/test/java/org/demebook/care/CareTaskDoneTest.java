package org.demebook.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.care.GivenTasks.give;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Stream;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What keepers do about a task: it is done, moved, silenced, and restored. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CareTaskDoneTest extends InACollection {
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
}
