package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Going through all plans that might be better, against going through all plans. */
class ProofTest {
    private static final long PLENTY = 1_000_000;

    private static Season limited(int seed) {
        var season = new Herd(seed, 6, 5, 4, seed % 7).limited(3, 1 + seed % 4, seed % 3 > 0);
        return seed % 5 == 0 ? season.without(java.util.Set.of(new Constraint.LittersWanted(season.least))) : season;
    }

    @Test
    void from_the_worst_plan_it_comes_to_the_best_and_proves_it() {
        int possible = 0;
        for (int seed = 0; seed < 300; seed++) {
            var season = limited(seed);
            var all = Herd.everyPlan(season);
            if (all.isEmpty()) {
                continue;
            }
            possible++;
            int[] worst = all.get(0);
            double least = 1;
            for (int[] sires : all) {
                least = Math.min(least, Herd.meanKinship(season, sires));
                if (Herd.meanKinship(season, sires) > Herd.meanKinship(season, worst)) {
                    worst = sires;
                }
            }
            var proof = new Proof(season, worst, 0, Watch.NOBODY);
            double proven = proof.prove(1, PLENTY);
            assertThat(Herd.meanKinship(season, proof.best()))
                    .as("seed %d", seed)
                    .isCloseTo(least, within(1e-13));
            assertThat(Herd.keepsAll(season, proof.best())).as("seed %d", seed).isTrue();
            assertThat(proven).as("seed %d", seed).isLessThanOrEqualTo(least).isGreaterThan(least * (1 - 1e-9));
        }
        assertThat(possible).isGreaterThan(150);
    }

    @Test
    void so_it_does_with_a_settled_pair() {
        for (int seed = 0; seed < 40; seed++) {
            var season = new Herd(seed, 6, 5, 4, 3)
                    .season()
                    .lock(2, 1)
                    .litters(3)
                    .young(2, 2.5)
                    .young(0, 2)
                    .build();
            var all = Herd.everyPlan(season);
            double least = all.stream()
                    .mapToDouble(sires -> Herd.meanKinship(season, sires))
                    .min()
                    .orElseThrow();
            var proof = new Proof(season, all.get(0), 0, Watch.NOBODY);
            assertThat(proof.prove(1, PLENTY)).as("seed %d", seed).isCloseTo(least, within(1e-9));
        }
    }

    @Test
    void where_the_steps_are_not_enough_or_somebody_stops_it_nothing_is_proven() {
        var season = new Herd(1, 11, 12, 10, 3).season().litters(6).build();
        var plan = new SeasonPlanner(season, new Effort(60, 2, 4_000, 1), Watch.NOBODY);
        int[] sires = ((SeasonPlan) plan.plan()).sires(season);
        assertThat(new Proof(season, sires, .01, Watch.NOBODY).prove(1, 10)).isZero();
        assertThat(new Proof(season, sires, .01, Watch.NOBODY).raise(10)).isEqualTo(.01);
        var stopped = new Proof(season, sires, .01, progress -> false);
        assertThat(stopped.prove(1, 8_192)).isZero();
        assertThat(stopped.stopped()).isTrue();
    }

    @Test
    void a_plan_for_eight_females_is_proven_the_best_where_the_bound_of_mixtures_leaves_a_gap() {
        int open = 0;
        for (int seed = 0; seed < 30; seed++) {
            var builder = new Herd(seed, 7, 8, 6, seed % 5).season().litters(4);
            for (int female = 0; female < 8; female++) {
                builder.young(female, .5 * (1 + female * 7 % 8));
            }
            var season = builder.build();
            var lower = new LowerBound(season, new Network(season));
            lower.run(300, Watch.NOBODY);
            var plan = (SeasonPlan) new SeasonPlanner(season, new Effort(300, 2, 4_000, 1), Watch.NOBODY).plan();
            open += plan.after() > lower.meanKinship() * 1.001 ? 1 : 0;
            assertThat(plan.gap()).as("seed %d", seed).isLessThan(1e-9);
        }
        assertThat(open).isGreaterThan(10);
    }
}
