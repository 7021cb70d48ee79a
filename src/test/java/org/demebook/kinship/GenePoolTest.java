package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Five founders, one of them over-used, and a sixth without young. All fractions were worked out in exact rational
 * arithmetic apart from this code.
 */
class GenePoolTest {
    private static final Offset<Double> EXACT = within(1e-15);
    private static final int[] IDS = {1, 2, 3, 4, 5, 6, 10, 11, 12, 13, 14, 20, 21, 22, 23, 24};

    private final Pedigree pedigree = worked();
    private final GenePool pool = pedigree.pool(rows(12, 13, 14, 20, 21, 22, 23, 24));
    private final GenePool withSixth = pedigree.pool(rows(12, 13, 14, 20, 21, 22, 23, 24, 6));

    private static Pedigree worked() {
        var builder = Pedigree.builder(IDS.length);
        for (int founder = 1; founder <= 6; founder++) {
            builder.founder(row(founder));
        }
        int[][] births = {
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
        for (int[] birth : births) {
            builder.young(row(birth[0]), row(birth[1]), row(birth[2]));
        }
        return builder.build();
    }

    private static int row(int id) {
        return Arrays.binarySearch(IDS, id);
    }

    private static int[] rows(int... ids) {
        return Arrays.stream(ids).map(GenePoolTest::row).toArray();
    }

    private static double fraction(String text) {
        var parts = text.split("/");
        return Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
    }

    @ParameterizedTest
    @CsvSource({
        "13, 14, 0/1",
        "13, 22, 0/1",
        "23, 12, 0/1",
        "20, 14, 1/16",
        "20, 21, 1/8",
        "23, 14, 1/8",
        "20, 22, 5/32",
        "23, 21, 3/16",
        "23, 22, 1/4",
        "20, 24, 1/4"
    })
    void inbreeding_of_one_more_young_is_the_kinship_of_its_parents(int sire, int dam, String expected) {
        assertThat(pedigree.inbreedingOfYoung(row(sire), row(dam))).isEqualTo(fraction(expected));
    }

    @Test
    void young_of_relatives_alone_are_inbred() {
        for (int id : IDS) {
            assertThat(pedigree.inbreeding(row(id))).as("%d", id).isEqualTo(id == 22 ? .125 : id == 23 ? .25 : 0);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "14, 9/64",
        "13, 5/32",
        "12, 11/64",
        "21, 47/256",
        "22, 49/256",
        "23, 25/128",
        "20, 53/256",
        "24, 53/256"
    })
    void mean_kinship_counts_each_animal_with_itself(int id, String expected) {
        assertThat(pool.meanKinship(row(id))).isEqualTo(fraction(expected));
        assertThat(pool.meanKinships()[row(id)]).isEqualTo(fraction(expected));
    }

    @Test
    void gene_diversity_and_genome_equivalents_follow_from_mean_kinship() {
        assertThat(pool.meanKinship()).isEqualTo(fraction("93/512"));
        assertThat(pool.geneDiversity()).isEqualTo(fraction("419/512"));
        assertThat(pool.founderGenomeEquivalents()).isCloseTo(fraction("256/93"), EXACT);
    }

    @Test
    void a_founder_without_young_raises_gene_diversity_when_it_joins_the_pool() {
        assertThat(withSixth.meanKinship()).isCloseTo(fraction("97/648"), EXACT);
        assertThat(withSixth.geneDiversity()).isCloseTo(fraction("551/648"), EXACT);
        assertThat(withSixth.founderGenomeEquivalents()).isCloseTo(fraction("324/97"), EXACT);
        assertThat(withSixth.meanKinship(row(6))).isCloseTo(fraction("1/18"), EXACT);
    }

    @Test
    void founder_shares_add_up_to_one_and_give_the_effective_number() {
        var contributions = pool.founderContributions();
        assertThat(contributions.founders()).containsExactly(rows(1, 2, 3, 4, 5));
        assertThat(contributions.shares()).containsExactly(3. / 16, 9. / 32, 7. / 32, 7. / 32, 3. / 32);
        assertThat(contributions.unnamed()).isZero();
        assertThat(contributions.effectiveFounders()).isCloseTo(fraction("32/7"), EXACT);
    }

    @ParameterizedTest
    @CsvSource({
        "13, 14, 1, 133/162", "13, 14, 2, 657/800", "13, 14, 3, .82025", "13, 14, 4, .81858", "13, 14, 5, .81657",
        "13, 14, 6, .81441", "20, 14, 6, .79624", "23, 12, 6, .79241", "20, 21, 6, .77997", "20, 24, 6, .76276",
        "23, 22, 6, .76228"
    })
    void what_a_litter_does_depends_on_how_many_are_kept(int sire, int dam, int young, String expected) {
        agrees(pool.withLitter(row(sire), row(dam), young).geneDiversity(), expected);
    }

    @ParameterizedTest
    @CsvSource({"1, .85625", "2, .858471", "3, 989/1152", "4, .857249", "6, .852778", "8, .847318"})
    void a_litter_of_the_unused_founder_does_more(int young, String expected) {
        agrees(withSixth.withLitter(row(13), row(6), young).geneDiversity(), expected);
    }

    private static void agrees(double found, String expected) {
        boolean exact = expected.contains("/");
        double value = exact ? fraction(expected) : Double.parseDouble(expected);
        assertThat(found).isCloseTo(value, within(exact ? 1e-15 : .5 * Math.pow(10, 1 - expected.length())));
    }

    @Test
    void a_litter_of_none_changes_nothing() {
        assertThat(pool.withLitter(row(13), row(14), 0).geneDiversity()).isEqualTo(pool.geneDiversity());
    }

    @Test
    void the_effect_of_a_litter_is_what_the_pool_has_once_the_young_are_told() {
        var builder = Pedigree.builder(6).founder(0).founder(1).young(2, 0, 1).young(3, 0, 1);
        builder.young(4, 2, 1).young(5, 2, 1);
        var born = builder.build();
        var effect = born.pool(0, 2, 3).withLitter(2, 1, 2);
        assertThat(effect.geneDiversity()).isEqualTo(born.pool(0, 2, 3, 4, 5).geneDiversity());
        assertThat(effect.inbreeding()).isEqualTo(born.inbreeding(4));
        assertThat(effect.meanKinship()).isEqualTo(born.pool(0, 2, 3).meanKinship(4));
    }

    @Test
    void effective_founders_exceed_genome_equivalents_after_a_bottleneck() {
        // By hand: A B C D; S = A x B; x1, x2 = S x C; y1, y2 = S x D. fe = 4, MK = 1/4, FGE = 2: the order of
        // Boichard,
        // Maignel & Verrier 1997, Genet. Sel. Evol. 29: 5-23 (from memory).
        var bottleneck = PublishedPedigreesTest.pedigree(
                new int[] {-1, -1, -1, -1, 0, 4, 4, 4, 4}, new int[] {-1, -1, -1, -1, 1, 2, 2, 3, 3});
        var living = bottleneck.pool(5, 6, 7, 8);
        assertThat(living.founderContributions().effectiveFounders()).isEqualTo(4);
        assertThat(living.meanKinship()).isEqualTo(.25);
        assertThat(living.founderGenomeEquivalents()).isEqualTo(2);
    }

    @Test
    void a_bottleneck_shows_in_effective_ancestors_and_not_in_effective_founders() {
        // By hand, the same pedigree: ancestors S 1/2, C 1/4, D 1/4, so fa = 8/3.
        var bottleneck = PublishedPedigreesTest.pedigree(
                new int[] {-1, -1, -1, -1, 0, 4, 4, 4, 4}, new int[] {-1, -1, -1, -1, 1, 2, 2, 3, 3});
        var ancestors = bottleneck.pool(5, 6, 7, 8).effectiveAncestors(9);
        assertThat(ancestors.ancestors()).containsExactly(4, 2, 3);
        assertThat(ancestors.marginalShares()).containsExactly(.5, .25, .25);
        assertThat(ancestors.atMost()).isCloseTo(fraction("8/3"), EXACT);
        assertThat(ancestors.atLeast()).isEqualTo(ancestors.atMost());
    }

    @Test
    void a_hidden_sire_hands_on_what_his_candidates_explain_and_is_not_chosen_himself() {
        // By hand: eight young of one sire, who was 0 with ½, 1 with ¼, else a stranger, each by a dam of its own.
        // Chosen
        // are 0 for ½·½, 1 for ½·¼, then each young for ⅛ of the ⅝ that these leave of it.
        var builder = Pedigree.builder(18).founder(0).founder(1);
        int sire = builder.unknownSire(new int[] {0, 1}, new double[] {.5, .25});
        for (int young = 2; young < 10; young++) {
            builder.founder(young + 8).young(young, sire, young + 8);
        }
        var litter = builder.build().pool(2, 3, 4, 5, 6, 7, 8, 9);
        var found = litter.effectiveAncestors(18);
        assertThat(found.ancestors()).startsWith(0, 1).hasSize(10);
        assertThat(found.ancestors()).containsExactlyInAnyOrder(0, 1, 2, 3, 4, 5, 6, 7, 8, 9);
        assertThat(found.marginalShares()).startsWith(.25, .125).endsWith(5. / 64, 5. / 64);
        double squares = 1. / 16 + 1. / 64 + 8 * 25. / 4096;
        assertThat(found.atMost()).isCloseTo(1 / squares, within(1e-12));
        // With two chosen, ⅝ is left: at least in shares of ⅛, at most in none that counts.
        var two = litter.effectiveAncestors(2);
        assertThat(two.atMost()).isCloseTo(1 / (5. / 64), within(1e-12));
        assertThat(two.atLeast()).isCloseTo(1 / (5. / 64 + 5. / 8 / 8), within(1e-12));
    }

    @Test
    void what_an_unnamed_parent_gave_is_counted_with_its_young() {
        // By hand: all of 1, whose one parent is 0, is chosen with it; what 2 has of 0 is half of it.
        var young = Pedigree.builder(3)
                .founder(0)
                .young(1, 0, Pedigree.UNKNOWN)
                .young(2, 1, Pedigree.UNKNOWN)
                .build();
        var found = young.pool(2).effectiveAncestors(5);
        assertThat(found.ancestors()).containsExactly(2);
        assertThat(found.marginalShares()).containsExactly(1);
        assertThat(found.atLeast()).isEqualTo(1);
        assertThat(young.pool(2).effectiveAncestors(0).ancestors()).isEmpty();
        assertThat(young.pool(2).effectiveAncestors(0).atLeast()).isEqualTo(1);
    }

    @Test
    void with_few_ancestors_chosen_the_effective_number_lies_between_bounds() {
        var all = pool.effectiveAncestors(16);
        var few = pool.effectiveAncestors(2);
        assertThat(few.ancestors()).hasSize(2);
        assertThat(all.atMost()).isBetween(few.atLeast(), few.atMost());
        assertThat(few.atLeast()).isLessThan(few.atMost());
    }

    @Test
    void an_animal_stands_in_a_pool_once() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> pedigree.pool(3, 4, 3))
                .withMessageContaining("row 3");
        assertThatIllegalArgumentException().isThrownBy(pedigree::pool);
    }
}
