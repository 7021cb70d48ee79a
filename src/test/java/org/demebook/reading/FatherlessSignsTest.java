package org.demebook.reading;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.reading.FatherlessSigns.State.FOUND;
import static org.demebook.reading.FatherlessSigns.State.NOT_FOUND;
import static org.demebook.reading.FatherlessSigns.State.UNKNOWN;
import static org.demebook.reading.LitterReadingTest.outcome;

import java.time.LocalDate;
import org.demebook.chance.SexRatio;
import org.demebook.litter.Outcome;
import org.demebook.reading.FatherlessSigns.Evidence;
import org.demebook.reading.FatherlessSigns.Kind;
import org.demebook.reading.FatherlessSigns.State;
import org.demebook.taxon.SexSystem;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Signs of the trade (common practice, no source); sex systems as the abstracts that SexSystem names. */
class FatherlessSignsTest {
    private static final LocalDate BORN = LocalDate.of(2026, 6, 29);
    private static final SexRatio EVEN = new SexRatio(100, 104);

    @Test
    void three_daughters_and_nine_slugs_thirty_months_after_the_last_male_are_suspected_fatherless() {
        var signs = signs(outcome(3, 0, 0, 9), new SexRatio(0, 3), LocalDate.of(2023, 12, 20), true);

        assertThat(signs.suspected()).isTrue();
        assertThat(signs.score()).isEqualTo(5);
        assertThat(signs.sentence())
                .startsWith("Fatherless young suspected")
                .contains("DNA")
                .contains("none");
        assertThat(sign(Kind.NO_MALE, signs).reason()).contains("30 months before");
        assertThat(sign(Kind.HALF_LOST, signs).reason()).isEqualTo("9 of 12 are slugs or stillborn.");
        assertThat(signs.chanceOfOneSex()).isEqualTo(1 / 8.0);
    }

    @Test
    void daughters_alone_are_no_ground_for_suspicion() {
        var signs = signs(outcome(11, 0, 0, 1), new SexRatio(0, 11), LocalDate.of(2026, 1, 5), false);

        assertThat(state(Kind.ONE_SEX, signs)).isEqualTo(FOUND);
        assertThat(signs.chanceOfOneSex()).isEqualTo(1 / 2048.0);
        assertThat(sign(Kind.ONE_SEX, signs).reason()).contains("0.05 %");
        assertThat(signs.suspected()).isFalse();
    }

    @Test
    void daughters_that_chance_does_not_explain_with_many_slugs_are_suspected_although_a_male_was_there() {
        var signs = signs(outcome(8, 0, 0, 8), new SexRatio(0, 8), LocalDate.of(2026, 1, 5), false);

        assertThat(state(Kind.NO_MALE, signs)).isEqualTo(NOT_FOUND);
        assertThat(signs.suspected()).isTrue();
    }

    @Test
    void a_son_has_a_sire_where_females_are_xx() {
        var signs = signs(outcome(3, 0, 0, 9), new SexRatio(1, 2), LocalDate.of(2023, 12, 20), true);

        assertThat(state(Kind.ONE_SEX, signs)).isEqualTo(NOT_FOUND);
        assertThat(signs.suspected()).isFalse();
        assertThat(signs.chanceOfOneSex()).isNull();
        assertThat(signs.sentence()).contains("could only have a sire");
    }

    @Test
    void where_males_are_zz_it_is_sons_that_are_looked_for() {
        assertThat(state(Kind.ONE_SEX, of(SexSystem.ZZ_ZW, new SexRatio(4, 0)))).isEqualTo(FOUND);
        assertThat(state(Kind.ONE_SEX, of(SexSystem.ZZ_ZW, new SexRatio(0, 4)))).isEqualTo(NOT_FOUND);
        assertThat(state(Kind.ONE_SEX, of(SexSystem.UNKNOWN, new SexRatio(0, 4))))
                .isEqualTo(FOUND);
        assertThat(state(Kind.ONE_SEX, of(SexSystem.UNKNOWN, new SexRatio(2, 2))))
                .isEqualTo(NOT_FOUND);
    }

    @Test
    void only_young_sexed_with_confidence_count() {
        var signs = signs(outcome(4, 0, 0, 4), new SexRatio(0, 0), LocalDate.of(2026, 1, 5), false);
        assertThat(state(Kind.ONE_SEX, signs)).isEqualTo(UNKNOWN);
        assertThat(signs.chanceOfOneSex()).isNull();
    }

    @Test
    void that_no_male_is_on_record_does_not_say_that_there_was_none() {
        assertThat(state(Kind.NO_MALE, signs(outcome(3, 0, 0, 9), new SexRatio(0, 3), null, false)))
                .isEqualTo(UNKNOWN);
    }

    @Test
    void a_population_with_more_sons_is_named_beside_the_chance() {
        // Frynta, Vejvodová & Šimková (2016), abstract: 174 males, 132 females
        var signs = FatherlessSigns.of(new Evidence(
                outcome(4, 0, 0, 4),
                new SexRatio(0, 4),
                0,
                SexSystem.XX_XY,
                BORN,
                null,
                true,
                false,
                4,
                new SexRatio(174, 132)));
        assertThat(sign(Kind.ONE_SEX, signs).reason()).contains("174 males", "132 females", "z = 2.40");
    }

    @Test
    void a_litter_without_live_young_has_none_that_could_be_fatherless() {
        var signs = signs(outcome(0, 0, 0, 9), new SexRatio(0, 0), LocalDate.of(2023, 12, 20), false);
        assertThat(signs.sentence()).startsWith("No young lives");
    }

    private static FatherlessSigns of(SexSystem system, SexRatio sexed) {
        return FatherlessSigns.of(
                new Evidence(outcome(4, 0, 0, 1), sexed, 0, system, BORN, null, false, false, 4, EVEN));
    }

    private static FatherlessSigns signs(
            Outcome outcome, SexRatio sexed, @Nullable LocalDate lastMetOn, boolean onlyRecessives) {
        int unsexed = outcome.liveBorn() - sexed.males() - sexed.females();
        return FatherlessSigns.of(new Evidence(
                outcome, sexed, unsexed, SexSystem.XX_XY, BORN, lastMetOn, false, onlyRecessives, 4, EVEN));
    }

    private static State state(Kind kind, FatherlessSigns signs) {
        return sign(kind, signs).state();
    }

    private static FatherlessSigns.Sign sign(Kind kind, FatherlessSigns signs) {
        return signs.signs().stream()
                .filter(sign -> sign.kind() == kind)
                .findFirst()
                .orElseThrow();
    }
}
