package org.demebook.gestation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.demebook.gestation.HowKnown.GUESSED;
import static org.demebook.gestation.HowKnown.SEEN;
import static org.demebook.gestation.HowKnown.SKIN_FOUND;
import static org.demebook.gestation.Landmark.LAYING;
import static org.demebook.gestation.Landmark.OVULATION;
import static org.demebook.gestation.Landmark.POST_OVULATION_SHED;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/**
 * Figures are those of the trade: 105 days from the shed, 123 from the ovulation, 100 to 120 usual, 90 and 121 as limits
 * (common practice, no source). Posterior means and spreads are the worked values of the normal–normal formula, computed
 * by hand: Gelman et al., Bayesian Data Analysis, section 2.5 (from memory).
 */
class DueWindowTest {
    private static final TaxonProfile.Gestation BOAS = TaxonProfile.BOAS.gestation();
    private static final String PROFILE = "Marrowfin Cay";
    private static final LocalDate SHED_ON = LocalDate.parse("2026-03-14");
    private static final LocalDate OVULATED_ON = LocalDate.parse("2026-02-24");

    @Test
    void without_history_the_profile_says_105_days_with_a_spread_of_8() {
        var due = due(shed(SEEN));

        assertThat(due.ownMean().meanDays()).isEqualTo(105.0, within(0.005));
        assertThat(due.spreadDays()).isEqualTo(8.06, within(0.005));
        assertThat(due.withoutHistoryOn()).isNull();
    }

    @Test
    void two_litters_at_109_and_113_days_move_her_mean_to_110_16() {
        var due = due(shed(SEEN), 109, 113);

        assertThat(due.ownMean().meanDays()).isEqualTo(110.16, within(0.005));
        assertThat(due.ownMean().spreadDays()).isEqualTo(2.62, within(0.005));
        assertThat(due.spreadDays()).isEqualTo(4.78, within(0.005));
    }

    @Test
    void one_litter_at_90_days_moves_her_mean_to_93_69() {
        var due = due(shed(SEEN), 90);

        assertThat(due.ownMean().meanDays()).isEqualTo(93.69, within(0.005));
        assertThat(due.ownMean().spreadDays()).isEqualTo(3.47, within(0.005));
        assertThat(due.spreadDays()).isEqualTo(5.30, within(0.005));
    }

    /** Scenario A1. */
    @Test
    void a_shed_of_14_march_makes_a_birth_due_on_27_june_from_22_june_to_12_july() {
        for (var howKnown : List.of(SEEN, SKIN_FOUND)) {
            var due = due(shed(howKnown));

            assertThat(due.expectedOn()).isEqualTo("2026-06-27");
            assertThat(due.likely().fromOn()).isEqualTo("2026-06-22");
            assertThat(due.likely().untilOn()).isEqualTo("2026-07-12");
            assertThat(due.earliestOn()).isEqualTo("2026-06-12");
            assertThat(due.overdueOn()).isEqualTo("2026-07-13");
            assertThat(due.reason()).startsWith("105 days after the shed; profile Marrowfin Cay.");
        }
    }

    /** Scenario A2. */
    @Test
    void her_own_history_moves_the_day_to_2_july_and_the_reason_names_the_day_without_it() {
        var due = due(shed(SEEN), 109, 113);

        assertThat(due.expectedOn()).isEqualTo("2026-07-02");
        assertThat(due.withoutHistoryOn()).isEqualTo("2026-06-27");
        assertThat(Math.round(due.expectedDays())).isEqualTo(110);
        assertThat(Math.round(due.spreadDays())).isEqualTo(5);
        assertThat(due.reason())
                .isEqualTo(
                        "110 days after the shed; profile Marrowfin Cay, weighed with her own earlier 2 litters (109, 113 days). Without her history: 27 June 2026.");
    }

    /** Scenario A3. */
    @Test
    void from_the_ovulation_alone_the_day_is_the_same_the_window_wider_and_the_reason_says_so() {
        var fromOvulation = due(new Landmark.Noted(OVULATION, OVULATED_ON, SEEN));
        var fromShed = due(shed(SEEN));

        assertThat(fromOvulation.expectedOn()).isEqualTo("2026-06-27");
        assertThat(length(fromOvulation.ninety())).isGreaterThan(length(fromShed.ninety()));
        assertThat(length(fromOvulation.likely())).isGreaterThan(length(fromShed.likely()));
        assertThat(fromOvulation.likely().fromOn()).isEqualTo(OVULATED_ON.plusDays(115));
        assertThat(fromOvulation.likely().untilOn()).isEqualTo(OVULATED_ON.plusDays(136));
        assertThat(fromOvulation.reason())
                .startsWith("123 days after the ovulation; profile Marrowfin Cay. No shed after it is noted");
    }

    @Test
    void the_less_surely_the_shed_is_known_the_wider_the_window() {
        var seen = due(shed(SEEN));
        var found = due(shed(SKIN_FOUND));
        var guessed = due(shed(GUESSED));

        // the variance of a day drawn evenly from a week is 49/12, from four weeks 784/12
        assertThat(found.spreadDays()).isEqualTo(Math.sqrt(65 + 49 / 12.0), within(1e-9));
        assertThat(guessed.spreadDays()).isEqualTo(Math.sqrt(65 + 784 / 12.0), within(1e-9));
        assertThat(length(guessed.ninety())).isGreaterThan(length(found.ninety()));
        assertThat(length(found.ninety())).isGreaterThanOrEqualTo(length(seen.ninety()));
        assertThat(found.reason()).contains("up to a week");
        assertThat(guessed.reason()).contains("guessed and may be two weeks off");
    }

    @Test
    void an_alert_never_lies_within_the_ninety_per_cent_window() {
        for (var howKnown : HowKnown.values()) {
            for (int[] history : new int[][] {{}, {90}, {109, 113}, {140, 141, 139}}) {
                for (var sign : List.of(shed(howKnown), new Landmark.Noted(OVULATION, OVULATED_ON, howKnown))) {
                    var due = due(sign, history);

                    assertThat(due.earliestOn()).isBeforeOrEqualTo(due.ninety().fromOn());
                    assertThat(due.overdueOn()).isAfter(due.ninety().untilOn());
                    assertThat(due.fifty().fromOn())
                            .isAfterOrEqualTo(due.ninety().fromOn());
                    assertThat(due.ninety().contains(due.expectedOn())).isTrue();
                }
            }
        }
    }

    @Test
    void an_earlier_litter_dated_by_a_guess_says_less_than_one_whose_shed_was_seen() {
        var sure = due(shed(SEEN), List.of(interval(UUID.randomUUID(), SEEN, 113)), List.of());
        var unsure = due(shed(SEEN), List.of(interval(UUID.randomUUID(), GUESSED, 113)), List.of());

        assertThat(unsure.ownMean().meanDays()).isBetween(105.0, sure.ownMean().meanDays());
        assertThat(unsure.spreadDays()).isGreaterThan(sure.spreadDays());
    }

    @Test
    void an_egg_layer_is_counted_from_the_laying_and_her_own_hatchings_count() {
        var laying = new Landmark.Noted(LAYING, LocalDate.parse("2026-04-01"), SEEN);
        var earlier = new Interval(
                UUID.randomUUID(),
                new Landmark.Noted(LAYING, LocalDate.parse("2025-04-01"), SEEN),
                LocalDate.parse("2025-04-01").plusDays(64));

        assertThat(due(laying).expectedOn()).isEqualTo("2026-05-31"); // 60 days
        assertThat(due(laying, List.of(earlier), List.of()).ownMean().meanDays())
                // (60/49 + 64/16) / (1/49 + 1/16) = 63.015…
                .isEqualTo(63.02, within(0.005));
    }

    @Test
    void an_interval_half_as_long_or_half_as_long_again_is_taken_for_another_cycle() {
        assertThat(due(shed(SEEN), 52, 158).ownMean().meanDays()).isEqualTo(105.0, within(1e-9));
    }

    @Test
    void eight_intervals_of_four_other_females_stand_in_for_the_profile_and_seven_do_not() {
        var others = new ArrayList<Interval>();
        for (int female = 0; female < 4; female++) {
            var id = UUID.randomUUID();
            others.add(interval(id, SEEN, 118 + female));
            others.add(interval(id, SEEN, 119 + female));
        }
        var due = due(shed(SEEN), List.of(), others);

        // females' means 118.5 … 121.5, each of two litters: their plain mean
        assertThat(due.expectedDays()).isEqualTo(120.0, within(1e-9));
        assertThat(due.reason())
                .isEqualTo(
                        "120 days after the shed; usual are 120, estimated from 8 intervals of 4 females of this population.");
        assertThat(due(shed(SEEN), List.of(), others.subList(0, 7)).expectedDays())
                .isEqualTo(105.0, within(1e-9));
        var threeFemales = others.stream()
                .map(interval -> interval.damId().equals(others.get(7).damId())
                        ? interval(others.get(0).damId(), SEEN, interval.days())
                        : interval)
                .toList();
        assertThat(due(shed(SEEN), List.of(), threeFemales).expectedDays()).isEqualTo(105.0, within(1e-9));
    }

    private static DueWindow due(Landmark.Noted sign, int... history) {
        var her = UUID.randomUUID();
        return due(
                sign,
                IntStream.of(history)
                        .mapToObj(days -> interval(her, SEEN, days))
                        .toList(),
                List.of());
    }

    private static DueWindow due(Landmark.Noted sign, List<Interval> own, List<Interval> others) {
        return DueWindow.of(sign, BOAS, PROFILE, own, others);
    }

    private static Landmark.Noted shed(HowKnown howKnown) {
        return new Landmark.Noted(POST_OVULATION_SHED, SHED_ON, howKnown);
    }

    private static Interval interval(UUID damId, HowKnown howKnown, long days) {
        var on = LocalDate.parse("2024-03-01");
        return new Interval(damId, new Landmark.Noted(POST_OVULATION_SHED, on, howKnown), on.plusDays(days));
    }

    private static long length(DaySpan days) {
        return ChronoUnit.DAYS.between(days.fromOn(), days.untilOn()) + 1;
    }
}
