package org.demebook.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.demebook.rearing.Entries.assisted;
import static org.demebook.rearing.Entries.day;
import static org.demebook.rearing.Entries.mass;
import static org.demebook.rearing.Entries.taken;

import java.util.ArrayList;
import java.util.List;
import org.demebook.diary.Diary;
import org.demebook.notation.RoughDate;
import org.junit.jupiter.api.Test;

/** Slopes are held against scipy.stats.theilslopes of SciPy 1.17.1, quantiles against numpy.quantile of NumPy 2.4.6. */
class GrowthTest {
    private static final RoughDate BORN = RoughDate.parse("2026-06-29");

    @Test
    void the_slope_is_the_median_of_all_slopes_so_that_one_mistyped_mass_does_not_bend_it() {
        var diary = Diary.of(
                mass("2026-06-29", "30"),
                mass("2026-07-06", "31.5"),
                mass("2026-07-13", "90.2"),
                mass("2026-07-20", "36"),
                mass("2026-07-27", "38.4"),
                mass("2026-08-03", "41.1"));

        assertThat(Growth.gramsPerWeek(diary.weighings()).orElseThrow()).isCloseTo(2.25, within(1e-12));
    }

    @Test
    void masses_need_not_be_taken_every_week() {
        var diary = Diary.of(
                mass("2026-06-29", "30"),
                mass("2026-07-08", "33"),
                mass("2026-07-16", "37.5"),
                mass("2026-07-29", "44"));

        assertThat(Growth.gramsPerWeek(diary.weighings()).orElseThrow()).isCloseTo(3.3833333333333333, within(1e-12));
    }

    @Test
    void two_masses_of_one_day_make_no_slope() {
        assertThat(Growth.gramsPerWeek(Diary.of(mass("2026-07-01", "30"), mass("2026-07-01", "31"))
                        .weighings()))
                .isEmpty();
    }

    @Test
    void quantiles_lie_on_the_line_between_neighbours() {
        var seven = new double[] {28.0, 30.5, 31.0, 33.2, 35.9, 36.1, 40.0};
        var four = new double[] {28.0, 30.5, 31.0, 33.2};

        assertThat(Growth.quantile(seven, 0.1)).isCloseTo(29.5, within(1e-12));
        assertThat(Growth.quantile(seven, 0.5)).isCloseTo(33.2, within(1e-12));
        assertThat(Growth.quantile(seven, 0.9)).isCloseTo(37.66, within(1e-12));
        assertThat(Growth.quantile(four, 0.1)).isCloseTo(28.75, within(1e-12));
        assertThat(Growth.quantile(four, 0.5)).isCloseTo(30.75, within(1e-12));
        assertThat(Growth.quantile(new double[] {7}, 0.9)).isEqualTo(7);
    }

    @Test
    void each_mass_stands_beside_the_siblings_at_the_same_age() {
        var siblings = List.of(
                Diary.of(mass("2026-06-29", "28"), mass("2026-07-13", "32")),
                Diary.of(mass("2026-06-29", "31"), mass("2026-07-13", "35")),
                Diary.of(mass("2026-06-29", "34"), mass("2026-07-13", "38")),
                Diary.of(taken("2026-07-13")));
        var growth = Growth.of(
                "M-103", BORN, Diary.of(mass("2026-06-29", "30"), mass("2026-07-06", "35")), siblings, List.of());

        assertThat(growth.siblings()).isEqualTo(3);
        assertThat(growth.points()).extracting(Growth.GrowthPoint::ageDays).containsExactly(0, 7);
        // half way between their masses: 30, 33, 36
        var band = growth.points().get(1).siblings();
        assertThat(band.count()).isEqualTo(3);
        assertThat(band.medianGrams()).isEqualByComparingTo("33.0");
        assertThat(band.lowGrams()).isEqualByComparingTo("30.6");
        assertThat(band.highGrams()).isEqualByComparingTo("35.4");
        assertThat(growth.lighterSiblings())
                .as("two of three are lighter than 35 g")
                .isEqualByComparingTo("0.67");
        assertThat(growth.gramsPerWeek()).isEqualByComparingTo("5.00");
    }

    @Test
    void a_sibling_is_not_reckoned_beyond_the_days_on_which_it_was_weighed() {
        var siblings = List.of(Diary.of(mass("2026-06-29", "28"), mass("2026-07-05", "30")));
        var growth = Growth.of("M-103", BORN, Diary.of(mass("2026-07-06", "35")), siblings, List.of());

        assertThat(growth.points().get(0).siblings()).isNull();
        assertThat(growth.lighterSiblings()).isNull();
    }

    @Test
    void an_animal_whose_birth_is_a_month_is_shown_without_ages() {
        var growth = Growth.of(
                "M-103",
                RoughDate.parse("2026-06"),
                Diary.of(mass("2026-07-06", "35")),
                List.of(Diary.of(mass("2026-07-06", "30"))),
                List.of());

        assertThat(growth.points().get(0).ageDays()).isNull();
        assertThat(growth.points().get(0).siblings()).isNull();
    }

    @Test
    void the_lightest_of_its_litter_is_behind() {
        // common practice, no source: below the tenth percentile of its littermates
        var siblings = siblings("34", "35", "36", "37", "38");

        assertThat(Siblings.behind(Diary.of(mass("2026-07-20", "34.3")), siblings, day("2026-08-01")))
                .singleElement()
                .asString()
                .contains("34.3 g on 2026-07-20")
                .contains("more than 34.4 g, half more than 36.0 g");
        assertThat(Siblings.behind(Diary.of(mass("2026-07-20", "34.4")), siblings, day("2026-08-01")))
                .isEmpty();
    }

    @Test
    void of_four_siblings_nobody_is_called_the_lightest_tenth() {
        assertThat(Siblings.behind(
                        Diary.of(mass("2026-07-20", "20")), siblings("34", "35", "36", "37"), day("2026-08-01")))
                .isEmpty();
    }

    @Test
    void three_meals_behind_half_of_its_siblings_is_behind_and_help_is_no_meal() {
        // common practice, no source
        var siblings = List.of(meals(4), meals(3), meals(5), Diary.of());

        assertThat(Siblings.behind(Diary.of(taken("2026-07-14"), assisted("2026-07-21")), siblings, day("2026-08-20")))
                .singleElement()
                .asString()
                .isEqualTo("It took 1 of its meals without help; half of its siblings that were fed took 4 or more.");
        assertThat(Siblings.behind(Diary.of(taken("2026-07-14"), taken("2026-07-21")), siblings, day("2026-08-20")))
                .isEmpty();
    }

    private static List<Diary> siblings(String... grams) {
        var siblings = new ArrayList<Diary>();
        for (var mass : grams) {
            siblings.add(Diary.of(mass("2026-07-20", mass)));
        }
        return siblings;
    }

    private static Diary meals(int count) {
        var diary = Diary.of();
        for (int i = 0; i < count; i++) {
            diary = diary.with(taken(day("2026-07-14").plusDays(7L * i).toString()));
        }
        return diary;
    }
}
