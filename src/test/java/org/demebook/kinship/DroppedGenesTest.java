package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * What Mendel's rule says of every locus, and how far estimates scatter: by the variance of a mean of independent draws,
 * v/n, with v worked by hand beside each check.
 */
class DroppedGenesTest {
    private static final int U = Pedigree.UNKNOWN;
    private static final int LOCI = 40_000;
    private static final long SEED = 19_860_501;

    @Test
    void more_genes_than_sixteen_bits_can_number_are_told_apart() {
        int founders = 32_769;
        var builder = Pedigree.builder(founders);
        int[] all = IntStream.range(0, founders).peek(builder::founder).toArray();
        var drop = builder.build().pool(all).geneDrop(16, SEED);
        assertThat(drop.meanGenesKept()).isEqualTo(2 * founders);
        assertThat(drop.geneDiversity().value()).isCloseTo(1 - 1. / (2 * founders), within(1e-12));
        assertThat(drop.retention(founders - 1).value()).isEqualTo(1);
    }

    @Test
    void loci_are_inherited_independently_of_each_other() {
        // Two young of two: (1 + B)/2 of a founder's genes are kept at a locus, B being 0 or 1 with ½ each. So the
        // share
        // kept at 16 unlinked loci has variance ¼·¼/16; were they linked by four, four times as much.
        var pool = twoYoungOfTwo().pool(2, 3);
        int drops = 4_000;
        double sum = 0;
        double squares = 0;
        for (int seed = 0; seed < drops; seed++) {
            double kept = pool.geneDrop(16, seed).retention(0).value();
            sum += kept;
            squares += kept * kept;
        }
        double mean = sum / drops;
        double variance = squares / drops - mean * mean;
        assertThat(mean).isCloseTo(.75, within(4 * Math.sqrt(1. / 256 / drops)));
        assertThat(variance).isCloseTo(1. / 256, within(4 * Math.sqrt(2. / drops) / 256));
    }

    private static Pedigree twoYoungOfTwo() {
        return Pedigree.builder(4)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .young(3, 0, 1)
                .build();
    }

    @Test
    void a_sire_who_is_one_of_several_is_one_male_at_each_locus() {
        // Both candidates have one gene twice, so all young of one litter get the same from whichever it was.
        var builder = Pedigree.builder(6).founder(0, 1).founder(1, 1).founder(2).founder(3);
        int sire = builder.unknownSire(new int[] {0, 1}, new double[] {.5, .5});
        var pool = builder.young(4, sire, 2).young(5, sire, 3).build().pool(4, 5);
        var drop = pool.geneDrop(LOCI, SEED);
        assertThat(drop.meanGenesKept()).isEqualTo(3);
        assertThat(drop.geneDiversity().value()).isCloseTo(1 - 6. / 16, within(1e-12));
        assertThat(drop.geneDiversity().standardError()).isZero();
        assertThat(drop.retention(0).value()).isCloseTo(.5, within(4 * Math.sqrt(.25 / LOCI)));
        assertThat(drop.lost(1).value()).isEqualTo(drop.retention(0).value());
    }

    @Test
    void young_whose_sires_were_drawn_one_by_one_may_have_two() {
        var builder = Pedigree.builder(6).founder(0, 1).founder(1, 1).founder(2).founder(3);
        builder.youngOfOneOf(4, new int[] {0, 1}, new double[] {.2, .8}, 2);
        var pool = builder.youngOfOneOf(5, new int[] {1, 0}, new double[] {.8, .2}, 3)
                .build()
                .pool(4, 5);
        var drop = pool.geneDrop(LOCI, SEED);
        // Two sires with 2·.2·.8; the first has young with 1 − .8².
        assertThat(drop.meanGenesKept()).isCloseTo(3.32, within(4 * Math.sqrt(.32 * .68 / LOCI)));
        assertThat(drop.retention(0).value()).isCloseTo(.36, within(4 * Math.sqrt(.36 * .64 / LOCI)));
    }

    @Test
    void an_inbred_founder_has_one_gene_twice_as_often_as_its_inbreeding_says() {
        var pool = Pedigree.builder(1).founder(0, .2).build().pool(0);
        var drop = pool.geneDrop(LOCI, SEED);
        assertThat(drop.meanGenesKept()).isCloseTo(1.8, within(4 * Math.sqrt(.16 / LOCI)));
        assertThat(drop.lost(0).value()).isZero();
        assertThat(drop.founderGenomesByRetention()).isCloseTo(1, within(.01));
    }

    @Test
    void a_standard_error_is_that_of_a_mean_over_loci() {
        // 0 has a young 3 by 1, and 3 a young 4 by 2. In 4 one gene of 0 is left with ½, or none.
        var pedigree = Pedigree.builder(5)
                .founder(0)
                .founder(1)
                .founder(2)
                .young(3, 0, 1)
                .young(4, 3, 2)
                .build();
        var drop = pedigree.pool(4).geneDrop(LOCI, SEED);
        agrees(drop.lost(0), .5, .25);
        agrees(drop.retention(0), .25, .25 / 4);
        agrees(drop.retention(2), .5, 0);
        agrees(drop.lost(2), 0, 0);
    }

    @Test
    void a_gene_kept_twice_counts_once_and_both_of_a_founder_count_as_two() {
        // Of the two genes of a founder one is left with ½, else both: their share is ½ or 1.
        var drop = twoYoungOfTwo().pool(2, 3).geneDrop(LOCI, SEED);
        agrees(drop.retention(0), .75, 1. / 16);
        agrees(drop.retention(1), .75, 1. / 16);
        assertThat(drop.meanGenesKept()).isCloseTo(3, within(4 * Math.sqrt(.5 / LOCI)));
    }

    @Test
    void genes_that_no_other_animal_has_are_counted_at_both_places_of_a_locus() {
        // Of two full siblings each has a gene of its own from either parent with ½: U = (B₁ + B₂)/2, of variance ⅛.
        var siblings = twoYoungOfTwo().pool(2, 3).geneDrop(LOCI, SEED).genomeUniqueness();
        agrees(siblings[0], .5, 1. / 8);
        agrees(siblings[1], .5, 1. / 8);
        // A half sibling shares with ½ what came from the sire, never what came from its dam.
        var half = Pedigree.builder(5)
                .founder(0)
                .founder(1)
                .founder(2)
                .young(3, 0, 1)
                .young(4, 0, 2)
                .build();
        agrees(half.pool(3, 4).geneDrop(LOCI, SEED).genomeUniqueness()[0], .75, 1. / 16);
        agrees(half.pool(4, 3).geneDrop(LOCI, SEED).genomeUniqueness()[0], .75, 1. / 16);
    }

    @Test
    void an_animal_alone_is_unique_even_where_it_has_one_gene_twice() {
        var pedigree = Pedigree.builder(3)
                .founder(0)
                .parthenogen(1, 0, Fusion.TERMINAL, 0)
                .founder(2)
                .build();
        for (var uniqueness : pedigree.pool(1, 2).geneDrop(100, SEED).genomeUniqueness()) {
            agrees(uniqueness, 1, 0);
        }
        // Of two such young each has its own gene twice, or with ½ both have the same.
        var pair = Pedigree.builder(3)
                .founder(0)
                .parthenogen(1, 0, Fusion.TERMINAL, 0)
                .parthenogen(2, 0, Fusion.TERMINAL, 0)
                .build();
        agrees(pair.pool(1, 2).geneDrop(LOCI, SEED).genomeUniqueness()[0], .5, .25);
        // Beside its dam none of its genes is its own; she alone has the other.
        var drop = pedigree.pool(0, 1).geneDrop(100, SEED).genomeUniqueness();
        agrees(drop[0], .5, 0);
        agrees(drop[1], 0, 0);
    }

    private static void agrees(GeneDrop.Estimate found, double exact, double variance) {
        int loci = variance == 0 ? 1 : LOCI;
        assertThat(found.value()).isCloseTo(exact, within(4 * Math.sqrt(variance / loci) + 1e-12));
        assertThat(found.standardError())
                .isCloseTo(Math.sqrt(variance / loci), within(2e-2 * Math.sqrt(variance / loci)));
    }

    @Test
    void an_unnamed_parent_gave_one_gene_which_may_be_lost_further_down() {
        var pedigree = Pedigree.builder(6)
                .founder(0)
                .founder(1)
                .young(2, 0, U)
                .young(3, 2, 1)
                .young(4, U, 1)
                .young(5, 4, 0)
                .build();
        var drop = pedigree.pool(3).geneDrop(LOCI, SEED);
        agrees(drop.retentionOfUnnamedParent(2), .5, .25);
        agrees(drop.retentionOfUnnamedParent(4), 0, 0);
        agrees(drop.retention(0), .25, .25 / 4);
        assertThat(drop.loci()).isEqualTo(LOCI);
        assertThatIllegalArgumentException().isThrownBy(() -> drop.retentionOfUnnamedParent(0));
        assertThatIllegalArgumentException().isThrownBy(() -> drop.retention(2));
    }

    @Test
    void a_founder_of_whom_no_locus_drawn_has_kept_a_gene_counts_by_its_share() {
        // Forty steps down p = 2⁻⁴⁰, and its genes are lost. As 2p² is at most p, each founder counts by p or less; the
        // last by ½.
        int steps = 40;
        var builder = Pedigree.builder(2 * steps + 1).founder(0);
        for (int step = 1; step <= steps; step++) {
            builder.founder(2 * step - 1).young(2 * step, 2 * step - 2, 2 * step - 1);
        }
        var drop = builder.build().pool(2 * steps).geneDrop(1, SEED);
        assertThat(drop.retention(0).value()).isZero();
        assertThat(drop.founderGenomesByRetention()).isBetween(1 - 1e-12, 2.);
    }

    @Test
    void loci_that_do_not_fill_a_sweep_are_counted_all_the_same() {
        var pool = twoYoungOfTwo().pool(2, 3);
        for (int loci : new int[] {1, 15, 16, 17, 31, 33}) {
            var drop = pool.geneDrop(loci, SEED);
            assertThat(drop.loci()).isEqualTo(loci);
            // One gene of a founder at least is kept at every locus counted, and lost at none.
            assertThat(drop.lost(0).value()).isZero();
            assertThat(drop.meanGenesKept()).isBetween(2., 4.);
            assertThat(drop.meanGenesKept())
                    .isCloseTo(
                            2 * (drop.retention(0).value() + drop.retention(1).value()), within(1e-12));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> pool.geneDrop(0, SEED));
    }
}
