package org.demebook.programme;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThanOrEqualTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Fractions are those of the worked pedigree, computed in exact rational arithmetic apart from this code. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeasonPlanTest {
    private static final LocalDate PAIR_ON = LocalDate.now(ZoneOffset.UTC).plusMonths(6);

    private static Marrowfin asItWas;

    private Marrowfin marrowfin;
    private Seasons seasons;

    @BeforeAll
    static void settle() {
        asItWas = Marrowfin.settled();
    }

    @BeforeEach
    void look() {
        marrowfin = asItWas;
        seasons = Seasons.of(marrowfin.colony);
    }

    /** For a test that changes something. */
    private void afresh() {
        marrowfin = Marrowfin.settled();
        seasons = Seasons.of(marrowfin.colony);
    }

    private String number(int id) {
        return marrowfin.number(id);
    }

    /** A season of so many litters, each of which is certain to come and has one young that stays. */
    private static Map<String, Object> certain(int litters) {
        var season = new HashMap<String, Object>();
        season.put("pairOn", PAIR_ON);
        season.put("litters", litters);
        season.put("youngKept", 1);
        season.put("chanceOfLitter", 1);
        season.put("lookAhead", false);
        return season;
    }

    @Test
    void the_best_single_litter_is_that_of_the_unused_founder() {
        // one young of 013 × 006 kept: .85625 (worked pedigree)
        seasons.draft(certain(1))
                .body("state", equalTo("ready"))
                .body("imagined", equalTo(false))
                .body("progress", nullValue())
                .body("besideInForce", nullValue())
                .body("plan.issuedOn", nullValue())
                .body("plan.litters", hasSize(1))
                .body("plan.litters[0].dam", equalTo(number(13)))
                .body("plan.litters[0].sire", equalTo(number(6)))
                .body("plan.litters[0].keep", equalTo(3))
                .body("plan.litters[0].state", equalTo("open"))
                .body("plan.litters[0].reason", containsString("As far as is known they are unrelated"))
                .body("plan.litters[0].ifRefused.thisPair", greaterThanOrEqualTo(0f))
                .body("plan.summary", startsWith("1 litter: gene diversity 0.8503 → 0.8563."))
                .body("plan.summary", containsString("Within 0.001 % of the best possible"))
                .body("plan.curve", not(empty()));
    }

    @Test
    void an_issued_plan_is_in_force_and_comes_out_the_same_when_it_is_computed_again() {
        afresh();
        var draft = seasons.draft(certain(3)).extract();
        var plan = seasons.issue(draft.path("id"));
        var issued = marrowfin.colony.get(WREN, "/season-plans/" + plan).statusCode(200);
        issued.body("inForce", equalTo(true))
                .body("litters", hasSize(3))
                .body("geneDiversityAfter", equalTo(draft.path("plan.geneDiversityAfter")))
                .body("litters.id", equalTo(draft.path("plan.litters.id")));
        marrowfin
                .colony
                .get(WREN, "/season-plans/" + plan + "/recomputation")
                .statusCode(200)
                .body("equal", equalTo(true))
                .body("differs", empty())
                .body("scope", equalTo("whole"))
                .body("computedFrom", equalTo(issued.extract().path("computedFrom")));
        var body = issued.extract().asString();
        marrowfin.colony.female(WREN);
        assertThat(marrowfin.colony.get(WREN, "/season-plans/" + plan).extract().asString())
                .isEqualTo(body);
    }

    @Test
    void young_that_are_wanted_in_all_are_spread_over_the_litters() {
        afresh();
        var asked = with(with(certain(2), "youngInAll", 5), "youngKept", 4);
        var draft = seasons.draft(asked).body("state", equalTo("ready")).extract();
        List<Integer> keep = draft.path("plan.litters.keep");
        assertThat(keep.stream().mapToInt(Integer::intValue).sum()).isEqualTo(5);
        assertThat(draft.<List<Float>>path("plan.litters.young"))
                .containsExactlyElementsOf(
                        keep.stream().map(Integer::floatValue).toList());
        // 013 × 006 is worth three young, every other pair two at most (worked pedigree)
        assertThat(draft.<Integer>path("plan.litters.find { it.dam == '%s' }.keep".formatted(number(13))))
                .isGreaterThanOrEqualTo(3);
        var plan = seasons.issue(draft.path("id"));
        marrowfin
                .colony
                .get(WREN, "/season-plans/" + plan + "/recomputation")
                .statusCode(200)
                .body("equal", equalTo(true));
        marrowfin
                .colony
                .post(WREN, "/season-drafts", with(asked, "youngInAll", 9))
                .statusCode(400)
                .body("detail", containsString("at least one for each 4 young"));
    }

    @Test
    void a_recomputation_finds_a_plan_that_was_altered_behind_the_servers_back() {
        afresh();
        var plan = UUID.fromString(seasons.issued(certain(2)));
        Backstage.change(
                "update demebook.season_plan set body = replace(body, '\"keep\":3', '\"keep\":4') where id = ?", plan);
        marrowfin
                .colony
                .get(WREN, "/season-plans/" + plan + "/recomputation")
                .statusCode(200)
                .body("equal", equalTo(false))
                .body("differs", contains("litters"));
    }

    @Test
    void the_journal_names_the_heads_that_a_plan_was_computed_from() {
        afresh();
        long head = Long.parseLong(
                Backstage.ask("select seq from demebook.journal_head where code = ?", marrowfin.colony.code)
                        .get(0));
        var plan = seasons.issued(certain(2));
        var bodies = Backstage.ask(
                "select convert_from(e.body, 'UTF8') from demebook.journal_entry e join demebook.journal_head h using (population_id)"
                        + " where h.code = ? and e.type = 'season-plan-issued'",
                marrowfin.colony.code);
        assertThat(bodies).hasSize(1);
        assertThat(bodies.get(0)).contains(plan, "\"%s@H\":%d".formatted(marrowfin.colony.code, head));
    }

    @Test
    void every_keeper_reads_what_it_recommends_for_their_animals() {
        afresh();
        var plan = seasons.issued(certain(1));
        var path = "/season-plans/" + plan + "/recommendations";
        marrowfin
                .colony
                .get(WREN, path)
                .statusCode(200)
                .body("animal", contains(number(13), number(23)))
                .body("doing", contains("breed", "rest"))
                .body("[0].litters[0].partner", equalTo(number(6)))
                .body("[0].litters[0].inbreedingOfYoung", equalTo(0f))
                .body("[0].litters[0].state", equalTo("open"))
                .body("[0].litters[0].arriveBy", equalTo(PAIR_ON.minusDays(90).toString()))
                .body("[0].words", containsString("Pair %s with %s on %s".formatted(number(13), number(6), PAIR_ON)))
                .body("[0].words", containsString("Aim to keep 3 of the young."))
                .body("[1].words", containsString("its genes are common in the population (mean kinship"));
        marrowfin
                .colony
                .get(OYELARAN, path)
                .statusCode(200)
                .body("animal", contains(number(6)))
                .body("[0].doing", equalTo("move"))
                .body("[0].words", containsString("he moves to her keeper"));
        marrowfin.colony.get(DOV, path).statusCode(200).body("doing", not(hasItem("breed")));
        // that there is a plan is for all to know, what is in it is not
        marrowfin.colony.get(DOV, "/season-plans").statusCode(200).body("items.id", contains(plan));
        marrowfin
                .colony
                .get(DOV, "/season-plans/" + plan)
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
    }

    @Test
    void a_partner_that_is_not_shown_to_a_keeper_has_no_number_there() {
        afresh();
        var plan = seasons.issued(certain(1));
        // to coordinators alone from now on
        marrowfin.colony.share(OYELARAN, "private");
        marrowfin.colony.get(WREN, "/season-plans/" + plan).statusCode(200).body("litters", empty());
        var told = marrowfin.colony.get(WREN, "/season-plans/" + plan + "/recommendations");
        told.statusCode(200)
                .body("[0].litters[0].partner", nullValue())
                .body("[0].litters[0].inbreedingOfYoung", nullValue())
                .body("[0].words", containsString("an animal that its keeper does not show to you"));
        assertThat(told.extract().asString()).doesNotContain(number(6), OYELARAN);
    }

    @Test
    void animals_that_may_only_be_computed_with_are_in_no_plan() {
        afresh();
        marrowfin.colony.share(OYELARAN, "compute-only");
        seasons.draft(certain(3))
                .body("plan.litters.sire", not(hasItem(number(6))))
                .body("plan.litters", hasSize(3));
    }

    @Test
    void an_impossible_season_is_told_with_what_contradicts() {
        seasons.draft(with(
                        with(certain(2), "littersOfMale", 1),
                        "leftOut",
                        List.of(number(12), number(14), number(21), number(22), number(24))))
                .body("state", equalTo("impossible"))
                .body("plan", nullValue())
                .body(
                        "contradiction",
                        containsInAnyOrder(
                                "2 litters are wanted, no fewer.", number(6) + " may have 1 litter at most."));
    }

    @Test
    void pairs_that_are_wanted_stand_and_pairs_that_are_not_do_not() {
        var together = List.of(Map.of("dam", number(23), "sire", number(22)));
        seasons.draft(with(
                        with(certain(2), "together", together),
                        "apart",
                        List.of(Map.of("dam", number(13), "sire", number(6)))))
                .body("state", equalTo("ready"))
                .body("plan.litters.find { it.dam == '%s' }.sire".formatted(number(23)), equalTo(number(22)))
                .body(
                        "plan.litters.find { it.dam == '%s' }.reason".formatted(number(23)),
                        containsString("It is settled."))
                .body("plan.litters.findAll { it.dam == '%s' }.sire".formatted(number(13)), not(hasItem(number(6))));
        seasons.draft(with(with(certain(1), "together", together), "apart", together))
                .body("state", equalTo("impossible"))
                .body("contradiction", hasItem(number(23) + " and " + number(22) + " are to be paired."));
    }

    @Test
    void what_if_there_were_another_founder() {
        afresh();
        seasons.issued(certain(2));
        var without = seasons.draft(certain(2)).extract();
        var draft = seasons.draft(with(certain(2), "whatIf", Map.of("newMales", 1)));
        draft.body("imagined", equalTo(true))
                .body("plan.litters.sire", hasItem("new founder 1"))
                .body("plan.geneDiversityNow", greaterThanOrEqualTo(without.<Float>path("plan.geneDiversityNow")))
                .body("besideInForce.litters", equalTo(2))
                .body("besideInForce.onlyHere.sire", hasItem("new founder 1"))
                .body("besideInForce.onlyThere", not(empty()));
        marrowfin
                .colony
                .post(WREN, "/season-plans", Map.of("draft", draft.extract().<String>path("id")))
                .statusCode(409)
                .body("type", equalTo("/problems/draft-not-ready"))
                .body("detail", containsString("founders that do not exist"));
    }

    @Test
    void what_if_a_keeper_were_lost_or_had_less_room() {
        seasons.draft(with(certain(1), "whatIf", Map.of("lost", List.of(number(6)))))
                .body("plan.litters.sire", contains(number(14)))
                .body("plan.summary", startsWith("1 litter: gene diversity 0.8184 → 0.8210."));
        // 013 and 023 live with wren, who shows it
        seasons.draft(with(
                        certain(2), "whatIf", Map.of("capacity", List.of(Map.of("animal", number(13), "litters", 0)))))
                .body("plan.litters.dam", not(hasItem(number(13))))
                .body("state", equalTo("impossible"));
        seasons.draft(certain(2)).body("plan.litters.dam", hasItem(number(13)));
    }

    @Test
    void an_animal_that_died_since_makes_a_draft_outdated() {
        afresh();
        var draft = seasons.draft(certain(1)).extract().<String>path("id");
        var died = LocalDate.now(ZoneOffset.UTC).toString();
        marrowfin.colony.put(OYELARAN, number(6), "/death", Map.of("on", died)).statusCode(200);
        marrowfin
                .colony
                .post(WREN, "/season-plans", Map.of("draft", draft))
                .statusCode(409)
                .body("type", equalTo("/problems/plan-outdated"))
                .body("detail", containsString(number(6)));
    }

    @Test
    void drafts_are_their_coordinators_alone_and_end_when_they_are_stopped() {
        var first = seasons.started(certain(3));
        var second = seasons.started(certain(2));
        marrowfin
                .colony
                .post(WREN, "/season-drafts/" + second + "/stop", Map.of())
                .statusCode(200);
        var state = seasons.over(second).extract().<String>path("state");
        assertThat(state).isIn("stopped", "ready");
        seasons.over(first).body("state", equalTo("ready"));
        marrowfin
                .colony
                .get(WREN, "/season-drafts")
                .statusCode(200)
                .body("id[0]", equalTo(second))
                .body("id[1]", equalTo(first));
        marrowfin.colony.get(INES, "/season-drafts").statusCode(403);
        marrowfin
                .colony
                .get(WREN, "/season-drafts/" + UUID.randomUUID())
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-draft"));
        assertThat(as(INES).body(Map.of("draft", first))
                        .post(marrowfin.colony.path("/season-plans"))
                        .statusCode())
                .isEqualTo(403);
    }

    @Test
    void the_oldest_of_many_drafts_is_forgotten_and_the_latest_is_not() {
        afresh();
        var first = seasons.draft(certain(1)).extract().<String>path("id");
        for (int more = 0; more < 10; more++) {
            seasons.draft(certain(1)).body("state", equalTo("ready"));
        }
        marrowfin.colony.get(WREN, "/season-drafts").statusCode(200).body("id", hasSize(10));
        marrowfin.colony.get(WREN, "/season-drafts/" + first).statusCode(404);
    }

    @Test
    void what_cannot_be_asked_is_told() {
        marrowfin
                .colony
                .post(WREN, "/season-drafts", with(certain(1), "littersAtMost", 3))
                .statusCode(400)
                .body("detail", containsString("not both"));
        marrowfin
                .colony
                .post(WREN, "/season-drafts", with(certain(1), "pairOn", "2026-11-27"))
                .statusCode(400)
                .body("detail", containsString("is over"));
        marrowfin
                .colony
                .post(
                        WREN,
                        "/season-drafts",
                        with(certain(1), "together", List.of(Map.of("dam", number(12), "sire", number(6)))))
                .statusCode(422)
                .body("type", equalTo("/problems/no-candidates"))
                .body("detail", containsString(number(12) + " is no female"));
        marrowfin
                .colony
                .post(WREN, "/season-drafts", with(certain(1), "follows", UUID.randomUUID()))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-plan"));
    }
}
