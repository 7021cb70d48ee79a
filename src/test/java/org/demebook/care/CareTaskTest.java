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
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What is to be done in a collection, and for whom. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CareTaskTest extends InACollection {
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
}
