package org.demebook.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.rearing.Entries.day;
import static org.demebook.rearing.Entries.refused;
import static org.demebook.rearing.Entries.shed;
import static org.demebook.rearing.Entries.taken;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.Diary;
import org.demebook.notation.RoughDate;
import org.demebook.taxon.TaxonProfile;
import org.demebook.taxon.TaxonProfile.Rearing;
import org.junit.jupiter.api.Test;

class LeavingWindowTest {
    private static final Rearing PROFILE = TaxonProfile.BOAS.rearing();
    private static final RoughDate BORN = RoughDate.parse("2026-06-29");

    @Test
    void a_run_of_two_in_fair_tosses_comes_as_the_fibonacci_numbers_say() {
        // of the 2^n rows of n tosses F(n+2) have no two heads in a row: 3 of 4, 5 of 8, 8 of 16, 13 of 32 (textbook,
        // from memory)
        assertThat(LeavingWindow.offersUntilInARow(0.5, 0, 2, 1 / 4.0)).hasValue(2);
        assertThat(LeavingWindow.offersUntilInARow(0.5, 0, 2, 3 / 8.0)).hasValue(3);
        assertThat(LeavingWindow.offersUntilInARow(0.5, 0, 2, 8 / 16.0)).hasValue(4);
        assertThat(LeavingWindow.offersUntilInARow(0.5, 0, 2, 19 / 32.0)).hasValue(5);
        assertThat(LeavingWindow.offersUntilInARow(0.5, 0, 2, 19 / 32.0 + 1e-9)).hasValue(6);
    }

    @Test
    void one_that_takes_everything_needs_what_is_missing_and_one_that_takes_nearly_nothing_is_beyond_foresight() {
        assertThat(LeavingWindow.offersUntilInARow(1, 0, 4, 0.95)).hasValue(4);
        assertThat(LeavingWindow.offersUntilInARow(1, 3, 4, 0.05)).hasValue(1);
        assertThat(LeavingWindow.offersUntilInARow(0.1, 0, 4, 0.5)).isEmpty();
    }

    @Test
    void nothing_is_ready_before_its_56th_day() {
        var window = of(day("2026-08-20"), wellFed());

        assertThat(window.earliest()).isEqualTo("2026-08-24");
        assertThat(window.likely()).isEqualTo("2026-08-24");
        assertThat(window.latest()).isEqualTo("2026-08-24");
    }

    @Test
    void once_only_waiting_is_left_the_window_is_the_day_on_which_it_ends() {
        // scenario B1: the fourth meal in a row on 25 August, three days before it may travel
        var window = of(day("2026-08-26"), wellFed().with(taken("2026-08-25")));

        assertThat(window).isEqualTo(new LeavingWindow(day("2026-08-28"), day("2026-08-28"), day("2026-08-28")));
    }

    @Test
    void the_window_narrows_with_every_meal_that_is_taken() {
        var diary = Diary.of(shed("2026-07-09"));
        long width = width(of(day("2026-07-10"), diary));
        for (var on : List.of("2026-07-14", "2026-07-21", "2026-07-28", "2026-08-04")) {
            diary = diary.with(taken(on));
            long narrower = width(of(day(on), diary));
            assertThat(narrower).as("after the meal of " + on).isLessThanOrEqualTo(width);
            width = narrower;
        }
        assertThat(width).isZero();
    }

    @Test
    void a_refusal_moves_the_window_back() {
        var before = of(day("2026-08-12"), diary("2026-07-28", "2026-08-04", "2026-08-11"));
        var after = of(
                day("2026-08-18"),
                diary("2026-07-28", "2026-08-04", "2026-08-11").with(refused("2026-08-18")));

        assertThat(Objects.requireNonNull(before.likely())).isEqualTo("2026-08-24");
        // four more at a rhythm of seven days: 25 August, 1, 8 and 15 September, and three days of rest
        assertThat(after.earliest()).isEqualTo("2026-09-18");
        assertThat(after.latest()).isAfter(after.likely());
    }

    @Test
    void its_own_rhythm_counts_for_more_than_that_of_the_profile() {
        var everyTenDays = of(
                day("2026-09-03"),
                diary("2026-07-14", "2026-07-24", "2026-08-03", "2026-08-13").with(refused("2026-08-23")));

        assertThat(everyTenDays.earliest())
                .as("four offers, ten days apart, from the day after on which one was due; three days of rest")
                .isEqualTo(day("2026-09-03").plusDays(30 + 3));
    }

    @Test
    void there_is_no_window_without_a_birth() {
        assertThat(LeavingWindow.of(null, wellFed(), PROFILE, day("2026-08-26")))
                .isNull();
        assertThat(LeavingWindow.of(RoughDate.parse("../2026-06-29"), wellFed(), PROFILE, day("2026-08-26")))
                .isNull();
    }

    @Test
    void nine_tenths_of_simulated_young_are_ready_within_their_window() {
        // young that take 60 to 95 % of what is offered every 7 days; looked at on their 35th day
        long seed = 20_260_629;
        var random = new Random(seed);
        var born = BORN.day().orElseThrow();
        int within = 0;
        int foreseen = 0;
        for (int i = 0; i < 2000; i++) {
            double share = 0.6 + 0.35 * random.nextDouble();
            var diary = Diary.of(shed(born.plusDays(7 + random.nextInt(8)).toString()));
            var seen = diary;
            var offer = born.plusDays(10 + random.nextInt(12));
            while (diary.mealsInARow() < PROFILE.mealsToLeave()) {
                CareRecord meal = random.nextDouble() < share ? taken(offer.toString()) : refused(offer.toString());
                diary = diary.with(meal);
                seen = offer.isBefore(born.plusDays(35)) ? diary : seen;
                offer = offer.plusDays(7);
            }
            var ready = later(
                    born.plusDays(56),
                    diary.lastMeal().map(Meal::on).orElseThrow().plusDays(3));
            var window = of(born.plusDays(35), seen);
            if (window.latest() != null) {
                foreseen++;
                within += ready.isBefore(window.earliest()) || ready.isAfter(window.latest()) ? 0 : 1;
            }
        }
        assertThat(foreseen).as("seed " + seed).isGreaterThan(1500);
        assertThat((double) within / foreseen).as("seed " + seed).isBetween(0.88, 0.99);
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }

    private static Diary wellFed() {
        return diary("2026-08-04", "2026-08-11", "2026-08-18").with(taken("2026-07-28"));
    }

    private static Diary diary(String... takenOn) {
        var diary = Diary.of(shed("2026-07-09"));
        for (var on : takenOn) {
            diary = diary.with(taken(on));
        }
        return diary;
    }

    private static LeavingWindow of(LocalDate today, Diary diary) {
        return Objects.requireNonNull(LeavingWindow.of(BORN, diary, PROFILE, today));
    }

    private static long width(LeavingWindow window) {
        return ChronoUnit.DAYS.between(window.earliest(), Objects.requireNonNull(window.latest()));
    }
}
