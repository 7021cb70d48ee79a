package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the core does not take, and what lies just within. By its own contract. */
class RefusalsTest {
    private static final int U = Pedigree.UNKNOWN;

    @ParameterizedTest
    @ValueSource(doubles = {-1e-300, -1, 1.0000000000000002, 2, Double.NaN, Double.POSITIVE_INFINITY})
    void what_is_no_probability_is_refused_wherever_one_is_asked_for(double value) {
        var builder = Pedigree.builder(2).founder(0);
        assertThatIllegalArgumentException().isThrownBy(() -> builder.founder(1, value));
        assertThatIllegalArgumentException().isThrownBy(() -> builder.founderKinship(0, 1, value));
        assertThatIllegalArgumentException().isThrownBy(() -> builder.parthenogen(1, 0, Fusion.TERMINAL, value));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.unknownSire(new int[] {0}, new double[] {value}))
                .withMessageContaining("0 to 1");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1})
    void certainties_are_probabilities(double value) {
        var builder = Pedigree.builder(5)
                .founder(0, value)
                .founder(1, value)
                .founderKinship(0, 1, value)
                .founder(4)
                .parthenogen(2, 4, Fusion.TERMINAL, value);
        var pedigree =
                builder.youngOfOneOf(3, new int[] {0}, new double[] {value}, U).build();
        assertThat(pedigree.inbreeding(0)).isEqualTo(value);
        assertThat(pedigree.kinship(0, 1)).isEqualTo(value);
        assertThat(pedigree.inbreeding(2)).isEqualTo(1 - value);
        assertThat(pedigree.kinship(3, 1)).isEqualTo(value * value / 2);
    }

    @ParameterizedTest
    @ValueSource(ints = {-1, -2, 2, 3, Integer.MAX_VALUE, Integer.MIN_VALUE})
    void a_row_that_nobody_has_is_refused_where_an_animal_must_be(int row) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).twin(0, row));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(2).parthenogen(0, row, Fusion.CENTRAL, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> Pedigree.builder(2)
                .founder(0)
                .founder(1)
                .founderKinship(0, row, .1)
                .build());
        assertThatIllegalArgumentException().isThrownBy(() -> Pedigree.builder(2)
                .founder(0)
                .founder(1)
                .founderKinship(row, 0, .1)
                .build());
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 3, -3, -4, Integer.MIN_VALUE})
    void a_parent_is_a_row_or_an_unknown_sire_of_the_same_builder(int parent) {
        var builder = Pedigree.builder(2);
        int male = builder.unknownSire(new int[] {1}, new double[] {1});
        assertThat(male).isEqualTo(-2);
        assertThatIllegalArgumentException().isThrownBy(() -> builder.young(0, parent, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> builder.young(0, 1, parent));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.unknownSire(new int[] {parent}, new double[] {.5}));
        assertThat(builder.young(0, male, U).founder(1).build().kinship(0, 1)).isEqualTo(.25);
    }

    @Test
    void candidates_and_their_probabilities_come_in_pairs_and_there_is_one() {
        var builder = Pedigree.builder(2);
        assertThatIllegalArgumentException().isThrownBy(() -> builder.unknownSire(new int[] {0, 1}, new double[] {.5}));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.unknownSire(new int[] {0}, new double[] {.5, .5}));
        assertThatIllegalArgumentException().isThrownBy(() -> builder.unknownSire(new int[] {}, new double[] {}));
    }

    @Test
    void probabilities_that_add_up_to_one_but_for_rounding_leave_no_stranger() {
        double tenth = .1;
        var builder = Pedigree.builder(11);
        int[] candidates = new int[10];
        double[] shares = new double[10];
        for (int row = 0; row < 10; row++) {
            builder.founder(row);
            candidates[row] = row;
            shares[row] = tenth;
        }
        shares[9] = tenth + 1e-12;
        var pedigree =
                builder.young(10, builder.unknownSire(candidates, shares), U).build();
        // The dam alone is a founder that is no animal.
        assertThat(pedigree.founderContributions(10).unnamed()).isEqualTo(.5);
        shares[9] = tenth + 1e-6;
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Pedigree.builder(11).unknownSire(candidates, shares))
                .withMessageContaining("1.000001");
        shares[9] = tenth - 1e-6;
        var lacking = Pedigree.builder(11);
        for (int row = 0; row < 10; row++) {
            lacking.founder(row);
        }
        var known =
                lacking.young(10, lacking.unknownSire(candidates, shares), U).build();
        assertThat(known.founderContributions(10).unnamed()).isCloseTo(.5 + .5e-6, within(1e-15));
    }

    @Test
    void a_pair_of_founders_is_two_and_is_told_once() {
        var builder = Pedigree.builder(2).founder(0).unknownParents(1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.founderKinship(0, 0, .5))
                .withMessageContaining("inbreeding");
        builder.founderKinship(0, 1, .125).founderKinship(1, 0, .125);
        assertThatIllegalStateException().isThrownBy(builder::build).withMessageContaining("twice");
    }

    @Test
    void those_of_unknown_parents_may_be_related_by_dna() {
        var pedigree = Pedigree.builder(2)
                .founder(0)
                .unknownParents(1)
                .founderKinship(1, 0, .125)
                .build();
        assertThat(pedigree.kinship(0, 1)).isEqualTo(.125);
    }

    @Test
    void a_young_of_two_unknown_parents_is_an_animal_of_unknown_parents() {
        var pedigree = Pedigree.builder(2).young(0, U, U).founder(1).build();
        assertThat(pedigree.knownFractions()).containsExactly(0, 1);
    }

    @Test
    void what_was_built_takes_nothing_more() {
        var builder = Pedigree.builder(1).founder(0);
        builder.build();
        assertThatIllegalStateException().isThrownBy(() -> builder.key(0, new UUID(1, 1)));
        assertThatIllegalStateException().isThrownBy(() -> builder.founderKinship(0, 0, .1));
        assertThatIllegalStateException().isThrownBy(() -> builder.unknownSire(new int[] {0}, new double[] {1}));
    }

    @Test
    void figures_that_need_one_of_something_refuse_none() {
        var pedigree = Pedigree.builder(2).founder(0).founder(1).build();
        assertThatIllegalArgumentException().isThrownBy(() -> pedigree.kinshipRange(0, 1, 0, 1));
        assertThat(pedigree.kinshipRange(0, 1, 1, 1)).isEqualTo(new KinshipRange(0, 0, 1, true));
        assertThatIllegalArgumentException().isThrownBy(() -> pedigree.depth().completeness(0));
        assertThatIllegalArgumentException().isThrownBy(() -> pedigree.pool(0).withLitter(0, 1, -1));
        for (int places : List.of(0, 1, 3)) {
            assertThatIllegalArgumentException().isThrownBy(() -> pedigree.relationshipTimes(new double[places]));
        }
        assertThat(pedigree.relationshipTimes(new double[] {2, 3})).containsExactly(2, 3);
    }
}
