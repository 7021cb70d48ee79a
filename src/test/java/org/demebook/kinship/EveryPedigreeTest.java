package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What holds for every pedigree of every kind of birth, tried on ten thousand made from seeds. Each message tells how to
 * make the pedigree that fails.
 */
class EveryPedigreeTest {
    private static final double ROUNDING = 1e-13;

    private record Made(long seed, int animals, int unknownSires) {
        static void each(Consumer<Made> rule) {
            RandomPedigree.seeds(RandomPedigree.MOST)
                    .mapToObj(seed -> new Made(seed, 1 + (int) (seed % 30), (int) (seed % 5)))
                    .forEach(rule);
        }

        RandomPedigree pedigree() {
            return new RandomPedigree(seed, animals, unknownSires);
        }

        Pedigree built() {
            return pedigree().told(pedigree().rowsAsMade());
        }
    }

    @Test
    void kinship_and_inbreeding_are_what_the_definition_says() {
        Made.each(made -> {
            double[][] defined = made.pedigree().kinshipByDefinition();
            var pedigree = made.built();
            int[] all = made.pedigree().rowsAsMade();
            double[][] table = pedigree.kinship(all, all);
            double error = 0;
            for (int i : all) {
                for (int j : all) {
                    error = Math.max(error, Math.abs(table[i][j] - defined[i][j]));
                }
                error = Math.max(error, Math.abs(pedigree.inbreeding(i) - (2 * defined[i][i] - 1)));
                error = Math.max(error, Math.abs(pedigree.kinship(i, i / 2) - defined[i][i / 2]));
            }
            assertThat(error).as("%s", made).isLessThan(ROUNDING);
        });
    }

    @Test
    void the_matrix_is_symmetric_positive_and_made_of_probabilities() {
        Made.each(made -> {
            var pedigree = made.built();
            int[] all = Reference.all(pedigree);
            double[][] table = pedigree.kinship(all, all);
            for (int i : all) {
                for (int j = 0; j < i; j++) {
                    boolean holds = table[i][j] >= 0
                            && table[i][j] <= 1 + ROUNDING
                            && Math.abs(table[i][j] - table[j][i]) < ROUNDING;
                    assertThat(holds)
                            .as("%s: %d and %d: %s", made, i, j, table[i][j])
                            .isTrue();
                }
                assertThat(table[i][i]).as("%s: %d", made, i).isBetween(.5 - ROUNDING, 1 + ROUNDING);
                assertThat(pedigree.kinship(i, i / 2)).as("%s: %d", made, i).isEqualTo(pedigree.kinship(i / 2, i));
            }
            assertThat(smallestPivot(table)).as("%s", made).isGreaterThan(-1e-11);
        });
    }

    /** Of Gauss' elimination: none is below zero in a positive semi-definite matrix. */
    private static double smallestPivot(double[][] symmetric) {
        double smallest = 0;
        for (int k = 0; k < symmetric.length; k++) {
            double pivot = symmetric[k][k];
            smallest = Math.min(smallest, pivot);
            for (int i = k + 1; i < symmetric.length && pivot > 1e-10; i++) {
                double factor = symmetric[i][k] / pivot;
                for (int j = k; j < symmetric.length; j++) {
                    symmetric[i][j] -= factor * symmetric[k][j];
                }
            }
        }
        return smallest;
    }

    @Test
    void other_numbers_and_another_order_change_not_a_bit() {
        Made.each(made -> {
            var pedigree = made.pedigree();
            int[] plain = pedigree.rowsAsMade();
            int[] shuffled = shuffled(plain.length, made.seed);
            assertThat(figures(pedigree.told(shuffled), shuffled, made))
                    .as("%s", made)
                    .isEqualTo(figures(pedigree.told(plain), plain, made));
        });
    }

    @Test
    void births_told_one_after_another_give_to_the_bit_what_all_at_once_would() {
        Made.each(made -> {
            var whole = made.pedigree();
            int[] rows = whole.rowsAsMade();
            int[] males = whole.noMales();
            var random = new SplittableRandom(made.seed);
            int known = Math.max(1, rows.length / 2);
            var builder = Pedigree.builder(known);
            whole.tell(builder, rows, 0, known, males);
            var grown = builder.build();
            while (known < rows.length) {
                int more = Math.min(rows.length - known, 1 + random.nextInt(3));
                var next = grown.extended(more);
                whole.tell(next, rows, known, known + more, males);
                grown = next.build();
                known += more;
            }
            var last = grown.extended(RandomPedigree.MORE);
            whole.tellMore(last);
            assertThat(figures(last.build(), rows, made))
                    .as("%s", made)
                    .isEqualTo(figures(whole.told(rows), rows, made));
        });
    }

    @Test
    void unknown_full_sibs_are_what_telling_them_as_animals_would_give() {
        Made.each(made -> {
            var told = made.pedigree().toldWithUnknownFullSibs();
            var pedigree = made.built().under(Convention.UNKNOWN_FULL_SIBS);
            int[] all = made.pedigree().rowsAsMade();
            double[][] toldTable = told.kinship(all, all);
            double[][] table = pedigree.kinship(all, all);
            double error =
                    Math.abs(told.pool(all).geneDiversity() - pedigree.pool(all).geneDiversity());
            for (int i : all) {
                for (int j : all) {
                    error = Math.max(error, Math.abs(table[i][j] - toldTable[i][j]));
                }
                error = Math.max(error, Math.abs(pedigree.inbreeding(i) - told.inbreeding(i)));
            }
            assertThat(error).as("%s", made).isLessThan(ROUNDING);
        });
    }

    private static int[] shuffled(int animals, long seed) {
        var rows = new ArrayList<>(IntStream.range(0, animals).boxed().toList());
        Collections.shuffle(rows, new Random(seed));
        return rows.stream().mapToInt(row -> row).toArray();
    }

    private static List<Object> figures(Pedigree pedigree, int[] rowOf, Made made) {
        var figures = new ArrayList<Object>();
        int[] young = Arrays.copyOfRange(rowOf, rowOf.length / 2, rowOf.length);
        var pool = pedigree.pool(young);
        figures.add(pool.geneDiversity());
        figures.add(pool.founderContributions().effectiveFounders());
        figures.add(Arrays.deepToString(pedigree.kinship(young, rowOf)));
        for (int row : rowOf) {
            figures.add(pedigree.inbreeding(row));
            figures.add(pedigree.knownFraction(row));
            figures.add(pool.meanKinship(row));
            figures.add(pedigree.kinship(row, rowOf[(int) (made.seed % rowOf.length)]));
        }
        return figures;
    }
}
