package org.demebook.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.demebook.litter.Outcome;
import org.demebook.reading.LossReading.Loss;
import org.demebook.reading.LossReading.Verdict;
import org.junit.jupiter.api.Test;

/** Counts, shares and what is worth checking: common practice, no source, where none is named. */
class LitterReadingTest {
    private static final UsualLosses NOTHING_KNOWN = new UsualLosses(List.of());

    @Test
    void two_slugs_of_fourteen_are_within_chance() {
        // 14 in all: 10 live, 1 live malformed, 1 stillborn, 2 slugs
        var reading = NOTHING_KNOWN.read(outcome(11, 1, 0, 2), 107);

        assertThat(reading.daysFromShed()).isEqualTo(107);
        var slugs = of(Loss.UNFERTILISED, reading);
        assertThat(slugs.verdict()).isEqualTo(Verdict.WITHIN_CHANCE);
        assertThat(slugs.probability()).isCloseTo(0.42, within(0.005));
        assertThat(slugs.sentence())
                .startsWith("2 of 14 slugs is within chance")
                .contains("42 %")
                .contains("common practice");
        assertThat(reading.worthChecking()).isEmpty();
    }

    @Test
    void fourteen_slugs_of_sixteen_are_more_than_chance_explains() {
        var reading = NOTHING_KNOWN.read(outcome(2, 0, 0, 14), null);

        assertThat(of(Loss.UNFERTILISED, reading).verdict()).isEqualTo(Verdict.UNUSUAL);
        assertThat(reading.worthChecking()).first().asString().startsWith("A third or more are slugs");
        assertThat(reading.worthChecking()).last().asString().endsWith("see a reptile veterinarian.");
    }

    @Test
    void five_slugs_of_fourteen_are_worth_a_look() {
        var slugs = of(Loss.UNFERTILISED, NOTHING_KNOWN.read(outcome(9, 0, 0, 5), null));
        assertThat(slugs.probability()).isCloseTo(0.0092, within(0.00005));
        assertThat(slugs.verdict()).isEqualTo(Verdict.UNUSUAL);
    }

    @Test
    void one_bad_egg_never_alarms() {
        var spotless = new UsualLosses(Collections.nCopies(200, outcome(20, 0, 0, 0)));
        var reading = spotless.read(new Outcome(18, 1, 1, 0, 0, 1, 0, 0, 20), null);

        assertThat(reading.losses()).hasSize(3);
        assertThat(reading.losses()).allSatisfy(loss -> {
            assertThat(loss.found()).isEqualTo(1);
            assertThat(loss.verdict()).isEqualTo(Verdict.WITHIN_CHANCE);
        });
        assertThat(reading.worthChecking()).isEmpty();
    }

    @Test
    void a_litter_is_compared_with_those_of_its_own_population() {
        // 4 slugs of 14 are usual here
        var slugs = new UsualLosses(Collections.nCopies(60, outcome(10, 0, 0, 4)));
        var five = slugs.read(outcome(9, 0, 0, 5), null);

        assertThat(five.littersComparedWith()).isEqualTo(60);
        assertThat(of(Loss.UNFERTILISED, five).verdict()).isEqualTo(Verdict.WITHIN_CHANCE);
        assertThat(of(Loss.UNFERTILISED, five).usualShare()).isCloseTo(4 / 14.0, within(0.02));
        assertThat(of(Loss.UNFERTILISED, five).sentence()).contains("60 litters compared with");
    }

    @Test
    void stillborn_and_part_developed_are_counted_among_the_formed_and_apart_from_slugs() {
        var reading = NOTHING_KNOWN.read(new Outcome(4, 0, 5, 1, 2, 3, 1, 1, 14), null);

        var dead = of(Loss.DEAD_IN_SAC_OR_AT_BIRTH, reading);
        assertThat(dead.found()).isEqualTo(7);
        assertThat(dead.of()).isEqualTo(11);
        assertThat(dead.verdict()).isEqualTo(Verdict.UNUSUAL);
        assertThat(of(Loss.MALFORMED, reading).of()).isEqualTo(9);
        assertThat(reading.worthChecking().get(0))
                .contains("how warm she lay", "how closely the parents are related")
                .doesNotContain("cause");
    }

    @Test
    void a_whole_litter_of_slugs_names_what_to_look_at_and_nothing_that_was_not_there() {
        var reading = NOTHING_KNOWN.read(outcome(0, 0, 0, 9), null);
        assertThat(reading.losses()).hasSize(1);
        assertThat(reading.worthChecking().get(0))
                .startsWith("The whole litter is slugs")
                .contains("fatherless young");
    }

    static LossReading of(Loss loss, LitterReading reading) {
        return reading.losses().stream()
                .filter(one -> one.loss() == loss)
                .findFirst()
                .orElseThrow();
    }

    static Outcome outcome(int liveBorn, int stillborn, int partDeveloped, int unfertilised) {
        return new Outcome(
                liveBorn,
                0,
                stillborn,
                0,
                partDeveloped,
                unfertilised,
                0,
                0,
                liveBorn + stillborn + partDeveloped + unfertilised);
    }
}
