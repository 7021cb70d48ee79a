package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** The plan that follows one that keepers answered, and what they are reminded of. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class FollowingPlanTest {
    @Test
    void the_next_plan_keeps_what_is_agreed_with_its_id_and_leaves_out_what_is_off() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.answer(WREN, world.other, "accept", null, null).statusCode(200);
        world.answer(OYELARAN, world.other, "accept", null, null).statusCode(200);
        world.answer(INES, world.litter, "decline", "own-plans", null).statusCode(200);
        for (int seed = 1; seed <= 3; seed++) {
            var drafted = Seasons.of(world.colony)
                    .draft(Map.of("pairOn", AnsweredPlan.PAIR_ON, "litters", 3, "follows", world.plan, "seed", seed))
                    .body("state", equalTo("ready"))
                    .body("plan.litters.find { it.id == '" + world.other + "' }.dam", equalTo(world.own.number(13)))
                    .body("plan.litters.find { it.id == '" + world.other + "' }.sire", equalTo(world.own.number(6)))
                    .body("plan.litters.find { it.id == '" + world.other + "' }.state", equalTo("agreed"))
                    .body("plan.litters.id", not(hasItem(world.litter)))
                    .body("plan.litters", hasSize(3))
                    .extract();
            List<Map<String, Object>> litters = drafted.path("plan.litters");
            assertThat(litters)
                    .noneMatch(litter -> litter.get("dam").equals(world.own.number(20))
                            && litter.get("sire").equals(world.own.number(14)));
        }
        var next = Seasons.of(world.colony)
                .issued(Map.of("pairOn", AnsweredPlan.PAIR_ON, "litters", 3, "follows", world.plan));
        // its answers came along
        world.colony
                .get(WREN, "/season-plans/" + next + "/answers")
                .body("answered", equalTo(2))
                .body("litters.find { it.litter == '" + world.other + "' }.state", equalTo("agreed"));
        // and what was off stays off in the plan after that
        Seasons.of(world.colony)
                .draft(Map.of("pairOn", AnsweredPlan.PAIR_ON, "litters", 3, "follows", next))
                .body("plan.litters.find { it.id == '" + world.other + "' }.dam", equalTo(world.own.number(13)))
                .body(
                        "plan.litters.findAll { it.dam == '" + world.own.number(20) + "' }.sire",
                        not(hasItem(world.own.number(14))));
    }

    @Test
    void a_plan_without_a_litter_is_issued_and_read() {
        var world = new AnsweredPlan(Marrowfin.settled());
        var none = Seasons.of(world.colony)
                .issued(Map.of("pairOn", AnsweredPlan.PAIR_ON, "litters", 0, "follows", world.plan));
        for (var address : List.of("", "/answers", "/outcome")) {
            world.colony
                    .get(WREN, "/season-plans/" + none + address)
                    .statusCode(200)
                    .body("litters", hasSize(0));
        }
        world.colony
                .get(INES, "/season-plans/" + none + "/recommendations")
                .statusCode(200)
                .body("doing", everyItem(equalTo("rest")));
    }

    @Test
    void an_animal_that_cannot_is_in_no_litter_of_the_next_plan() {
        var world = new AnsweredPlan(Marrowfin.settled());
        world.answer(INES, world.litter, "cannot", "animal-ill", null).statusCode(200);
        Seasons.of(world.colony)
                .draft(Map.of("pairOn", AnsweredPlan.PAIR_ON, "littersAtMost", 3, "follows", world.plan))
                .body("state", equalTo("ready"))
                .body("plan.litters.sire", not(hasItem(world.own.number(14))));
        // a pair that was declined alone leaves him free for others
        world.answer(INES, world.litter, "decline", "border", null).statusCode(200);
        Seasons.of(world.colony)
                .draft(Map.of(
                        "pairOn",
                        AnsweredPlan.PAIR_ON,
                        "littersAtMost",
                        3,
                        "follows",
                        world.plan,
                        "together",
                        List.of(Map.of("dam", world.own.number(13), "sire", world.own.number(14)))))
                .body("state", equalTo("ready"))
                .body("plan.litters.sire", hasItem(world.own.number(14)));
    }

    // ── tasks ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_task_asks_for_the_answer_and_another_for_the_pairing() {
        var world = new AnsweredPlan(Marrowfin.settled());
        var today = LocalDate.now(ZoneOffset.UTC);
        var of = "items.findAll { it.kind.startsWith('season-') }";
        world.colony
                .get(INES, "/care-tasks?limit=200&until=" + AnsweredPlan.PAIR_ON.plusDays(30))
                .statusCode(200)
                .body(of + ".kind", contains("season-answer"))
                .body(of + ".animal", contains(world.own.number(14)))
                .body(of + ".dueOn", contains(today.plusDays(14).toString()));
        world.answer(INES, world.litter, "accept", null, null).statusCode(200);
        world.colony
                .get(INES, "/care-tasks?limit=200&until=" + AnsweredPlan.PAIR_ON.plusDays(30))
                .body(of, hasSize(0));
        world.answer(DOV, world.litter, "accept", null, null).statusCode(200);
        for (var keeper : List.of(INES, DOV)) {
            world.colony
                    .get(keeper, "/care-tasks?limit=200&until=" + AnsweredPlan.PAIR_ON.plusDays(30))
                    .body(of + ".kind", contains("season-pairing"))
                    .body(of + ".dueOn", contains(AnsweredPlan.PAIR_ON.toString()));
        }
        world.answer(DOV, world.litter, "decline", "no-reason", null).statusCode(200);
        for (var keeper : List.of(INES, DOV)) {
            world.colony
                    .get(keeper, "/care-tasks?limit=200&until=" + AnsweredPlan.PAIR_ON.plusDays(30))
                    .body(of, hasSize(0));
        }
    }
}
