package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.demebook.kinship.Convention;
import org.demebook.kinship.Pedigree;
import org.junit.jupiter.api.Test;

/** Pools in which animals count for what they are still to give, by the definition: every animal beside every other. */
class WeightedPoolTest {
    private static final Effort SMALL = new Effort(60, 2, 10_000, 1);

    @Test
    void weights_of_one_are_the_pool_as_it_is() {
        for (var convention : List.of(Convention.UNRELATED, Convention.UNKNOWN_FULL_SIBS)) {
            var herd = new Herd(4, 6, 5, 4, 6);
            var pedigree = herd.pedigree.under(convention);
            double[] one = new double[herd.pool.length];
            Arrays.fill(one, 1);
            var plain = Season.of(pedigree, pedigree.pool(herd.pool), herd.females, herd.males)
                    .build()
                    .genes;
            var weighed = Season.of(pedigree, herd.pool, one, herd.females, herd.males)
                    .build()
                    .genes;
            assertThat(weighed.size()).isEqualTo(plain.size());
            assertThat(weighed.meanKinship()).isCloseTo(plain.meanKinship(), within(1e-15));
            assertThat(weighed.toPool()).containsExactly(plain.toPool(), within(1e-15));
        }
    }

    /** The young are born into a pedigree; each animal there weighs what it weighed, each young 1. */
    @Test
    void what_comes_of_a_season_is_every_animal_beside_every_other_times_both_weights() {
        for (int seed = 0; seed < 30; seed++) {
            var herd = new Herd(seed, 6, 6, 4, 5);
            var random = new SplittableRandom(seed);
            double[] weights = weights(herd, random);
            var builder = Season.of(herd.pedigree, herd.pool, weights, herd.females, herd.males)
                    .litters(3);
            var born = herd.pedigree.extended(12);
            int next = herd.pedigree.size();
            for (int female = 0; female < 3; female++) {
                int male = random.nextInt(4);
                builder.young(female, 4).lock(female, male);
                for (int i = 0; i < 4; i++) {
                    born.young(next++, herd.males[male], herd.females[female]);
                }
            }
            int[] then = Arrays.copyOf(herd.pool, herd.pool.length + 12);
            double[] weightsThen = Arrays.copyOf(weights, then.length);
            for (int i = 0; i < 12; i++) {
                then[herd.pool.length + i] = herd.pedigree.size() + i;
                weightsThen[herd.pool.length + i] = 1;
            }
            var plan = (SeasonPlan) new SeasonPlanner(builder.build(), new Effort(1, 1, 0, 1), Watch.NOBODY).plan();
            assertThat(plan.now())
                    .as("seed %d", seed)
                    .isCloseTo(meanKinship(herd.pedigree, herd.pool, weights), within(1e-14));
            assertThat(plan.after())
                    .as("seed %d", seed)
                    .isCloseTo(meanKinship(born.build(), then, weightsThen), within(1e-14));
        }
    }

    private static double[] weights(Herd herd, SplittableRandom random) {
        return Arrays.stream(herd.pool)
                .mapToDouble(animal -> random.nextInt(4) == 0 ? 0 : random.nextDouble())
                .toArray();
    }

    private static double meanKinship(Pedigree pedigree, int[] animals, double[] weights) {
        double sum = 0;
        double size = Arrays.stream(weights).sum();
        for (int i = 0; i < animals.length; i++) {
            for (int j = 0; j < animals.length; j++) {
                sum += weights[i] * weights[j] * pedigree.kinship(animals[i], animals[j]);
            }
        }
        return sum / (size * size);
    }

    @Test
    void the_plan_is_the_best_of_all_and_none_is_below_the_bound() {
        int seasons = 0;
        for (int seed = 0; seasons < 40; seed++) {
            var herd = new Herd(seed, 5, 4, 3, 6);
            var builder = Season.of(herd.pedigree, herd.pool, weights(herd, herd.random), herd.females, herd.males)
                    .littersAtMost(3);
            for (int female = 0; female < 4; female++) {
                builder.young(female, .5 * (1 + herd.random.nextInt(8)));
            }
            var season = builder.build();
            var plan = (SeasonPlan) new SeasonPlanner(season, SMALL, Watch.NOBODY).plan();
            double best = Herd.everyPlan(season).stream()
                    .mapToDouble(sires -> Herd.meanKinship(season, sires))
                    .min()
                    .orElseThrow();
            assertThat(plan.after()).as("seed %d", seed).isCloseTo(best, within(1e-12));
            assertThat(plan.bound()).as("seed %d", seed).isLessThanOrEqualTo(best);
            seasons++;
        }
    }

    /**
     * Two founders, one litter. The first has a daughter and a granddaughter already, so the other is planned. But if this is the
     * first one's last season, and the other has all of hers before her, it is the first one's turn.
     */
    @Test
    void an_animal_that_will_not_breed_again_comes_first() {
        int last = 0;
        int other = 1;
        int sire = 2;
        var builder = Pedigree.builder(6);
        IntStream.range(0, 4).forEach(builder::founder);
        var pedigree = builder.young(4, 3, last).young(5, 3, 4).build();
        int[] pool = {last, other, sire, 3, 4, 5};
        int[] females = {last, other};
        int[] males = {sire};
        double[] alike = {1, 1, 1, 1, 1, 1};
        double[] lastChance = {0, 1, 1, 1, .5, .25};
        assertThat(planned(Season.of(pedigree, pool, alike, females, males))).isEqualTo(other);
        assertThat(planned(Season.of(pedigree, pool, lastChance, females, males)))
                .isEqualTo(last);
    }

    private static int planned(SeasonBuilder builder) {
        var plan = (SeasonPlan) new SeasonPlanner(builder.litters(1).build(), SMALL, Watch.NOBODY).plan();
        return plan.litters().get(0).pair().female();
    }

    /** By how much a first young of an animal adds less to the sum of kinships: twice its weight lost × its kinship with itself, ½. */
    @Test
    void a_weight_that_is_lost_makes_a_young_of_that_animal_cheaper_by_its_kinship_with_itself() {
        var builder = Pedigree.builder(3);
        IntStream.range(0, 3).forEach(builder::founder);
        var pedigree = builder.build();
        double stays = linear(pedigree, 1);
        double leaves = linear(pedigree, .25);
        assertThat(stays - leaves).isCloseTo(2 * .75 * .5, within(1e-15));
    }

    private static double linear(Pedigree pedigree, double weight) {
        return Season.of(pedigree, new int[] {0, 1, 2}, new double[] {weight, 1, 1}, new int[] {0}, new int[] {1})
                .build()
                .genes
                .linear(0);
    }

    @Test
    void weights_that_are_none_are_refused() {
        var herd = new Herd(1, 4, 2, 2, 0);
        int[] pool = herd.pool;
        refused(herd, pool, new double[] {1, 1, 1});
        refused(herd, pool, new double[] {1, 1, 1, -.1});
        refused(herd, pool, new double[] {1, 1, 1, Double.NaN});
        refused(herd, pool, new double[] {1, 1, 1, Double.POSITIVE_INFINITY});
        refused(herd, pool, new double[4]);
        refused(herd, new int[] {pool[0], pool[1], pool[2], pool[2]}, new double[] {1, 1, 1, 1});
        var knownOnly = herd.pedigree.under(Convention.KNOWN_ONLY);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Season.of(knownOnly, pool, new double[] {1, 1, 1, 1}, herd.females, herd.males));
    }

    private static void refused(Herd herd, int[] pool, double[] weights) {
        assertThatIllegalArgumentException()
                .as(Arrays.toString(weights))
                .isThrownBy(() -> Season.of(herd.pedigree, pool, weights, herd.females, herd.males));
    }
}
