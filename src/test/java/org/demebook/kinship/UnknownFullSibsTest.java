package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Worked by hand: full siblings out of an unrelated pair have a kinship of 1/4, and are not inbred (Wright 1922). */
class UnknownFullSibsTest {
    private static final int A = 0, B = 1, X = 2, Y = 3, Q = 4, R = 5, V = 6;

    /** A and B founders, X and Y out of A by nobody knows whom, Q and R of unknown parents, V by Q out of R. */
    private final Pedigree pedigree = Pedigree.builder(7)
            .founder(A)
            .founder(B)
            .young(X, Pedigree.UNKNOWN, A)
            .young(Y, Pedigree.UNKNOWN, A)
            .unknownParents(Q)
            .unknownParents(R)
            .young(V, Q, R)
            .build();

    private final Pedigree worst = pedigree.under(Convention.UNKNOWN_FULL_SIBS);

    @Test
    void animals_of_unknown_parents_are_full_siblings() {
        assertThat(worst.kinship(Q, R)).isEqualTo(.25);
        assertThat(worst.inbreeding(Q)).isZero();
        assertThat(worst.inbreeding(V)).isEqualTo(.25);
    }

    @Test
    void so_are_the_unknown_parents_of_half_known_ones() {
        assertThat(worst.kinship(X, Y)).isEqualTo(.125 + .25 * .25);
        assertThat(worst.kinship(X, Q)).isEqualTo(.5 * .25);
    }

    @Test
    void stated_founders_stay_unrelated_to_all() {
        assertThat(worst.kinship(A, B)).isZero();
        assertThat(worst.kinship(B, V)).isZero();
        assertThat(worst.kinship(A, X)).isEqualTo(.25);
    }

    @Test
    void a_stranger_who_may_be_the_sire_is_one_of_them() {
        var builder = Pedigree.builder(4).founder(0).founder(1).unknownParents(2);
        var grown = builder.young(3, builder.unknownSire(new int[] {0}, new double[] {.75}), 1)
                .build();
        assertThat(grown.under(Convention.UNKNOWN_FULL_SIBS).kinship(2, 3)).isEqualTo(.5 * .25 * .25);
        assertThat(grown.kinship(2, 3)).isZero();
    }

    @Test
    void an_animal_whose_kinship_is_known_from_dna_keeps_it() {
        var builder = Pedigree.builder(3).founder(0).unknownParents(1).unknownParents(2);
        var sibs = builder.founderKinship(0, 1, .125).build().under(Convention.UNKNOWN_FULL_SIBS);
        assertThat(sibs.kinship(0, 1)).isEqualTo(.125);
        assertThat(sibs.kinship(1, 2)).isZero();
    }

    @Test
    void dna_and_siblings_do_not_disturb_each_other_whatever_the_order() {
        // the founders' key is above that of the animal of unknown parents, and the other way round
        for (int unknown : new int[] {0, 3}) {
            int f = unknown == 0 ? 1 : 0;
            var sibs = Pedigree.builder(6)
                    .founder(f)
                    .founder(f + 1)
                    .unknownParents(unknown)
                    .unknownParents(f == 1 ? 3 : 2)
                    .founderKinship(f, f + 1, .25)
                    .young(4, f, unknown)
                    .young(5, f + 1, f == 1 ? 3 : 2)
                    .build()
                    .under(Convention.UNKNOWN_FULL_SIBS);
            assertThat(sibs.kinship(4, 5)).isCloseTo(.25 * .25 + .25 * .25, within(1e-15));
        }
    }

    @Test
    void it_is_never_below_the_best_case() {
        assertThat(worst.pool(A, B, X, Y, Q, R, V).geneDiversity())
                .isLessThan(pedigree.pool(A, B, X, Y, Q, R, V).geneDiversity());
        assertThat(worst.pool(X).knownFraction()).isEqualTo(.5);
    }

    @Test
    void the_founders_and_what_chance_left_of_them_are_the_same() {
        var contributions = worst.pool(X, V).founderContributions();
        assertThat(contributions.founders())
                .isEqualTo(pedigree.pool(X, V).founderContributions().founders());
        assertThat(worst.pool(X, V).geneDrop(100, 1).meanGenesKept())
                .isEqualTo(pedigree.pool(X, V).geneDrop(100, 1).meanGenesKept());
    }
}
