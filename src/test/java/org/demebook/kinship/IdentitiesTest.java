package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds for every pedigree, tried on made-up ones. The seed stands in every message. */
class IdentitiesTest {
    private static final Offset<Double> ROUNDING = within(1e-13);

    static LongStream seeds() {
        return RandomPedigree.seeds(40);
    }

    private static RandomPedigree made(long seed) {
        return new RandomPedigree(seed, 40, (int) (seed % 5));
    }

    private static Pedigree pedigree(long seed) {
        var made = made(seed);
        return made.told(made.rowsAsMade());
    }

    private static int[] pool(Pedigree pedigree, long seed) {
        return new SplittableRandom(seed)
                .ints(0, pedigree.size() - RandomPedigree.MORE)
                .distinct()
                .limit(12)
                .toArray();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void kinship_is_what_its_definition_says_on_the_mean_over_all_sires(long seed) {
        var made = made(seed);
        var pedigree = made.told(made.rowsAsMade());
        double[][] defined = made.kinshipByDefinition();
        int[] all = made.rowsAsMade();
        double[][] table = pedigree.kinship(all, all);
        for (int i : all) {
            for (int j : all) {
                assertThat(table[i][j])
                        .as("seed %d: %d and %d in a table", seed, i, j)
                        .isCloseTo(defined[i][j], ROUNDING);
                assertThat(pedigree.kinship(i, j))
                        .as("seed %d: %d and %d", seed, i, j)
                        .isCloseTo(defined[i][j], ROUNDING);
            }
            assertThat(pedigree.inbreeding(i))
                    .as("seed %d: F of %d", seed, i)
                    .isCloseTo(2 * defined[i][i] - 1, ROUNDING);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void kinship_is_symmetric_to_the_last_bit(long seed) {
        var pedigree = pedigree(seed);
        for (int i = 0; i < pedigree.size(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(pedigree.kinship(i, j))
                        .as("seed %d: %d and %d", seed, i, j)
                        .isEqualTo(pedigree.kinship(j, i));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void one_more_young_has_the_inbreeding_foretold_and_changes_nobody_elses(long seed) {
        var made = made(seed);
        var before = made.told(made.rowsAsMade());
        int[] parents = new SplittableRandom(seed)
                .ints(0, made.animals)
                .distinct()
                .limit(2)
                .toArray();
        var after = made.told(made.rowsAsMade(), builder -> builder.young(made.animals, parents[0], parents[1]));
        assertThat(after.inbreeding(made.animals))
                .as("seed %d", seed)
                .isCloseTo(before.inbreedingOfYoung(parents[0], parents[1]), ROUNDING);
        for (int i = 0; i < made.animals; i++) {
            assertThat(after.inbreeding(i)).as("seed %d: %d", seed, i).isEqualTo(before.inbreeding(i));
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_vector_times_relationship_is_never_negative_in_square(long seed) {
        var pedigree = pedigree(seed);
        double[] v = new SplittableRandom(seed).doubles(pedigree.size(), -1, 1).toArray();
        double[] product = pedigree.relationshipTimes(v);
        double square = 0;
        for (int i = 0; i < v.length; i++) {
            square += v[i] * product[i];
        }
        assertThat(square).as("seed %d", seed).isGreaterThanOrEqualTo(-1e-12);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void founder_shares_add_up_to_one_under_both_conventions(long seed) {
        var pedigree = pedigree(seed);
        for (var convention : Convention.values()) {
            var contributions =
                    pedigree.under(convention).pool(pool(pedigree, seed)).founderContributions();
            double sum = contributions.unnamed();
            double squares = 0;
            for (double share : contributions.shares()) {
                sum += share;
                squares += share * share;
            }
            assertThat(sum).as("seed %d, %s", seed, convention).isCloseTo(1, ROUNDING);
            assertThat(1 / contributions.effectiveFounders())
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(squares - 1e-13);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void mean_kinship_is_the_mean_of_the_table_itself_included(long seed) {
        var pedigree = pedigree(seed);
        int[] living = pool(pedigree, seed);
        var pool = pedigree.pool(living);
        double[][] table = pedigree.kinship(Reference.all(pedigree), living);
        double all = 0;
        for (int i = 0; i < pedigree.size(); i++) {
            double sum = 0;
            for (double kinship : table[i]) {
                sum += kinship;
            }
            assertThat(pool.meanKinship(i)).as("seed %d: %d", seed, i).isCloseTo(sum / living.length, ROUNDING);
        }
        for (int i : living) {
            all += pool.meanKinship(i);
        }
        assertThat(1 - pool.geneDiversity()).as("seed %d", seed).isCloseTo(all / living.length, ROUNDING);
        assertThat(1 / (2 * pool.founderGenomeEquivalents()))
                .as("seed %d", seed)
                .isCloseTo(pool.meanKinship(), ROUNDING);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_litters_effect_is_what_the_pool_has_once_it_is_born(long seed) {
        var made = made(seed);
        var before = made.told(made.rowsAsMade());
        int[] living = pool(before, seed);
        int young = 1 + (int) (seed % 3);
        var after = made.told(made.rowsAsMade(), builder -> {
            for (int i = 0; i < young; i++) {
                builder.young(made.animals + i, living[0], living[1]);
            }
        });
        int[] grown = IntStream.concat(Arrays.stream(living), IntStream.range(made.animals, made.animals + young))
                .toArray();
        for (var convention : Convention.values()) {
            var effect = before.under(convention).pool(living).withLitter(living[0], living[1], young);
            var born = after.under(convention).pool(grown);
            assertThat(effect.geneDiversity())
                    .as("seed %d, %s", seed, convention)
                    .isCloseTo(born.geneDiversity(), ROUNDING);
            var then = after.under(convention);
            assertThat(effect.inbreeding())
                    .as("seed %d, %s", seed, convention)
                    .isCloseTo(then.inbreeding(made.animals), ROUNDING);
            assertThat(effect.meanKinship())
                    .as("seed %d, %s", seed, convention)
                    .isCloseTo(then.pool(living).meanKinship(made.animals), ROUNDING);
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void an_ancestors_marginal_share_is_that_of_lines_of_descent_through_it_and_none_chosen_before(long seed) {
        var made = new RandomPedigree(seed, 40, 0);
        var pedigree = made.told(made.rowsAsMade());
        int[] living = pool(pedigree, seed);
        var found = pedigree.pool(living).effectiveAncestors(pedigree.size());
        var before = new HashSet<Integer>();
        double squares = 0;
        double all = 0;
        for (int k = 0; k < found.ancestors().length; k++) {
            double largest = 0;
            for (int animal = 0; animal < made.animals; animal++) {
                largest = Math.max(largest, linesThrough(animal, before, made, living));
            }
            assertThat(found.marginalShares()[k])
                    .as("seed %d: choice %d", seed, k)
                    .isCloseTo(largest, ROUNDING)
                    .isCloseTo(linesThrough(found.ancestors()[k], before, made, living), ROUNDING);
            before.add(found.ancestors()[k]);
            squares += largest * largest;
            all += largest;
        }
        assertThat(all).as("seed %d", seed).isCloseTo(1, ROUNDING);
        assertThat(found.atMost()).as("seed %d", seed).isCloseTo(1 / squares, within(1e-9));
        assertThat(found.atLeast()).as("seed %d", seed).isEqualTo(found.atMost());
    }

    private static double linesThrough(int ancestor, Set<Integer> before, RandomPedigree made, int[] living) {
        double sum = 0;
        for (int animal : living) {
            sum += linesThrough(ancestor, before, made, animal, false);
        }
        return sum / living.length;
    }

    /** Up one line after another, each with its probability. */
    private static double linesThrough(int ancestor, Set<Integer> before, RandomPedigree made, int at, boolean met) {
        if (at < 0) {
            return met ? 1 : 0;
        }
        if (before.contains(at)) {
            return 0;
        }
        boolean now = met || at == ancestor;
        return linesThrough(ancestor, before, made, made.sire(at), now) / 2
                + linesThrough(ancestor, before, made, made.dam(at), now) / 2;
    }
}
