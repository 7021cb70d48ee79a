package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.demebook.kinship.GeneDrop;
import org.demebook.kinship.Pedigree;
import org.junit.jupiter.api.Test;

/** Lots that are drawn, against every outcome with its probability. */
class AfterLittersTest {
    private static final int DRAWS = 4_000;

    /** Founders 0 to 3; 4 is a young of 0 and 1. */
    private final Pedigree pedigree = Pedigree.builder(5)
            .founder(0)
            .founder(1)
            .founder(2)
            .founder(3)
            .young(4, 0, 1)
            .build();

    private static final Litter FIRST = new Litter(2, 4, new LitterChance(.8, 3, .6));
    private static final Litter SECOND = new Litter(3, 0, new LitterChance(.5, 2, .9));

    private record Outcome(double geneDiversity, double probability) {}

    /** Of two litters of three and two young at most: twelve outcomes. */
    private List<Outcome> everyOutcome(int... staying) {
        var born = pedigree.extended(5)
                .young(5, 4, 2)
                .young(6, 4, 2)
                .young(7, 4, 2)
                .young(8, 0, 3)
                .young(9, 0, 3)
                .build();
        var outcomes = new ArrayList<Outcome>();
        for (int first = 0; first <= 3; first++) {
            for (int second = 0; second <= 2; second++) {
                int[] pool = IntStream.concat(
                                IntStream.of(staying),
                                IntStream.concat(IntStream.range(5, 5 + first), IntStream.range(8, 8 + second)))
                        .toArray();
                double diversity = pool.length == 0 ? 0 : born.pool(pool).geneDiversity();
                outcomes.add(new Outcome(
                        diversity, probability(FIRST.chance(), first) * probability(SECOND.chance(), second)));
            }
        }
        outcomes.sort(Comparator.comparingDouble(Outcome::geneDiversity));
        return outcomes;
    }

    /** Binomial, if the litter is born; none, if not. */
    private static double probability(LitterChance chance, int count) {
        double ways = 1;
        for (int i = 0; i < count; i++) {
            ways = ways * (chance.young() - i) / (i + 1);
        }
        double ofBorn = ways * Math.pow(chance.each(), count) * Math.pow(1 - chance.each(), chance.young() - count);
        return chance.born() * ofBorn + (count == 0 ? 1 - chance.born() : 0);
    }

    private static double quantile(List<Outcome> outcomes, double share) {
        double sum = 0;
        for (var outcome : outcomes) {
            sum += outcome.probability();
            // so far from the next step that so many draws do not err
            assertThat(Math.abs(sum - share)).isGreaterThan(.01);
            if (sum > share) {
                return outcome.geneDiversity();
            }
        }
        throw new AssertionError("probabilities add up to " + sum);
    }

    @Test
    void mean_and_interval_are_those_of_all_outcomes() {
        for (int[] staying : new int[][] {{0, 1, 2, 4}, {1}, {0, 4}, {}}) {
            var outcomes = everyOutcome(staying);
            double mean = outcomes.stream()
                    .mapToDouble(outcome -> outcome.geneDiversity() * outcome.probability())
                    .sum();
            var drawn = drawn(staying, 1).geneDiversity();
            assertThat(drawn.mean()).isCloseTo(mean, within(4 * drawn.standardError()));
            assertThat(drawn.standardError()).isLessThan(.01);
            assertThat(drawn.low()).isCloseTo(quantile(outcomes, .05), within(1e-15));
            assertThat(drawn.high()).isCloseTo(quantile(outcomes, .95), within(1e-15));
        }
    }

    private AfterLitters drawn(int[] staying, int loci, int... founders) {
        return AfterLitters.drawn(pedigree, staying, List.of(FIRST, SECOND), DRAWS, loci, 7, founders);
    }

    /** The law of total variance: that of the litters, and that of a locus by the number of loci. */
    @Test
    void the_lot_of_genes_leaves_the_mean_and_adds_its_variance_by_the_number_of_loci() {
        int[] staying = {1, 2, 4};
        var one = drawn(staying, 1);
        var four = drawn(staying, 4);
        for (var after : List.of(one, four)) {
            double error = Math.hypot(
                    after.ofGenes().standardError(), after.geneDiversity().standardError());
            assertThat(after.ofGenes().mean()).isCloseTo(after.geneDiversity().mean(), within(4 * error));
        }
        double added = added(one);
        assertThat(added).isPositive();
        assertThat(added(four)).isCloseTo(added / 4, within(.2 * added / 4));
        assertThat(width(one.ofGenes())).isGreaterThan(width(four.ofGenes()));
        assertThat(drawn(staying, 1)).isEqualTo(one);
    }

    private static double added(AfterLitters after) {
        double ofLitters = after.geneDiversity().standardError();
        double ofAll = after.ofGenes().standardError();
        return DRAWS * (ofAll * ofAll - ofLitters * ofLitters);
    }

    private static double width(Interval interval) {
        return interval.high() - interval.low();
    }

    /**
     * Of founder 3 nothing is left if none of its young counts: ½ + ½·.1². Of founder 1, whose only young 4 has a gene of it to
     * give with ½, nothing if no young of 4 counts and has it: .2 + .8·(1 − .6·½)³; once 4 stays, never.
     */
    @Test
    void a_founder_is_lost_as_often_as_no_young_of_its_counts_and_has_its_gene() {
        var lost = drawn(new int[] {2}, 20, 3, 1).lost();
        assertThat(lost.get(0).value())
                .isCloseTo(.5 + .5 * .01, within(4 * lost.get(0).standardError()));
        assertThat(lost.get(1).value())
                .isCloseTo(.2 + .8 * Math.pow(.7, 3), within(4 * lost.get(1).standardError()));
        assertThat(drawn(new int[] {4}, 20, 1).lost()).containsExactly(new GeneDrop.Estimate(0, 0));
    }

    @Test
    void without_litters_nothing_is_left_to_chance_but_the_genes() {
        var after = AfterLitters.drawn(pedigree, new int[] {0, 1, 4}, List.of(), 100, 1, 1);
        assertThat(after.geneDiversity().low()).isEqualTo(after.geneDiversity().high());
        assertThat(after.geneDiversity().mean())
                .isCloseTo(pedigree.pool(0, 1, 4).geneDiversity(), within(1e-15));
        var nobody = AfterLitters.drawn(pedigree, new int[0], List.of(), 10, 1, 1, 2);
        assertThat(nobody.ofGenes().high()).isZero();
        assertThat(nobody.lost().get(0).value()).isEqualTo(1);
    }
}
