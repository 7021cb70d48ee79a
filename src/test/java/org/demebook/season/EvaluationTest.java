package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The figures of pairs that somebody chose before, beside those of a plan. */
class EvaluationTest {
    private static final Effort SMALL = new Effort(60, 2, 4_000, 1);

    @Test
    void given_pairs_have_the_figures_of_the_plan_that_chose_them() {
        for (int seed = 0; seed < 40; seed++) {
            var season = new Herd(seed, 6, 8, 7, seed % 7).limited(3, 3, false);
            var planner = new SeasonPlanner(season, SMALL, Watch.NOBODY);
            var plan = (SeasonPlan) planner.plan();
            var same = planner.evaluate(
                    plan.litters().stream().map(SeasonPlan.Litter::pair).toList());
            assertThat(same)
                    .as("seed %d", seed)
                    .isEqualTo(new Evaluation(plan.litters(), plan.now(), plan.after(), plan.meanInbreeding(), true));
        }
    }

    /** Mean kinship by the definition: every young beside every other. */
    @Test
    void every_set_of_allowed_pairs_is_judged_whether_it_keeps_the_limits_or_not() {
        int broken = 0;
        for (int seed = 0; seed < 20; seed++) {
            var season = new Herd(seed, 6, 4, 3, seed % 7).limited(3, 2, true);
            var planner = new SeasonPlanner(season, SMALL, Watch.NOBODY);
            var free = season.without(new HashSet<>(season.constraints().stream()
                    .filter(constraint -> !(constraint instanceof Constraint.PairsOfFemale))
                    .toList()));
            for (int[] sires : Herd.everyPlan(free)) {
                var evaluation = planner.evaluate(pairs(sires));
                boolean keeps = Herd.keepsAll(season, sires);
                broken += keeps ? 0 : 1;
                assertThat(evaluation.keepsAll()).as("seed %d", seed).isEqualTo(keeps);
                double expected = Herd.meanKinship(season, sires);
                assertThat(evaluation.after()).isCloseTo(expected, within(1e-14));
                for (var litter : evaluation.litters()) {
                    int[] without = sires.clone();
                    without[litter.pair().female()] = Season.NONE;
                    assertThat(litter.adds()).isCloseTo(Herd.meanKinship(season, without) - expected, within(1e-14));
                }
            }
        }
        assertThat(broken).isGreaterThan(100);
    }

    private static List<Pair> pairs(int[] sires) {
        return IntStream.range(0, sires.length)
                .filter(female -> sires[female] >= 0)
                .mapToObj(female -> new Pair(female, sires[female]))
                .toList();
    }

    @Test
    void a_settled_pair_that_is_not_among_them_is_a_limit_not_kept() {
        var season = new Herd(1, 6, 4, 3, 3).season().lock(1, 1).build();
        var planner = new SeasonPlanner(season, SMALL, Watch.NOBODY);
        assertThat(planner.evaluate(List.of(new Pair(0, 1))).keepsAll()).isFalse();
        assertThat(planner.evaluate(List.of(new Pair(0, 1), new Pair(1, 1))).keepsAll())
                .isTrue();
    }

    @Test
    void pairs_that_are_not_allowed_have_no_figures() {
        var season = new Herd(1, 6, 4, 3, 3).season().refuse(1, 1).build();
        var planner = new SeasonPlanner(season, SMALL, Watch.NOBODY);
        for (var pair : List.of(new Pair(1, 1), new Pair(4, 0), new Pair(0, 3), new Pair(-1, 0), new Pair(0, -1))) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> planner.evaluate(List.of(pair)))
                    .withMessageContaining("not allowed");
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> planner.evaluate(List.of(new Pair(0, 0), new Pair(0, 1))))
                .withMessageContaining("stands in two");
    }
}
