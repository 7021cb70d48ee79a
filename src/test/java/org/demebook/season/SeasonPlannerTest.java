package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Seasons of the size that keepers have: how near the best, how it is stopped, and what is told beside the plan. */
class SeasonPlannerTest {
    private static final Effort LITTLE = new Effort(40, 2, 20_000, 7);

    private static SeasonBuilder season(int seed, int founders, int females, int males, int litters) {
        return Herd.inTenCollections(seed, founders, females, males, litters);
    }

    private static SeasonPlan plan(Season season, Effort effort) {
        return (SeasonPlan) new SeasonPlanner(season, effort, Watch.NOBODY).plan();
    }

    @Test
    void fifty_litters_of_eighty_females_and_sixty_males_are_planned_within_two_in_a_thousand_of_the_best() {
        for (int seed = 1; seed <= 3; seed++) {
            var plan = plan(season(seed, 20, 80, 60, 50).build(), new Effort(150, 1, 200_000, 1));
            assertThat(plan.litters()).hasSize(50);
            assertThat(plan.gap()).as("seed %d", seed).isBetween(0.0, .002);
        }
    }

    @Test
    void so_they_are_where_litters_differ_in_how_many_young_count() {
        var season = season(4, 20, 80, 60, 50);
        for (int female = 0; female < 80; female++) {
            season.young(female, .5 * (1 + female * 7 % 8));
        }
        assertThat(plan(season.build(), new Effort(300, 1, 200_000, 1)).gap()).isBetween(0.0, .002);
    }

    @Test
    void hundred_and_fifty_litters_of_260_females_and_240_males_are_planned_within_one_in_a_thousand_of_the_best() {
        var plan = plan(season(5, 40, 260, 240, 150).build(), new Effort(150, 1, 300_000, 1));
        assertThat(plan.litters()).hasSize(150);
        assertThat(plan.gap()).isBetween(0.0, .001);
    }

    @Test
    void the_same_season_effort_and_seed_give_the_same_plan() {
        var first = plan(season(6, 12, 30, 24, 16).travellersOfCollection(3, 1).build(), LITTLE);
        var second = plan(season(6, 12, 30, 24, 16).travellersOfCollection(3, 1).build(), LITTLE);
        assertThat(second).isEqualTo(first);
    }

    @Test
    void a_season_that_is_stopped_has_the_best_plan_so_far_and_a_bound() {
        var builder = season(7, 12, 30, 24, 16);
        for (int female = 0; female < 30; female++) {
            builder.young(female, 1 + female % 4);
        }
        var season = builder.build();
        for (long looks : List.of(0, 3, 14, 25, 60)) {
            var left = new AtomicLong(looks);
            Watch impatient = progress -> left.getAndDecrement() > 0;
            var plan = (SeasonPlan) new SeasonPlanner(season, new Effort(40, 2, 2_000_000, 1), impatient).plan();
            assertThat(plan.whole()).isFalse();
            assertThat(left.get()).as("no look after the last").isEqualTo(-1);
            assertThat(Herd.keepsAll(season, plan.sires(season))).isTrue();
            assertThat(plan.bound()).isLessThanOrEqualTo(plan.after());
        }
    }

    @Test
    void progress_is_told_and_never_gets_worse() {
        var seen = new ArrayList<Progress>();
        new SeasonPlanner(season(8, 12, 30, 24, 16).build(), new Effort(40, 3, 50_000, 1), seen::add).plan();
        double best = Double.POSITIVE_INFINITY;
        for (var progress : seen) {
            assertThat(progress.done()).isBetween(0L, progress.of());
            if (!Double.isNaN(progress.meanKinship())) {
                assertThat(progress.meanKinship()).isLessThanOrEqualTo(best).isGreaterThanOrEqualTo(progress.bound());
                best = progress.meanKinship();
            }
        }
        assertThat(best).isLessThan(1);
    }

    @Test
    void what_a_litter_adds_is_what_is_missing_without_it() {
        var season = season(9, 12, 30, 24, 16).build();
        var plan = plan(season, LITTLE);
        for (var litter : plan.litters()) {
            int[] without = plan.sires(season);
            without[litter.pair().female()] = Season.NONE;
            assertThat(litter.adds()).isCloseTo(Herd.meanKinship(season, without) - plan.after(), within(1e-14));
        }
        assertThat(plan.after()).isCloseTo(Herd.meanKinship(season, plan.sires(season)), within(1e-14));
        assertThat(plan.settledOnly()).isEqualTo(plan.now());
    }

    @Test
    void the_curve_goes_from_most_gene_diversity_to_less_inbreeding_and_no_point_dominates_another() {
        var season = new Herd(10, 5, 20, 16, 3).season().litters(12).build();
        var planner = new SeasonPlanner(season, LITTLE, Watch.NOBODY);
        var plan = (SeasonPlan) planner.plan();
        var curve = planner.curve(plan);
        assertThat(curve.size()).isGreaterThan(1);
        assertThat(curve.get(0).meanKinship()).isLessThanOrEqualTo(plan.after());
        for (int i = 1; i < curve.size(); i++) {
            assertThat(curve.get(i).meanKinship())
                    .isGreaterThan(curve.get(i - 1).meanKinship());
            assertThat(curve.get(i).meanInbreeding())
                    .isLessThan(curve.get(i - 1).meanInbreeding());
            int[] sires = new int[season.females];
            Arrays.fill(sires, Season.NONE);
            curve.get(i).pairs().forEach(pair -> sires[pair.female()] = pair.male());
            assertThat(Herd.keepsAll(season, sires)).isTrue();
            assertThat(curve.get(i).meanKinship()).isCloseTo(Herd.meanKinship(season, sires), within(1e-14));
        }
    }

    @Test
    void what_a_refusal_costs_is_what_the_best_plan_without_it_lacks() {
        int changed = 0;
        for (int seed = 0; seed < 30; seed++) {
            var season = new Herd(seed, 5, 5, 4, 3).limited(3, 3, true);
            if (Herd.everyPlan(season).isEmpty()) {
                continue;
            }
            var planner = new SeasonPlanner(season, new Effort(60, 3, 4_000, 1), Watch.NOBODY);
            var plan = (SeasonPlan) planner.plan();
            for (var refusal : planner.refusals(plan)) {
                var best = Herd.everyPlan(season).stream()
                        .filter(sires -> isRefused(sires, refusal))
                        .mapToDouble(sires -> Herd.meanKinship(season, sires))
                        .min();
                assertThat(refusal.cost().isPresent()).isEqualTo(best.isPresent());
                if (best.isPresent()) {
                    changed++;
                    assertThat(refusal.cost().getAsDouble())
                            .as("seed %d, %s", seed, refusal)
                            .isCloseTo(best.getAsDouble() - plan.after(), within(1e-13));
                    assertThat(refusal.instead()).doesNotContain(refusal.litter());
                }
            }
        }
        assertThat(changed).isGreaterThan(50);
    }

    private static boolean isRefused(int[] sires, Refusal refusal) {
        var pair = refusal.litter();
        return switch (refusal.what()) {
            case THIS_PAIR -> sires[pair.female()] != pair.male();
            case ANY_LITTER_OF_HERS -> sires[pair.female()] == Season.NONE;
            case ANY_LITTER_OF_HIS -> Arrays.stream(sires).noneMatch(male -> male == pair.male());
        };
    }
}
