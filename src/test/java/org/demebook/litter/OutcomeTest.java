package org.demebook.litter;

import static org.assertj.core.api.Assertions.assertThat;

import org.demebook.problem.ProblemType;
import org.demebook.problem.Rule;
import org.junit.jupiter.api.Test;

/** The classes of the trade (common practice, no source). */
class OutcomeTest {
    @Test
    void the_four_classes_share_out_what_was_found() {
        assertThat(outcome(11, 1, 2, 3, 17).breaches()).isEmpty();
        assertThat(outcome(11, 1, 0, 2, 14).breaches()).isEmpty();
    }

    @Test
    void one_that_is_missing_is_asked_for() {
        var breaches = outcome(10, 1, 0, 2, 14).breaches();

        assertThat(breaches).hasSize(1);
        assertThat(breaches.get(0).type()).isEqualTo(ProblemType.LITTER_DOES_NOT_ADD_UP);
        assertThat(breaches.get(0).finding().rule()).isEqualTo(Rule.LITTER_DOES_NOT_ADD_UP);
        assertThat(breaches.get(0).finding().message())
                .isEqualTo(
                        "14 found, the classes add to 13 (10 live-born, 1 stillborn, 0 part-developed, 2 unfertilised): one missing. Which?");
        assertThat(outcome(12, 1, 1, 2, 14).breaches().get(0).finding().message())
                .endsWith("2 too many. Which?");
    }

    @Test
    void a_part_is_never_more_than_its_class() {
        var outcome = new Outcome(3, 4, 1, 2, 0, 2, 1, 2, 6);

        assertThat(outcome.breaches().stream().map(breach -> breach.finding().field()))
                .containsExactly("malformedLive", "malformedStillborn", "unfertilised");
        assertThat(outcome.breaches().get(2).finding().message())
                .isEqualTo(
                        "3 of the unfertilised are infertile or early dead, but there are only 2 unfertilised: 1 too many.");
    }

    @Test
    void slugs_that_nobody_told_apart_are_neither_infertile_nor_early_dead() {
        var outcome = new Outcome(3, null, 0, null, null, 5, 1, null, 8);

        assertThat(outcome.breaches()).isEmpty();
        assertThat(outcome.unfertilised() - outcome.infertile() - outcome.earlyDead())
                .isEqualTo(4);
    }

    private static Outcome outcome(int liveBorn, int stillborn, int partDeveloped, int unfertilised, int ovaFound) {
        return new Outcome(liveBorn, null, stillborn, null, partDeveloped, unfertilised, null, null, ovaFound);
    }
}
