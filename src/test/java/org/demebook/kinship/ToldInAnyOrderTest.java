package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;

/**
 * Two servers may have heard the same in another order. Probabilities and kinships here are no sums of halves, so that
 * every other order of adding would show in the last bit of some figure.
 */
class ToldInAnyOrderTest {
    private static final int FOUNDERS = 8;
    private static final int LITTER = 6;

    /** Founders, and a litter whose sire is found by the last told. */
    private static String answers(Consumer<PedigreeBuilder> more) {
        var builder = Pedigree.builder(FOUNDERS + LITTER);
        for (int row = 0; row < FOUNDERS + LITTER; row++) {
            builder.key(row, new UUID(row, row));
        }
        for (int row = 0; row < FOUNDERS; row++) {
            builder.founder(row, row / 11.);
        }
        more.accept(builder);
        var pedigree = builder.build();
        double[] unequal = new double[pedigree.size()];
        Arrays.setAll(unequal, row -> 1. / (3 + row));
        int[] all = Reference.all(pedigree);
        var pool = pedigree.pool(all);
        return Arrays.toString(pedigree.inbreeding())
                + Arrays.toString(pedigree.relationshipTimes(unequal))
                + Arrays.deepToString(pedigree.kinship(all, all))
                + Arrays.toString(pool.meanKinships())
                + pool.meanKinship()
                + pool.founderContributions().unnamed()
                + Arrays.toString(pool.founderContributions().shares())
                + pool.geneDrop(32, 1).geneDiversity();
    }

    private static void litter(PedigreeBuilder builder, int sire) {
        for (int young = 0; young < LITTER; young++) {
            builder.young(FOUNDERS + young, sire, young < 2 ? young : FOUNDERS + young - 2);
        }
    }

    @Test
    void candidates_are_named_in_any_order() {
        int[] candidates = {0, 1, 2, 3, 4, 5, 6, 7};
        double[] shares = {.1, .15, .05, .12, .07, .2, .11, .13};
        var plain = answers(builder -> litter(builder, builder.unknownSire(candidates, shares)));
        for (int turn = 1; turn < FOUNDERS; turn++) {
            int[] others = new int[FOUNDERS];
            double[] theirs = new double[FOUNDERS];
            for (int i = 0; i < FOUNDERS; i++) {
                others[i] = candidates[(7 * i + turn) % FOUNDERS];
                theirs[i] = shares[(7 * i + turn) % FOUNDERS];
            }
            assertThat(answers(builder -> litter(builder, builder.unknownSire(others, theirs))))
                    .as("turned by %d", turn)
                    .isEqualTo(plain);
        }
    }

    @Test
    void a_candidate_named_more_than_once_has_all_his_chances_together() {
        var once = answers(
                builder -> litter(builder, builder.unknownSire(new int[] {3, 4}, new double[] {.1 + .2 + .3, .25})));
        for (var shares : List.of(
                new double[] {.1, .2, .3, .25}, new double[] {.3, .2, .1, .25}, new double[] {.2, .3, .1, .25})) {
            assertThat(answers(builder -> litter(builder, builder.unknownSire(new int[] {3, 3, 3, 4}, shares))))
                    .as(Arrays.toString(shares))
                    .isEqualTo(once);
        }
    }

    @Test
    void sires_of_sires_are_told_in_any_order() {
        // Two who lead to the same litter: they differ in candidates, or in probabilities alone.
        for (int third : new int[] {2, 5}) {
            int[] one = {0, 1, 2};
            int[] other = {0, 1, third};
            double[] ofOne = {.31, .17, .23};
            double[] ofOther = {.13, .41, .29};
            var plain = answers(builder -> {
                int first = builder.unknownSire(one, ofOne);
                int second = builder.unknownSire(other, ofOther);
                litter(builder, builder.unknownSire(new int[] {first, second}, new double[] {.37, .43}));
            });
            var turned = answers(builder -> {
                int second = builder.unknownSire(other, ofOther);
                int first = builder.unknownSire(one, ofOne);
                litter(builder, builder.unknownSire(new int[] {second, first}, new double[] {.43, .37}));
            });
            assertThat(turned).as("third candidate %d", third).isEqualTo(plain);
        }
    }

    @Test
    void litters_of_unknown_sires_stand_in_the_order_of_their_first_young() {
        int[] keys = {1, 20, 21, 4, 22, 9};
        var builder = Pedigree.builder(keys.length).founder(1).founder(2).founder(4);
        for (int row = 0; row < keys.length; row++) {
            builder.key(row, new UUID(keys[row], 0));
        }
        int later = builder.unknownSire(new int[] {1, 2}, new double[] {.3, .4});
        int first = builder.unknownSire(new int[] {1, 2}, new double[] {.3, .4});
        var pedigree =
                builder.young(0, first, 4).young(3, later, 4).young(5, first, 4).build();
        assertThat(pedigree.animalsInOrder()).containsExactly(1, 2, 4, 0, 5, 3);
    }

    @Test
    void kinships_of_founders_are_told_in_any_order() {
        var plain = answers(builder -> {
            for (int row = 0; row < FOUNDERS; row++) {
                for (int other = 0; other < row; other++) {
                    builder.founderKinship(row, other, (row + other) / 131.);
                }
            }
            litter(builder, 0);
        });
        var turned = answers(builder -> {
            for (int other = FOUNDERS - 1; other >= 0; other--) {
                for (int row = FOUNDERS - 1; row > other; row--) {
                    builder.founderKinship(other, row, (row + other) / 131.);
                }
            }
            litter(builder, 0);
        });
        assertThat(turned).isEqualTo(plain);
    }
}
