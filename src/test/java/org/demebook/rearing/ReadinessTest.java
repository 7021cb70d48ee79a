package org.demebook.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.rearing.Entries.assisted;
import static org.demebook.rearing.Entries.closedNote;
import static org.demebook.rearing.Entries.day;
import static org.demebook.rearing.Entries.mass;
import static org.demebook.rearing.Entries.note;
import static org.demebook.rearing.Entries.refused;
import static org.demebook.rearing.Entries.shed;
import static org.demebook.rearing.Entries.taken;

import java.time.LocalDate;
import org.demebook.diary.Diary;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.rearing.Readiness.State;
import org.demebook.rearing.Readiness.Young;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/**
 * The rules of the trade for a young that leaves (common practice, no source), and the days after a birth on 2026-06-29 as
 * one counts them on a calendar: 56 days later is 2026-08-24, 60 days later 2026-08-28.
 */
class ReadinessTest {
    private static final RoughDate BORN = RoughDate.parse("2026-06-29");
    private static final LocalDate DAY_60 = day("2026-08-28");

    /** Scenario B1: one shed, four meals without help, the last on 25 August, gained since the birth. */
    private static final Diary WELL_FED = Diary.of(
            mass("2026-06-29", "30"),
            shed("2026-07-09"),
            taken("2026-07-14"),
            refused("2026-07-21"),
            taken("2026-08-04"),
            taken("2026-08-11"),
            taken("2026-08-18"),
            taken("2026-08-25"),
            mass("2026-08-27", "41.5"));

    @Test
    void a_young_of_60_days_that_shed_and_took_four_meals_in_a_row_may_leave() {
        var readiness = on(DAY_60, WELL_FED);

        assertThat(readiness.ready()).isTrue();
        assertThat(readiness.established()).isTrue();
        assertThat(readiness.open()).isEmpty();
        assertThat(readiness.conditions())
                .extracting(Readiness.LeavingCondition::name)
                .containsExactly("age", "sheds", "meals", "last-meal", "mass", "health", "sex", "photograph");
        assertThat(reason(readiness, "age")).isEqualTo("Born on 2026-06-29, it is 60 days old; 56 are asked for.");
        assertThat(reason(readiness, "meals")).startsWith("It took its last 4 meals without help");
        assertThat(reason(readiness, "last-meal")).startsWith("It ate on 2026-08-25, 3 days ago");
        assertThat(reason(readiness, "mass"))
                .isEqualTo("It weighed 41.5 g on 2026-08-27, and 30 g at birth (2026-06-29).");
    }

    @Test
    void one_whose_last_two_meals_were_assisted_is_not_established_and_the_reason_says_so() {
        // scenario B2
        var readiness = on(
                DAY_60,
                Diary.of(
                        mass("2026-06-29", "30"),
                        shed("2026-07-09"),
                        taken("2026-07-28"),
                        taken("2026-08-04"),
                        assisted("2026-08-18"),
                        assisted("2026-08-25"),
                        mass("2026-08-27", "41.5")));

        assertThat(readiness.ready()).isFalse();
        assertThat(readiness.established()).isFalse();
        assertThat(readiness.open())
                .extracting(Readiness.LeavingCondition::name)
                .containsExactly("meals");
        assertThat(reason(readiness, "meals"))
                .isEqualTo("Its last 2 meals, since 2026-08-18, were assisted; 4 in a row are asked for without help.");
    }

    @Test
    void a_refusal_ends_the_row_of_meals() {
        var readiness = on(day("2026-09-04"), WELL_FED.with(refused("2026-09-01")));

        assertThat(state(readiness, "meals")).isEqualTo(State.NOT_MET);
        assertThat(reason(readiness, "meals")).startsWith("Its last meal, of 2026-09-01, was refused");
        // and a refused meal is none that it has in its stomach
        assertThat(reason(readiness, "last-meal")).startsWith("It ate on 2026-08-25, 10 days ago");
    }

    @Test
    void the_56th_day_is_the_first() {
        assertThat(state(on(day("2026-08-23"), WELL_FED), "age")).isEqualTo(State.NOT_MET);
        assertThat(state(on(day("2026-08-24"), WELL_FED), "age")).isEqualTo(State.MET);
    }

    @Test
    void one_that_was_fed_two_days_ago_waits_a_day() {
        var readiness = on(day("2026-08-27"), WELL_FED);

        assertThat(readiness.open())
                .extracting(Readiness.LeavingCondition::name)
                .containsExactly("last-meal");
        assertThat(readiness.established()).isTrue();
    }

    @Test
    void what_happens_later_counts_for_no_earlier_day() {
        assertThat(on(day("2026-08-10"), WELL_FED).conditions())
                .filteredOn(condition -> condition.name().equals("meals"))
                .allMatch(condition -> condition.reason().startsWith("It took its last 1 meal"));
    }

    @Test
    void a_birth_known_to_the_month_leaves_the_age_open_between_its_bounds() {
        var june = RoughDate.parse("2026-06");

        // born on the 1st it is 56 days old on 27 July, born on the 30th on 25 August
        assertThat(state(of(june, day("2026-07-26")), "age")).isEqualTo(State.NOT_MET);
        assertThat(state(of(june, day("2026-07-27")), "age")).isEqualTo(State.UNKNOWN);
        assertThat(state(of(june, day("2026-08-24")), "age")).isEqualTo(State.UNKNOWN);
        assertThat(state(of(june, day("2026-08-25")), "age")).isEqualTo(State.MET);
    }

    @Test
    void without_a_mass_at_birth_nobody_knows_whether_it_gained() {
        var neverWeighedYoung = on(DAY_60, Diary.of(mass("2026-08-27", "41.5")));
        var weighedOnce = on(DAY_60, Diary.of(mass("2026-06-30", "30")));

        assertThat(state(neverWeighedYoung, "mass")).isEqualTo(State.UNKNOWN);
        assertThat(state(weighedOnce, "mass")).isEqualTo(State.UNKNOWN);
        assertThat(reason(weighedOnce, "mass")).contains("weigh it again");
    }

    @Test
    void one_that_lost_mass_since_its_birth_stays() {
        var readiness = on(DAY_60, Diary.of(mass("2026-06-29", "30"), mass("2026-08-27", "29.9")));

        assertThat(state(readiness, "mass")).isEqualTo(State.NOT_MET);
        assertThat(reason(readiness, "mass")).contains("29.9 g").contains("30 g at birth");
    }

    @Test
    void an_open_health_note_holds_it_back_and_a_closed_one_does_not() {
        var open = on(DAY_60, WELL_FED.with(note("2026-08-20")));

        assertThat(state(open, "health")).isEqualTo(State.NOT_MET);
        assertThat(reason(open, "health")).contains("2026-08-20").contains("reptile veterinarian");
        assertThat(on(DAY_60, WELL_FED.with(closedNote("2026-07-20", "2026-08-01")))
                        .ready())
                .isTrue();
    }

    @Test
    void an_unsexed_young_and_photographs_that_the_asker_does_not_see_are_unknown() {
        var readiness = Readiness.of(new Young(BORN, Sex.UNKNOWN, null), WELL_FED, TaxonProfile.BOAS.rearing(), DAY_60);

        assertThat(readiness.ready()).isFalse();
        assertThat(readiness.established()).isTrue();
        assertThat(state(readiness, "sex")).isEqualTo(State.UNKNOWN);
        assertThat(state(readiness, "photograph")).isEqualTo(State.UNKNOWN);
        var without = Readiness.of(new Young(BORN, Sex.MALE, 0), WELL_FED, TaxonProfile.BOAS.rearing(), DAY_60);
        assertThat(state(without, "photograph")).isEqualTo(State.NOT_MET);
    }

    @Test
    void one_of_which_nothing_is_written_down_meets_nothing_but_age_and_health() {
        var readiness = on(DAY_60, Diary.of());

        assertThat(readiness.conditions())
                .filteredOn(condition -> condition.state() == State.MET)
                .extracting(Readiness.LeavingCondition::name)
                .containsExactly("age", "health", "sex", "photograph");
    }

    private static Readiness on(LocalDate today, Diary diary) {
        return Readiness.of(new Young(BORN, Sex.MALE, 1), diary, TaxonProfile.BOAS.rearing(), today);
    }

    private static Readiness of(RoughDate born, LocalDate today) {
        return Readiness.of(new Young(born, Sex.MALE, 1), Diary.of(), TaxonProfile.BOAS.rearing(), today);
    }

    private static State state(Readiness readiness, String name) {
        return condition(readiness, name).state();
    }

    private static String reason(Readiness readiness, String name) {
        return condition(readiness, name).reason();
    }

    private static Readiness.LeavingCondition condition(Readiness readiness, String name) {
        return readiness.conditions().stream()
                .filter(condition -> condition.name().equals(name))
                .findFirst()
                .orElseThrow();
    }
}
