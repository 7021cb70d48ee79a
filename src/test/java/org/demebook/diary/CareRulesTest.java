package org.demebook.diary;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.registry.Breach;
import org.demebook.registry.Kin;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/**
 * The checks of what is written down, for a profile whose neonates weigh 30 g and are 400 mm long. Thresholds are common
 * practice, no source; 1 oz = 28.349523125 g and 1 in = 25.4 mm by definition.
 */
class CareRulesTest {
    private static final LocalDate TODAY = LocalDate.parse("2026-11-25");
    private static final Kin YOUNG = new Kin("M-103", Sex.MALE, RoughDate.parse("2026-06-29"), null);

    @Test
    void a_neonate_of_half_to_double_the_usual_mass_is_no_matter() {
        for (var grams : List.of("15", "30", "60")) {
            assertThat(check(mass("2026-06-29", grams, Mass.Unit.G))).isEmpty();
        }
        assertThat(check(mass("2026-06-29", "14.9", Mass.Unit.G))).hasSize(1);
        assertThat(check(mass("2026-06-29", "60.1", Mass.Unit.G))).hasSize(1);
    }

    @Test
    void a_mass_in_the_wrong_unit_is_told_with_the_likelier_one() {
        assertThat(text(mass("2026-06-29", "30", Mass.Unit.OZ)))
                .contains("850.486 g")
                .contains("g or oz?")
                .contains("30 g (30.0 g) is likelier");
        assertThat(text(mass("2026-06-30", "1.1", Mass.Unit.G)))
                .contains("g or oz?")
                .contains("1.1 oz (31.2 g) is likelier");
    }

    @Test
    void a_mass_that_fits_no_unit_is_told_without_a_guess() {
        assertThat(text(mass("2026-06-29", "300", Mass.Unit.G)))
                .contains("g or oz?")
                .doesNotContain("likelier");
    }

    @Test
    void a_later_mass_is_held_against_the_one_before() {
        var diary = Diary.of(mass("2026-08-01", "40", Mass.Unit.G));

        assertThat(text(mass("2026-08-15", "1.6", Mass.Unit.G), diary))
                .contains("weighed 40 g on 2026-08-01: g or oz?")
                .contains("1.6 oz (45.4 g) is likelier");
        assertThat(check(mass("2026-08-15", "60", Mass.Unit.G), YOUNG, diary)).isEmpty();
        assertThat(check(mass("2026-10-15", "90", Mass.Unit.G), YOUNG, diary))
                .as("after more than four weeks it may have doubled")
                .isEmpty();
    }

    @Test
    void a_loss_of_more_than_a_fifth_is_worth_a_second_look() {
        var diary = Diary.of(mass("2026-08-01", "50", Mass.Unit.G));

        assertThat(check(mass("2026-08-15", "40", Mass.Unit.G), YOUNG, diary)).isEmpty();
        assertThat(text(mass("2026-08-15", "39.9", Mass.Unit.G), diary))
                .contains("39.9 g, 20 % less than the 50 g of 2026-08-01")
                .contains("reptile veterinarian");
    }

    @Test
    void a_neonate_longer_than_70_cm_was_measured_in_another_unit() {
        assertThat(check(length("2026-06-29", "70", Length.Unit.CM))).isEmpty();
        assertThat(text(length("2026-06-29", "40", Length.Unit.IN)))
                .contains("1016 mm")
                .contains("in or cm?")
                .contains("40 cm (400 mm) is likelier");
        assertThat(text(length("2026-06-29", "400", Length.Unit.CM))).contains("400 mm (400 mm) is likelier");
        assertThat(check(length("2026-08-24", "71", Length.Unit.CM)))
                .as("at 56 days")
                .isEmpty();
    }

    @Test
    void what_happened_after_its_death_or_before_its_birth_is_told_with_both_dates() {
        var dead = new Kin("M-103", Sex.MALE, RoughDate.parse("2026-06-29"), RoughDate.parse("2026-07"));

        assertThat(text(check(meal("2026-08-01"), dead, shed()))).contains("died on 2026-07", "2026-08-01");
        assertThat(check(meal("2026-07-31"), dead, shed())).isEmpty();
        assertThat(text(check(new Shed(day("2026-06-28"), null), YOUNG, Diary.of())))
                .contains("born on 2026-06-29", "2026-06-28");
    }

    @Test
    void a_day_that_has_not_come_is_refused_and_a_plan_is_not() {
        assertThat(check(meal("2026-11-27"), YOUNG, shed()))
                .singleElement()
                .extracting(Breach::type)
                .isEqualTo(ProblemType.DATE_IN_FUTURE);
        assertThat(check(meal("2026-11-26"), YOUNG, shed()))
                .as("it may be tomorrow already where the keeper lives")
                .isEmpty();
        assertThat(check(new Quarantine(TODAY, day("2027-02-23"), null), YOUNG, shed()))
                .isEmpty();
        assertThat(check(
                        new HealthTest(
                                day("2026-11-27"), "a virus", null, null, HealthTest.Result.NEGATIVE, null, null),
                        YOUNG,
                        shed()))
                .extracting(breach -> breach.finding().field())
                .containsExactly("sampledOn");
    }

    @Test
    void a_meal_before_the_first_shed_is_told_while_it_is_young() {
        var early = check(meal("2026-07-10"), YOUNG, Diary.of());
        assertThat(text(early)).contains("11 days").contains("no shed of it is written down");
        assertThat(early).extracting(breach -> breach.finding().level()).containsExactly(Finding.Level.NOTICE);
        assertThat(check(meal("2026-07-10"), YOUNG, shed())).isEmpty();
        assertThat(check(meal("2026-07-21"), YOUNG, Diary.of()))
                .as("after 21 days nobody waits for a shed that was not written down")
                .isEmpty();
    }

    @Test
    void records_of_later_days_say_nothing_about_an_earlier_one() {
        var later = Diary.of(mass("2026-08-20", "80", Mass.Unit.G), new Shed(day("2026-07-12"), true));

        assertThat(check(mass("2026-08-15", "40", Mass.Unit.G), YOUNG, later)).isEmpty();
        assertThat(check(meal("2026-07-10"), YOUNG, later)).hasSize(1);
    }

    private static LocalDate day(String day) {
        return LocalDate.parse(day);
    }

    private static Diary shed() {
        return Diary.of(new Shed(day("2026-07-08"), true));
    }

    private static Meal meal(String on) {
        return new Meal(day(on), Meal.Outcome.TAKEN, null, null);
    }

    private static Measures mass(String on, String value, Mass.Unit unit) {
        return new Measures(day(on), Mass.of(new BigDecimal(value), unit), null, null);
    }

    private static Measures length(String on, String value, Length.Unit unit) {
        return new Measures(day(on), null, Length.of(new BigDecimal(value), unit), Length.Kind.SNOUT_VENT);
    }

    private static List<Breach> check(CareRecord record) {
        return check(record, YOUNG, Diary.of());
    }

    private static List<Breach> check(CareRecord record, Kin animal, Diary diary) {
        return CareRules.check(record, animal, diary, TaxonProfile.BOAS, TODAY);
    }

    private static String text(CareRecord record) {
        return text(check(record));
    }

    private static String text(CareRecord record, Diary diary) {
        return text(check(record, YOUNG, diary));
    }

    private static String text(List<Breach> breaches) {
        assertThat(breaches).hasSize(1).noneMatch(Breach::isError);
        Finding finding = breaches.get(0).finding();
        return finding.likelier() == null ? finding.message() : finding.message() + " " + finding.likelier();
    }
}
