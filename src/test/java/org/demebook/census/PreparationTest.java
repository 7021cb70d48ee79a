package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.demebook.census.Herd.cell;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.census.Preparation.Earlier;
import org.demebook.problem.Refusal;
import org.junit.jupiter.api.Test;

class PreparationTest {
    @Test
    void classes_stay_apart_where_most_counts_have_enough_keepers() {
        var cells = settled().cells();
        assertThat(cells).extracting(Cell::age).contains("young", "juvenile").doesNotContain("immature");
        assertThat(cells).hasSize(20 + 3);
    }

    @Test
    void young_and_juvenile_are_put_together_where_each_has_too_few() {
        var cells = new Herd()
                .put("female", "adult", "2010s", 2, 1, 2, 3)
                .put("male", "adult", "2010s", 2, 1, 2, 3)
                .put("female", "young", "2020s", 1, 1, 2)
                .put("female", "juvenile", "2020s", 1, 3)
                .put("male", "young", "2020s", 1, 1)
                .put("male", "juvenile", "2020s", 1, 2, 3)
                .cells();
        assertThat(cells).extracting(Cell::age).contains("immature").doesNotContain("young", "juvenile");
        assertThat(cell(cells, "female", "immature", "all").count()).isEqualTo(3);
        assertThat(cell(cells, "all", "all", "all").count()).isEqualTo(18);
    }

    @Test
    void the_oldest_decades_are_put_together_where_they_have_too_few() {
        var cells = new Herd()
                .put("female", "adult", "1980s", 1, 1)
                .put("female", "adult", "1990s", 1, 2)
                .put("female", "adult", "2000s", 1, 3)
                .put("female", "adult", "2010s", 2, 1, 2, 3)
                .put("male", "adult", "2010s", 2, 1, 2, 3)
                .put("male", "young", "2020s", 2, 1, 2, 3)
                .put("female", "young", "2020s", 2, 1, 2, 3)
                .cells();
        assertThat(cells).extracting(Cell::born).contains("before 2010", "2010s", "2020s");
        assertThat(cells).extracting(Cell::born).doesNotContain("1980s", "1990s", "2000s");
        assertThat(cell(cells, "all", "all", "before 2010").count()).isEqualTo(3);
    }

    @Test
    void animals_on_loan_count_for_the_fewer_of_holders_and_owners() {
        var herd = settled();
        for (int holder = 1; holder <= 3; holder++) {
            herd.loan("unknown", "young", "2020s", holder, 1);
        }
        assertThat(cell(herd.cells(), "unknown", "young", "all").count()).isNull();
    }

    // E5: South counts two respondents when two of its three keepers are one household
    @Test
    void keepers_of_one_household_are_one() {
        assertThat(cell(settled().cells(), "female", "adult", "all").count()).isEqualTo(6);
        assertThatThrownBy(() -> settled().share(1, 2).cells())
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("fewer than 3 keepers");
    }

    @Test
    void of_a_household_all_have_to_waive_protection() {
        var herd = settled()
                .put("unknown", "adult", "2010s", 2, 4, 5)
                .put("unknown", "young", "2020s", 2, 4, 5)
                .share(4, 5);
        assertThat(cell(herd.cells(), "unknown", "adult", "all").count()).isNull();
        assertThat(cell(herd.waive(4).cells(), "unknown", "adult", "all").count())
                .isNull();
        assertThat(cell(herd.waive(5).cells(), "unknown", "adult", "all").count())
                .isEqualTo(4);
    }

    @Test
    void what_was_told_before_is_looked_at_even_under_other_classes() {
        var before = settled();
        var cells = List.of(new Cell("all", "immature", null, null, 9 + 3, null, null, null));
        var earlier = new Earlier(view(cells), List.copyOf(before.animals));

        before.put("male", "juvenile", "2020s", 5, 2);
        var now = before.cells(earlier);
        int withheld = 0;
        for (var age : List.of("young", "juvenile")) {
            withheld += cell(now, "all", age, "all").count() == null ? 1 : 0;
        }
        assertThat(withheld).isPositive();
        assertThat(cell(now, "female", "adult", "all").count()).isEqualTo(6);
    }

    // so few that only the total can be told; then one keeper has a litter
    @Test
    void two_releases_whose_difference_is_one_keepers_litter_are_not_both_made() {
        var herd = new Herd()
                .put("female", "adult", "2010s", 2, 1, 2)
                .put("male", "adult", "2010s", 2, 3)
                .put("unknown", "young", "2020s", 2, 4);
        var first = herd.cells();
        assertThat(first).singleElement().extracting(Cell::count).isEqualTo(8);
        var earlier = new Earlier(view(first), List.copyOf(herd.animals));

        herd.put("unknown", "young", "2020s", 11, 4);
        assertThatThrownBy(() -> herd.cells(earlier))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("2025-06-01");
    }

    @Test
    void a_figure_that_comes_out_differently_today_is_left_out_of_account() {
        var herd = settled();
        var cells = List.of(new Cell("all", "all", null, null, 1, null, null, null));
        assertThat(cell(herd.cells(new Earlier(view(cells), List.copyOf(herd.animals))), "all", "all", "all")
                        .count())
                .isEqualTo(herd.animals.size());
    }

    @Test
    void a_refusal_names_the_day_and_the_releases_that_are_known() {
        var herd = new Herd().put("female", "adult", "2010s", 2, 1, 2);
        assertThatThrownBy(() -> herd.cells(new Earlier(view(List.of()), List.of())))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("2026-06-01")
                .hasMessageContaining("2025-06-01");
    }

    /** Three keepers with some of everything. */
    private static Herd settled() {
        return new Herd()
                .put("female", "adult", "2010s", 2, 1, 2, 3)
                .put("male", "adult", "2010s", 2, 1, 2, 3)
                .put("female", "young", "2020s", 1, 1, 2, 3)
                .put("male", "young", "2020s", 1, 1, 2, 3)
                .put("male", "juvenile", "2020s", 1, 1, 2, 3)
                .put("female", "juvenile", "2020s", 1, 1, 2, 3);
    }

    private static CountReleaseView view(List<Cell> cells) {
        return new CountReleaseView(
                "MC",
                null,
                null,
                LocalDate.of(2025, 6, 1),
                Instant.parse("2025-06-01T08:00:00Z"),
                "3 to 5",
                cells,
                null,
                null,
                "");
    }
}
