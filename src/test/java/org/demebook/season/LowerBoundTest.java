package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The bound against plans drawn at random, whose mean kinship is computed by the definition. */
class LowerBoundTest {
    private static final int PLANS = 10_000;
    private static final int PLANS_EACH = 250;

    @Test
    void no_plan_drawn_at_random_is_below_the_bound() {
        int plans = 0;
        for (int seed = 0; plans < PLANS; seed++) {
            var season = new Herd(seed, 8, 20, 16, 10 * (seed % 5)).limited(4, 5, seed % 2 == 0);
            var network = new Network(season);
            if (!Plans.isPossible(season)) {
                continue;
            }
            var bound = new LowerBound(season, network);
            bound.run(40, Watch.NOBODY);
            var random = new SplittableRandom(seed);
            for (int i = 0; i < PLANS_EACH; i++) {
                int[] plan = network.cheapest((female, male) -> random.nextInt(-100, 100), 20)
                        .sires();
                if (Herd.keepsAll(season, plan)) {
                    plans++;
                    assertThat(Herd.meanKinship(season, plan))
                            .as("seed %d, plan %d", seed, i)
                            .isGreaterThanOrEqualTo(bound.meanKinship());
                }
            }
        }
    }

    @Test
    void the_bound_is_reached_where_only_one_plan_is_possible() {
        var herd = new Herd(3, 6, 4, 4, 6);
        var builder = herd.season().litters(4);
        for (int female = 0; female < 4; female++) {
            builder.young(female, 1 + female);
            for (int male = 0; male < 4; male++) {
                if (male != female) {
                    builder.refuse(female, male);
                }
            }
        }
        var season = builder.build();
        var bound = new LowerBound(season, new Network(season));
        bound.run(5, Watch.NOBODY);
        double only = Herd.meanKinship(season, new int[] {0, 1, 2, 3});
        assertThat(bound.meanKinship()).isLessThanOrEqualTo(only).isGreaterThan(only * (1 - 2e-5));
        assertThat(bound.plans()).allMatch(plan -> Arrays.equals(plan, new int[] {0, 1, 2, 3}));
    }
}
