package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Worked by hand from the definition: identity by descent among genes that both trace to stated founders. */
class KnownOnlyTest {
    private static final int A = 0, B = 1, X = 2, Y = 3, Z = 4, Q = 5, V = 6;

    /** A and B founders, X out of A by nobody knows whom, Y by A out of B, Z by X out of Y, Q of unknown parents, V Q × B. */
    private final Pedigree pedigree = Pedigree.builder(7)
            .founder(A)
            .founder(B)
            .young(X, Pedigree.UNKNOWN, A)
            .young(Y, A, B)
            .young(Z, X, Y)
            .unknownParents(Q)
            .young(V, Q, B)
            .build();

    private final Pedigree known = pedigree.under(Convention.KNOWN_ONLY);

    @Test
    void the_known_fraction_halves_at_each_unknown_parent() {
        assertThat(pedigree.knownFractions()).containsExactly(1, 1, .5, 1, .75, 0, .5);
        assertThat(known.knownFractions()).containsExactly(pedigree.knownFractions());
        assertThat(pedigree.knownFraction(A)).isEqualTo(1);
        assertThat(pedigree.knownFraction(Z)).isEqualTo(.75);
        assertThat(known.knownFraction(Z)).isEqualTo(.75);
        assertThat(pedigree.pool(A, Q).knownFraction()).isEqualTo(.5);
    }

    @Test
    void every_answer_says_its_convention() {
        assertThat(pedigree.convention()).isEqualTo(Convention.UNRELATED);
        assertThat(known.convention()).isEqualTo(Convention.KNOWN_ONLY);
        assertThat(known.pool(A).convention()).isEqualTo(Convention.KNOWN_ONLY);
        assertThat(known.under(Convention.UNRELATED)).isSameAs(pedigree);
        assertThat(pedigree.under(Convention.KNOWN_ONLY)).isSameAs(known);
    }

    @Test
    void with_all_known_both_conventions_agree() {
        assertThat(known.kinship(A, Y)).isEqualTo(pedigree.kinship(A, Y)).isEqualTo(.25);
        assertThat(known.kinship(A, A)).isEqualTo(.5);
    }

    @Test
    void kinship_is_rescaled_to_the_known_genes() {
        // The known gene of X is one of A's two, and so is a known gene of Y in one case of two: identical in one of
        // four.
        assertThat(pedigree.kinship(X, Y)).isEqualTo(.125);
        assertThat(known.kinship(X, Y)).isEqualTo(.25);
        assertThat(known.kinship(X, A)).isEqualTo(.5);
    }

    @Test
    void a_half_known_animal_has_one_known_gene_and_so_is_identical_with_itself() {
        assertThat(known.kinship(X, X)).isEqualTo(1);
    }

    @Test
    void a_table_has_the_kinships_of_its_pairs() {
        double[][] table = known.kinship(new int[] {X, A, Q}, new int[] {Y, X});
        assertThat(table[0]).containsExactly(.25, 1);
        assertThat(table[1]).containsExactly(.25, .5);
        assertThat(table[2]).containsExactly(Double.NaN, Double.NaN);
    }

    @Test
    void inbreeding_asks_about_loci_where_both_genes_are_known() {
        assertThat(pedigree.inbreeding(Z)).isEqualTo(.125);
        assertThat(known.inbreeding(Z)).isEqualTo(.25);
        assertThat(known.inbreeding(A)).isZero();
    }

    @Test
    void where_nothing_is_known_there_is_no_answer() {
        assertThat(known.inbreeding(Q)).isNaN();
        assertThat(known.inbreeding(X)).isNaN();
        assertThat(known.kinship(Q, A)).isNaN();
        assertThat(known.pool(A, B).meanKinship(Q)).isNaN();
        assertThat(known.pool(Q).founderContributions().effectiveFounders()).isNaN();
    }

    @Test
    void a_fatherless_young_may_have_a_known_gene_twice_where_its_dam_had_one() {
        // Z has two known genes with ½, identical ones with ⅛, and a gene of it is known with ¾. The young keeps both
        // with
        // .4, else it has one of them twice.
        int young = 7, founder = 8;
        var all = Pedigree.builder(9)
                .founder(A)
                .founder(B)
                .young(X, Pedigree.UNKNOWN, A)
                .young(Y, A, B)
                .young(Z, X, Y)
                .unknownParents(Q)
                .young(V, Q, B)
                .parthenogen(young, Z, Fusion.TERMINAL, .4)
                .founder(founder)
                .build();
        var ofKnown = all.under(Convention.KNOWN_ONLY);
        assertThat(all.inbreeding(young)).isCloseTo(.4 * .125 + .6, within(1e-15));
        assertThat(ofKnown.inbreeding(young)).isCloseTo((.4 * .125 + .6 * .75) / (.4 * .5 + .6 * .75), within(1e-15));
        assertThat(ofKnown.kinship(young, A)).isCloseTo(known.kinship(Z, A), within(1e-15));
        assertThat(ofKnown.kinship(young, founder)).isZero();
    }

    @Test
    void kinship_from_dna_counts_among_stated_founders_only() {
        var related = Pedigree.builder(4)
                .founder(0)
                .founder(1)
                .unknownParents(2)
                .founderKinship(0, 1, .125)
                .founderKinship(0, 2, .125)
                .young(3, 0, 2)
                .build();
        var ofKnown = related.under(Convention.KNOWN_ONLY);
        assertThat(ofKnown.kinship(0, 1)).isEqualTo(.125);
        assertThat(ofKnown.kinship(0, 2)).isNaN();
        // The one known gene of 3 is one of the two of 0.
        assertThat(related.kinship(0, 3)).isEqualTo((.5 + .125) / 2);
        assertThat(ofKnown.kinship(0, 3)).isEqualTo(.5);
        assertThat(ofKnown.kinship(1, 3)).isEqualTo(.125);
    }

    @Test
    void founders_alone_are_known_and_unrelated() {
        var founders =
                Pedigree.builder(3).founder(0).founder(1).founder(2).build().under(Convention.KNOWN_ONLY);
        assertThat(founders.kinship(0, 1)).isZero();
        assertThat(founders.kinship(2, 2)).isEqualTo(.5);
        assertThat(founders.inbreeding()).containsExactly(0, 0, 0);
        assertThat(founders.pool(0, 1, 2).meanKinship()).isCloseTo(1. / 6, within(1e-15));
    }

    @Test
    void a_pool_is_compared_gene_by_gene_so_that_the_well_known_weigh_more() {
        // Rows A, B, X: identical and known ½ 0 ¼, 0 ½ 0, ¼ 0 ¼; both known 1 1 ½, 1 1 ½, ½ ½ ¼.
        var pool = known.pool(A, B, X);
        assertThat(pool.meanKinship(A)).isCloseTo(.75 / 2.5, within(1e-15));
        assertThat(pool.meanKinship()).isCloseTo(1.75 / 6.25, within(1e-15));
    }

    @Test
    void only_stated_founders_contribute_and_their_shares_add_up_to_one() {
        var all = pedigree.founderContributions(V);
        assertThat(all.founders()).containsExactly(B, Q);
        assertThat(all.shares()).containsExactly(.5, .5);
        assertThat(all.unnamed()).isZero();
        var ofKnown = known.founderContributions(V);
        assertThat(ofKnown.founders()).containsExactly(B);
        assertThat(ofKnown.shares()).containsExactly(1);
        var half = pedigree.founderContributions(X);
        assertThat(half.founders()).containsExactly(A);
        assertThat(half.unnamed()).isEqualTo(.5);
        assertThat(half.effectiveFounders()).isEqualTo(2);
    }
}
