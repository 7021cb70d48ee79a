package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

/** Worked by hand from the formulas named in {@link PedigreeDepth}. */
class PedigreeDepthTest {
    private static final Offset<Double> EXACT = within(1e-15);
    private static final int U = Pedigree.UNKNOWN;

    @Test
    void equivalent_generations_count_each_known_ancestor_by_its_distance() {
        // 4: two parents and two grandparents by the sire, 2·½ + 2·¼; 5: dam 4 alone, ½ + 2·¼ + 2·⅛.
        var pedigree = Pedigree.builder(6)
                .founder(0)
                .founder(1)
                .founder(2)
                .young(3, 0, 1)
                .young(4, 3, 2)
                .young(5, U, 4)
                .build();
        assertThat(pedigree.depth().equivalentGenerations()).containsExactly(0, 0, 0, 1, 1.5, 1.25);
    }

    @Test
    void completeness_is_the_harmonic_mean_of_the_two_sides() {
        var pedigree = Pedigree.builder(7)
                .founder(0)
                .founder(1)
                .founder(2)
                .young(3, 0, 1)
                .young(4, 3, 2)
                .young(5, U, 4)
                .young(6, 3, 4)
                .build();
        double[] one = pedigree.depth().completeness(1);
        assertThat(one).containsExactly(0, 0, 0, 1, 1, 0, 1);
        // Over two generations: 3 has both parents and none before; 4 has 1 by 3, ½ by 2; 6 is complete.
        double[] two = pedigree.depth().completeness(2);
        assertThat(two[3]).isCloseTo(.5, EXACT);
        assertThat(two[4]).isCloseTo(2 * 1 * .5 / 1.5, EXACT);
        assertThat(two[5]).isZero();
        assertThat(two[6]).isCloseTo(1, EXACT);
        // Three: by 3 (1 + 1 + 0)/3, by 4 (1 + 1 + ½)/3.
        double[] three = pedigree.depth().completeness(3);
        assertThat(three[6]).isCloseTo(2 * (2. / 3) * (2.5 / 3) / (2. / 3 + 2.5 / 3), EXACT);
    }

    @Test
    void a_sire_who_is_one_of_several_counts_with_his_probability() {
        var builder = Pedigree.builder(5).founder(0).founder(1).young(2, 0, 1).founder(3);
        builder.youngOfOneOf(4, new int[] {2, 0}, new double[] {.5, .25}, 3);
        var depth = builder.build().depth();
        // ½·(½·2 + ¼·1) by the sire, ½ by the dam.
        assertThat(depth.equivalentGenerations()[4]).isCloseTo(1.125, EXACT);
        assertThat(depth.completeness(1)[4]).isCloseTo(2 * .75 / 1.75, EXACT);
        // Sire's side (¾ + ½)/2, dam's (1 + 0)/2.
        assertThat(depth.completeness(2)[4]).isCloseTo(2 * .625 * .5 / 1.125, EXACT);
    }

    @Test
    void generation_length_gives_both_sexes_the_same_weight() {
        var pedigree = Pedigree.builder(6)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .young(3, 0, 1)
                .young(4, 0, 2)
                .young(5, U, 2)
                .build();
        double[] bornAt = {2000, 2001, 2004, 2006, 2010, Double.NaN};
        // Sire ages 4, 6, 10; dam ages 3, 5, 6; 5 has no birth date.
        double expected = (20. / 3 + 14. / 3) / 2;
        assertThat(pedigree.depth().generationLength(bornAt, 2, 3, 4, 5)).isCloseTo(expected, EXACT);
        assertThat(pedigree.depth().generationLength(bornAt, 0, 1)).isNaN();
    }

    @Test
    void a_young_of_its_dam_alone_says_nothing_of_the_age_of_sires() {
        var pedigree = Pedigree.builder(4)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .parthenogen(3, 1, Fusion.TERMINAL, 0)
                .build();
        double[] bornAt = {2000, 2001, 2004, 2008};
        // Sire age 4; dam ages 3 and 7.
        assertThat(pedigree.depth().generationLength(bornAt, 2, 3)).isEqualTo(4.5);
    }

    @Test
    void generation_length_is_the_same_to_the_bit_in_whatever_order_the_young_are_named() {
        var pedigree = Pedigree.builder(5)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .young(3, 0, 1)
                .young(4, 0, 1)
                .build();
        double[] bornAt = {0, 0, .1, .2, .3};
        double length = pedigree.depth().generationLength(bornAt, 2, 3, 4);
        assertThat(length).isCloseTo(.2, EXACT);
        assertThat(pedigree.depth().generationLength(bornAt, 4, 3, 2)).isEqualTo(length);
    }
}
