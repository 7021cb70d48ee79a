package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Worked by hand: kinship of two young of one sire is ¼, of one by a stranger and any other 0. */
class KinshipRangeTest {
    private static final int FIRST = 0, SECOND = 1, BY_FIRST = 2, BY_SECOND = 3;

    /** Young of either male by a dam that nobody knows, and some more whose sire was one of the two or a stranger. */
    private static PedigreeBuilder colony(int more) {
        return Pedigree.builder(4 + more)
                .founder(FIRST)
                .founder(SECOND)
                .young(BY_FIRST, FIRST, Pedigree.UNKNOWN)
                .young(BY_SECOND, SECOND, Pedigree.UNKNOWN);
    }

    @Test
    void ways_to_name_several_sires_multiply() {
        var builder = colony(2);
        builder.youngOfOneOf(4, new int[] {FIRST, SECOND}, new double[] {.5, .25}, Pedigree.UNKNOWN);
        builder.youngOfOneOf(5, new int[] {FIRST, SECOND}, new double[] {.5, .5}, Pedigree.UNKNOWN);
        var pedigree = builder.build();
        assertThat(pedigree.kinshipRange(4, 5, 6, 1)).isEqualTo(new KinshipRange(0, .125, 6, true));
        assertThat(pedigree.kinshipRange(4, 5, 5, 1).exhaustive()).isFalse();
        assertThat(pedigree.kinshipRange(4, 5, 5, 1).assignments()).isEqualTo(5);
        assertThat(pedigree.kinshipRange(BY_FIRST, 4, 3, 1)).isEqualTo(new KinshipRange(0, .125, 3, true));
        assertThat(pedigree.kinshipRange(BY_FIRST, 5, 2, 1)).isEqualTo(new KinshipRange(0, .125, 2, true));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void each_candidate_and_the_stranger_are_tried(int sure) {
        // With each other the two young have ⅛ where the sire is the same; the stranger of one is none of the other's.
        double[] chances = {sure == 0 ? 1 : 0, sure == 1 ? 1 : 0};
        var builder = colony(2);
        builder.youngOfOneOf(4, new int[] {FIRST, SECOND}, chances, Pedigree.UNKNOWN);
        builder.youngOfOneOf(5, new int[] {FIRST, SECOND}, new double[] {.3, .3}, Pedigree.UNKNOWN);
        var pedigree = builder.build();
        assertThat(pedigree.kinshipRange(BY_FIRST, 4, 9, 1).highest()).isEqualTo(sure == 0 ? .125 : 0);
        assertThat(pedigree.kinshipRange(BY_SECOND, 4, 9, 1).highest()).isEqualTo(sure == 1 ? .125 : 0);
        assertThat(pedigree.kinshipRange(4, 5, 9, 1)).isEqualTo(new KinshipRange(0, sure == 2 ? 0 : .125, 3, true));
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 8);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_sample_is_drawn_by_the_probabilities(long seed) {
        double rare = 1e-12;
        var builder = colony(3);
        builder.youngOfOneOf(4, new int[] {FIRST, SECOND}, new double[] {1 - rare, rare}, Pedigree.UNKNOWN);
        builder.youngOfOneOf(5, new int[] {FIRST, SECOND}, new double[] {rare, 1 - rare}, Pedigree.UNKNOWN);
        builder.youngOfOneOf(6, new int[] {FIRST, SECOND}, new double[] {rare, rare}, Pedigree.UNKNOWN);
        var pedigree = builder.build();
        assertThat(pedigree.kinshipRange(BY_FIRST, 4, 1, seed)).isEqualTo(new KinshipRange(.125, .125, 1, false));
        assertThat(pedigree.kinshipRange(BY_SECOND, 4, 1, seed)).isEqualTo(new KinshipRange(0, 0, 1, false));
        assertThat(pedigree.kinshipRange(BY_SECOND, 5, 1, seed)).isEqualTo(new KinshipRange(.125, .125, 1, false));
        assertThat(pedigree.kinshipRange(BY_FIRST, 5, 1, seed)).isEqualTo(new KinshipRange(0, 0, 1, false));
        assertThat(pedigree.kinshipRange(BY_FIRST, 6, 2, seed)).isEqualTo(new KinshipRange(0, 0, 2, false));
        assertThat(pedigree.kinshipRange(BY_SECOND, 6, 2, seed)).isEqualTo(new KinshipRange(0, 0, 2, false));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_sample_of_one_way_has_one_kinship(long seed) {
        var builder = colony(1);
        builder.youngOfOneOf(4, new int[] {FIRST, SECOND}, new double[] {.5, .5}, Pedigree.UNKNOWN);
        var one = builder.build().kinshipRange(BY_FIRST, 4, 1, seed);
        assertThat(one.lowest()).as("seed %d", seed).isEqualTo(one.highest());
    }

    @Test
    void young_of_one_sire_are_half_siblings_whoever_he_was() {
        var builder = colony(2);
        int sire = builder.unknownSire(new int[] {FIRST, SECOND}, new double[] {.5, .25});
        var pedigree = builder.young(4, sire, Pedigree.UNKNOWN)
                .young(5, sire, Pedigree.UNKNOWN)
                .build();
        assertThat(pedigree.kinshipRange(4, 5, 3, 1)).isEqualTo(new KinshipRange(.125, .125, 3, true));
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void a_large_sample_meets_every_way(long seed) {
        var builder = colony(5);
        for (int row = 4; row < 9; row++) {
            builder.youngOfOneOf(row, new int[] {FIRST, SECOND}, new double[] {.3, .3}, row == 4 ? BY_FIRST : row - 1);
        }
        var pedigree = builder.build();
        var sample = pedigree.kinshipRange(8, BY_SECOND, 200, seed);
        var all = pedigree.kinshipRange(8, BY_SECOND, 243, seed);
        assertThat(sample.exhaustive()).isFalse();
        assertThat(all.exhaustive()).isTrue();
        assertThat(sample.lowest()).isEqualTo(all.lowest()).isZero();
        assertThat(sample.highest()).isBetween(.125, all.highest());
        assertThat(pedigree.kinship(8, BY_SECOND)).isBetween(all.lowest(), all.highest());
    }

    @Test
    void a_range_is_given_under_the_convention_of_its_pedigree() {
        // Of known genes alone: the one of each young comes from its sire, so ½ where he is the same.
        var builder = colony(1);
        builder.youngOfOneOf(4, new int[] {FIRST, SECOND}, new double[] {.5, .5}, Pedigree.UNKNOWN);
        var known = builder.build().under(Convention.KNOWN_ONLY);
        assertThat(known.kinshipRange(BY_FIRST, 4, 2, 1)).isEqualTo(new KinshipRange(0, .5, 2, true));
    }
}
