package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.UUID;
import org.junit.jupiter.api.Test;

class PedigreeBuilderTest {
    private static final int U = Pedigree.UNKNOWN;

    @Test
    void animals_are_told_in_any_order_and_keep_their_numbers() {
        var pedigree = Pedigree.builder(5)
                .young(0, 2, 1)
                .young(1, 4, 3)
                .young(2, 4, 3)
                .founder(3)
                .founder(4)
                .build();
        assertThat(pedigree.inbreeding()).containsExactly(.25, 0, 0, 0, 0);
    }

    @Test
    void a_loop_is_refused_and_shown() {
        var builder = Pedigree.builder(6)
                .founder(0)
                .young(1, 0, 5)
                .young(2, 0, 1)
                .young(3, 2, 0)
                .young(4, 3, 0);
        builder.young(5, 4, 0);
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(builder::build)
                .satisfies(loop -> assertThat(loop.animals()).containsExactly(1, 5, 4, 3, 2));
    }

    @Test
    void an_animal_is_not_its_own_parent() {
        var builder = Pedigree.builder(1).young(0, 0, U);
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(builder::build)
                .satisfies(loop -> assertThat(loop.animals()).containsExactly(0));
    }

    @Test
    void a_loop_through_a_possible_sire_names_animals_only() {
        var builder = Pedigree.builder(3).founder(0);
        builder.young(1, builder.unknownSire(new int[] {2, 0}, new double[] {.5, .5}), 0);
        builder.young(2, 0, 1);
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(builder::build)
                .satisfies(loop -> assertThat(loop.animals()).containsExactly(1, 2));
    }

    @Test
    void a_sire_without_probability_makes_no_loop() {
        var builder = Pedigree.builder(3).founder(0);
        builder.youngOfOneOf(1, new int[] {2, 0}, new double[] {0, 1}, U);
        builder.young(2, U, 1);
        assertThat(builder.build().kinship(1, 0)).isEqualTo(.25);
    }

    @Test
    void twins_that_are_each_others_twin_are_a_loop() {
        var builder = Pedigree.builder(3).twin(0, 2).twin(1, 0).twin(2, 1);
        assertThatExceptionOfType(PedigreeLoop.class)
                .isThrownBy(builder::build)
                .satisfies(loop -> assertThat(loop.animals()).containsExactlyInAnyOrder(0, 1, 2));
    }

    @Test
    void a_sire_who_is_one_of_several_may_be_one_of_several_others_even_without_young() {
        // By hand: the sire of 3 is 2 with ½, 0 with ¼, 1 with ⅛, else a stranger; kinship with a parent is ¼.
        var builder = Pedigree.builder(4).founder(0).founder(1).founder(2);
        int before = builder.unknownSire(new int[] {0, 1}, new double[] {.5, .25});
        int later = builder.unknownSire(new int[] {before, 2}, new double[] {.5, .5});
        var pedigree = builder.young(3, later, U).build();
        assertThat(pedigree.kinship(3, 0)).isEqualTo(1. / 16);
        assertThat(pedigree.kinship(3, 1)).isEqualTo(1. / 32);
        assertThat(pedigree.kinship(3, 2)).isEqualTo(1. / 8);
        assertThat(pedigree.founderContributions(3).unnamed()).isEqualTo(.5 + 1. / 16);
    }

    @Test
    void unknown_sires_without_young_change_nothing() {
        var builder = Pedigree.builder(4).founder(0).founder(1).founder(2);
        int one = builder.unknownSire(new int[] {0, 1}, new double[] {.5, .25});
        builder.unknownSire(new int[] {one, 2}, new double[] {.5, .25});
        builder.unknownSire(new int[] {3, 2}, new double[] {.5, .25});
        var pedigree = builder.young(3, 0, 1).build();
        assertThat(pedigree.kinship(3, 0)).isEqualTo(.25);
        assertThat(pedigree.founderContributions(3).unnamed()).isZero();
        assertThat(pedigree.births().nodes()).isEqualTo(4);
    }

    @Test
    void a_deep_pedigree_needs_no_deep_stack() {
        int generations = 200_000;
        var builder = Pedigree.builder(generations);
        for (int row = 0; row < generations - 1; row++) {
            builder.young(row, U, row + 1);
        }
        assertThat(builder.founder(generations - 1).build().size()).isEqualTo(generations);
    }

    @Test
    void identical_twins_are_to_each_other_what_each_is_to_itself() {
        var pedigree = Pedigree.builder(6)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .twin(3, 2)
                .young(4, 0, 1)
                .young(5, 2, 4)
                .build();
        assertThat(pedigree.kinship(2, 3)).isEqualTo(.5);
        assertThat(pedigree.kinship(3, 4)).isEqualTo(.25);
        assertThat(pedigree.kinship(3, 5)).isEqualTo(pedigree.kinship(2, 5));
        // Two copies of one genome: a pool of both is as diverse as one of them.
        assertThat(pedigree.pool(2, 3).geneDiversity()).isEqualTo(.5);
        assertThat(pedigree.pool(0, 2, 3).geneDrop(64, 1).genomeUniqueness()[1].value())
                .isZero();
    }

    @Test
    void twin_founders_count_as_one() {
        var pedigree = Pedigree.builder(4)
                .founder(1)
                .twin(0, 1)
                .young(2, 0, U)
                .young(3, 1, U)
                .build();
        assertThat(pedigree.pool(2, 3).founderContributions().founders()).containsExactly(0);
        assertThat(pedigree.kinship(2, 3)).isEqualTo(.125);
    }

    @Test
    void inbreeding_and_kinship_of_founders_from_dna_are_handed_down() {
        // By the definition: f(young of a and b) = (f_aa + f_ab) / 2 with a, F of a young of two = their kinship.
        var pedigree = Pedigree.builder(7)
                .founder(0, .2)
                .founder(1)
                .founder(2)
                .founderKinship(0, 1, .125)
                .founderKinship(2, 1, .0625)
                .young(3, 0, 1)
                .young(4, 2, 1)
                .young(5, 3, 4)
                .young(6, 5, U)
                .build();
        assertThat(pedigree.inbreeding(0)).isCloseTo(.2, within(1e-15));
        assertThat(pedigree.kinship(0, 1)).isEqualTo(.125);
        assertThat(pedigree.kinship(0, 2)).isZero();
        assertThat(pedigree.inbreeding(3)).isEqualTo(.125);
        assertThat(pedigree.kinship(3, 0)).isCloseTo((.6 + .125) / 2, within(1e-15));
        double sires = (0 + .125 + .0625 + .5) / 4;
        assertThat(pedigree.inbreeding(5)).isCloseTo(sires, within(1e-15));
        assertThat(pedigree.kinship(3, 4)).isCloseTo(sires, within(1e-15));
        assertThat(pedigree.kinship(6, 2)).isCloseTo((0 + .0625 + .5 + .0625) / 8, within(1e-15));
        assertThat(pedigree.pool(3, 4).meanKinship()).isCloseTo((.5625 + .53125 + 2 * sires) / 4, within(1e-15));
        assertThat(pedigree.kinship(new int[] {6}, new int[] {2})[0][0]).isEqualTo(pedigree.kinship(6, 2));
    }

    @Test
    void as_many_founders_as_one_likes_are_related_by_dna() {
        int founders = 12;
        var builder = Pedigree.builder(founders);
        for (int row = 0; row < founders; row++) {
            builder.founder(row);
            for (int other = 0; other < row; other++) {
                builder.founderKinship(row, other, (row * founders + other) / 1024.);
            }
        }
        var pedigree = builder.build();
        for (int row = 0; row < founders; row++) {
            for (int other = 0; other < row; other++) {
                assertThat(pedigree.kinship(row, other)).isEqualTo((row * founders + other) / 1024.);
            }
        }
    }

    @Test
    void inbred_founders_related_by_dna_are_the_same_in_a_table() {
        var pedigree = Pedigree.builder(4)
                .founder(0, .25)
                .founder(1, .5)
                .founderKinship(0, 1, .125)
                .young(2, 0, 1)
                .young(3, 2, 1)
                .build();
        double[][] table = pedigree.kinship(new int[] {0, 1, 2, 3}, new int[] {0, 1, 2, 3});
        // By the definition, f of oneself (1 + F)/2, of a young with an older animal the mean of its parents'.
        assertThat(table[0]).containsExactly(.625, .125, .375, .25);
        assertThat(table[1]).containsExactly(.125, .75, .4375, .59375);
        assertThat(table[3][3]).isEqualTo((1 + .4375) / 2);
    }

    @Test
    void founders_without_young_are_related_by_dna_too() {
        var pedigree = Pedigree.builder(2)
                .founder(0)
                .founder(1)
                .founderKinship(0, 1, .25)
                .build();
        assertThat(pedigree.kinship(0, 1)).isEqualTo(.25);
        assertThat(pedigree.inbreedingOfYoung(0, 1)).isEqualTo(.25);
    }

    @Test
    void what_contradicts_itself_is_refused() {
        assertThatIllegalStateException()
                .isThrownBy(() -> Pedigree.builder(2).founder(0).build());
        assertThatIllegalStateException()
                .isThrownBy(() -> Pedigree.builder(1).founder(0).young(0, U, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).young(0, 2, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).young(0, -2, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).unknownSire(new int[] {0, 1}, new double[] {.7, .4}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).unknownSire(new int[] {U}, new double[] {.7}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).parthenogen(0, 1, Fusion.CENTRAL, 1.5));
        assertThatIllegalStateException().isThrownBy(() -> Pedigree.builder(3)
                .founder(0)
                .founder(1)
                .young(2, 0, 1)
                .founderKinship(0, 2, .1)
                .build());
        assertThatIllegalStateException().isThrownBy(() -> Pedigree.builder(2)
                .founder(0)
                .founder(1)
                .key(0, new UUID(1, 1))
                .key(1, new UUID(1, 1))
                .build());
    }

    @Test
    void a_kinship_that_depends_on_the_sire_has_a_best_and_a_worst_case() {
        // Sire 0 or 1, or with a quarter a stranger; the young of the first and his daughter, by hand.
        var builder = Pedigree.builder(6).founder(0).founder(1).founder(2).young(3, 0, 2);
        builder.youngOfOneOf(4, new int[] {0, 1}, new double[] {.5, .25}, U).young(5, 0, 1);
        var pedigree = builder.build();
        assertThat(pedigree.kinshipRange(3, 4, 100, 1)).isEqualTo(new KinshipRange(0, .125, 3, true));
        assertThat(pedigree.kinship(3, 4)).isEqualTo(.0625);
        assertThat(pedigree.kinshipRange(3, 5, 100, 1)).isEqualTo(new KinshipRange(.125, .125, 1, true));
        assertThat(pedigree.kinshipRange(3, 4, 2, 1).exhaustive()).isFalse();
        assertThat(pedigree.kinshipRange(3, 4, 2, 1)).isEqualTo(pedigree.kinshipRange(3, 4, 2, 1));
    }

    // Two founders that are not inbred have a kinship of ½ at most, that of identical twins; and who is a twin of two
    // animals makes these twins of each other.
    @Test
    void kinships_of_founders_that_no_animals_could_have_are_refused() {
        assertThatIllegalStateException()
                .isThrownBy(() -> founders(2).founderKinship(0, 1, .6).build())
                .withMessageContaining("founder 1");
        assertThatIllegalStateException()
                .isThrownBy(() -> founders(3)
                        .founderKinship(0, 1, .5)
                        .founderKinship(1, 2, .5)
                        .build())
                .withMessageContaining("founder 2");
        assertThatIllegalStateException().isThrownBy(() -> founders(4)
                .founderKinship(0, 1, .4)
                .founderKinship(1, 2, .4)
                .founderKinship(0, 2, .1)
                .build());
        assertThat(founders(2).founderKinship(0, 1, .5).build().kinship(0, 1)).isEqualTo(.5);
        assertThat(founders(3)
                        .founderKinship(0, 1, .5)
                        .founderKinship(1, 2, .5)
                        .founderKinship(0, 2, .5)
                        .build()
                        .kinship(0, 2))
                .isEqualTo(.5);
    }

    private static PedigreeBuilder founders(int count) {
        var builder = Pedigree.builder(count);
        for (int row = 0; row < count; row++) {
            builder.founder(row);
        }
        return builder;
    }
}
