package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.demebook.kinship.Convention;
import org.demebook.kinship.Pedigree;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The mean kinship after a season, against the pedigree in which the young are born. The fractions were worked out in exact
 * rational arithmetic apart from this code; here the tabular method (Emik and Terrill 1949, from memory) gives them again.
 */
class NextMeanKinshipTest {
    private static final Offset<Double> LAST_DIGITS = within(2e-16);
    private static final int[] IDS = {1, 2, 3, 4, 5, 6, 10, 11, 12, 13, 14, 20, 21, 22, 23, 24};
    private static final int[] LIVING = {12, 13, 14, 20, 21, 22, 23, 24};
    /** Young, sire, dam. */
    private static final int[][] BIRTHS = {
        {10, 2, 1},
        {11, 2, 1},
        {12, 4, 3},
        {13, 4, 3},
        {14, 2, 5},
        {20, 12, 10},
        {21, 11, 13},
        {22, 14, 10},
        {23, 11, 10},
        {24, 12, 10}
    };

    @ParameterizedTest
    @CsvSource({
        "13, 14, 1, 133/162",
        "13, 14, 2, 657/800",
        "13, 6, 3, 989/1152",
    })
    void of_one_litter_it_is_the_fraction_worked_out_apart(int dam, int sire, int young, String expected) {
        int[] pool = sire == 6 ? with(LIVING, 6) : LIVING;
        var parts = expected.split("/");
        var exact = geneDiversity(pool, new int[][] {{dam, sire, young}});
        assertThat(exact).isEqualTo(Fraction.of(Long.parseLong(parts[0]), Long.parseLong(parts[1])));
        assertThat(planned(pool, new int[][] {{dam, sire, young}}).geneDiversityAfter())
                .isCloseTo(exact.toDouble(), LAST_DIGITS);
    }

    /** Six digits, as they stand in the worked example. */
    @ParameterizedTest
    @CsvSource({
        "13, 14, 3, .82025",
        "13, 14, 4, .81858",
        "13, 14, 5, .81657",
        "13, 14, 6, .81441",
        "20, 14, 6, .79624",
        "23, 12, 6, .79241",
        "20, 21, 6, .77997",
        "20, 24, 6, .76276",
        "23, 22, 6, .76228"
    })
    void of_one_litter_it_falls_when_too_many_young_count(int dam, int sire, int young, double expected) {
        assertThat(planned(LIVING, new int[][] {{dam, sire, young}}).geneDiversityAfter())
                .isCloseTo(expected, within(5e-6));
    }

    /** Two young of 13 by 14 are best, from five on it is lower than today; three of 13 by 6. */
    @Test
    void how_many_to_keep_is_read_off_the_litter() {
        double[] ofTwo = {419. / 512, 133. / 162, 657. / 800, .82025, .81858, .81657, .81441};
        double[] ofThree = {551. / 648, .85625, .858471, 989. / 1152, .857249};
        assertThat(keeping(LIVING, 14, 6)).containsExactly(ofTwo, within(5e-6));
        assertThat(keeping(with(LIVING, 6), 6, 4)).containsExactly(ofThree, within(5e-7));
    }

    private static double[] keeping(int[] pool, int sire, int most) {
        int[][] litters = {{13, sire, 1}};
        var planner = new SeasonPlanner(season(pool, litters), new Effort(1, 1, 0, 1), Watch.NOBODY);
        return planner.keeping((SeasonPlan) planner.plan(), new Pair(0, 0), most);
    }

    @Test
    void of_several_litters_it_is_that_of_the_pedigree_in_which_they_are_born() {
        int[][][] seasons = {
            {{13, 14, 2}, {20, 21, 3}},
            {{13, 14, 1}, {20, 14, 2}, {23, 12, 4}},
            {{13, 6, 3}, {20, 6, 1}, {23, 22, 2}}
        };
        for (int[][] litters : seasons) {
            assertThat(planned(LIVING, litters).geneDiversityAfter())
                    .as(Arrays.deepToString(litters))
                    .isCloseTo(geneDiversity(LIVING, litters).toDouble(), LAST_DIGITS);
        }
    }

    @Test
    void of_one_litter_it_is_what_the_pool_says_of_it_under_both_conventions() {
        for (int seed = 0; seed < 30; seed++) {
            for (var convention : List.of(Convention.UNRELATED, Convention.UNKNOWN_FULL_SIBS)) {
                var herd = new Herd(seed, 6, 3, 3, 4);
                var pedigree = herd.pedigree.under(convention);
                var pool = pedigree.pool(herd.pool);
                var season = Season.of(pedigree, pool, herd.females, herd.males)
                        .young(1, 5)
                        .litters(1)
                        .lock(1, 2)
                        .build();
                var plan = (SeasonPlan) new SeasonPlanner(season, new Effort(1, 1, 0, 1), Watch.NOBODY).plan();
                var effect = pool.withLitter(herd.males[2], herd.females[1], 5);
                assertThat(plan.geneDiversityAfter()).isCloseTo(effect.geneDiversity(), within(1e-14));
                assertThat(plan.meanInbreeding()).isCloseTo(effect.inbreeding(), within(1e-15));
                assertThat(plan.litters().get(0).adds())
                        .isCloseTo(effect.geneDiversity() - pool.geneDiversity(), within(1e-14));
            }
        }
    }

    @Test
    void of_many_litters_it_is_that_of_the_pool_with_the_young_in_it() {
        for (int seed = 0; seed < 30; seed++) {
            var herd = new Herd(seed, 6, 6, 4, 5);
            var random = new SplittableRandom(seed);
            var builder = herd.season().litters(4);
            var born = herd.pedigree.extended(40);
            int[] pool = herd.pool;
            int next = herd.pedigree.size();
            for (int female = 0; female < 4; female++) {
                int male = random.nextInt(4);
                int young = 1 + random.nextInt(8);
                builder.young(female, young).lock(female, male);
                for (int i = 0; i < young; i++) {
                    born.young(next, herd.males[male], herd.females[female]);
                    pool = with(pool, next++);
                }
            }
            for (int unborn = next; unborn < herd.pedigree.size() + 40; unborn++) {
                born.founder(unborn);
            }
            var plan = (SeasonPlan) new SeasonPlanner(builder.build(), new Effort(1, 1, 0, 1), Watch.NOBODY).plan();
            assertThat(plan.after())
                    .as("seed %d", seed)
                    .isCloseTo(born.build().pool(pool).meanKinship(), within(1e-14));
        }
    }

    private static SeasonPlan planned(int[] pool, int[][] litters) {
        return (SeasonPlan) new SeasonPlanner(season(pool, litters), new Effort(1, 1, 0, 1), Watch.NOBODY).plan();
    }

    private static Season season(int[] pool, int[][] litters) {
        var builder = Pedigree.builder(IDS.length);
        for (int founder = 1; founder <= 6; founder++) {
            builder.founder(row(founder));
        }
        for (int[] birth : BIRTHS) {
            builder.young(row(birth[0]), row(birth[1]), row(birth[2]));
        }
        var pedigree = builder.build();
        int[] dams = Arrays.stream(litters).mapToInt(litter -> litter[0]).toArray();
        int[] sires =
                Arrays.stream(litters).mapToInt(litter -> litter[1]).distinct().toArray();
        var season = Season.of(pedigree, pedigree.pool(rows(pool)), rows(dams), rows(sires))
                .litters(litters.length);
        for (int female = 0; female < litters.length; female++) {
            int sire = litters[female][1];
            season.young(female, litters[female][2]).lock(female, (int)
                    Arrays.stream(sires).takeWhile(other -> other != sire).count());
        }
        return season.build();
    }

    private static int row(int id) {
        return Arrays.binarySearch(IDS, id);
    }

    private static int[] rows(int[] ids) {
        return Arrays.stream(ids).map(NextMeanKinshipTest::row).toArray();
    }

    private static int[] with(int[] animals, int more) {
        return IntStream.concat(Arrays.stream(animals), IntStream.of(more)).toArray();
    }

    /** By the tabular method in fractions. */
    private static Fraction geneDiversity(int[] living, int[][] litters) {
        int young = Arrays.stream(litters).mapToInt(litter -> litter[2]).sum();
        int all = IDS.length + young;
        int[] sire = new int[all];
        int[] dam = new int[all];
        Arrays.fill(sire, -1);
        for (int[] birth : BIRTHS) {
            sire[row(birth[0])] = row(birth[1]);
            dam[row(birth[0])] = row(birth[2]);
        }
        int[] pool = rows(living);
        int next = IDS.length;
        for (int[] litter : litters) {
            for (int i = 0; i < litter[2]; i++) {
                dam[next] = row(litter[0]);
                sire[next] = row(litter[1]);
                pool = with(pool, next++);
            }
        }
        var kinship = new Fraction[all][all];
        for (int a = 0; a < all; a++) {
            for (int b = 0; b < a; b++) {
                kinship[a][b] = sire[a] < 0
                        ? Fraction.of(0, 1)
                        : kinship[b][sire[a]].plus(kinship[b][dam[a]]).times(Fraction.of(1, 2));
                kinship[b][a] = kinship[a][b];
            }
            kinship[a][a] = sire[a] < 0
                    ? Fraction.of(1, 2)
                    : kinship[sire[a]][dam[a]].plus(Fraction.of(1, 1)).times(Fraction.of(1, 2));
        }
        var sum = Fraction.of(0, 1);
        for (int a : pool) {
            for (int b : pool) {
                sum = sum.plus(kinship[a][b]);
            }
        }
        return Fraction.of(1, 1).plus(sum.times(Fraction.of(-1, (long) pool.length * pool.length)));
    }

    /** In lowest terms. */
    private record Fraction(BigInteger over, BigInteger under) {
        static Fraction of(long over, long under) {
            return of(BigInteger.valueOf(over), BigInteger.valueOf(under));
        }

        private static Fraction of(BigInteger over, BigInteger under) {
            var common = over.gcd(under);
            return new Fraction(over.divide(common), under.divide(common));
        }

        Fraction plus(Fraction other) {
            return of(over.multiply(other.under).add(other.over.multiply(under)), under.multiply(other.under));
        }

        Fraction times(Fraction other) {
            return of(over.multiply(other.over), under.multiply(other.under));
        }

        double toDouble() {
            return over.doubleValue() / under.doubleValue();
        }
    }
}
