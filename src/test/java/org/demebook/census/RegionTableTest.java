package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.census.Herd.cell;
import static org.demebook.census.Herd.region;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.census.Preparation.Earlier;
import org.junit.jupiter.api.Test;

/** The table of regions beside the others; bounds are worked out by hand from the one equation that regions and total make. */
class RegionTableTest {
    private static final String[] REGIONS = {"North", "Middle", "South"};

    @Test
    void regions_are_told_in_the_order_of_the_association_and_add_up_to_everything() {
        var cells = threeInEach().cells();
        assertThat(regions(cells)).extracting(Cell::region).containsExactly("North", "Middle", "South", "not stated");
        assertThat(regions(cells)).extracting(Cell::count).containsExactly(12, 12, 12, 0);
        assertThat(cell(cells, "all", "all", "all").count()).isEqualTo(36);
    }

    @Test
    void there_is_no_table_without_regions_without_statements_and_where_most_have_too_few() {
        assertThat(regions(threeInEach().fix().cells())).isEmpty();
        assertThat(regions(animals(new Herd().fix(REGIONS), 1, 2, 3).cells())).isEmpty();
        assertThat(regions(animals(
                                new Herd()
                                        .fix(REGIONS)
                                        .in("North", 1, 2, 3)
                                        .in("Middle", 4)
                                        .in("South", 5),
                                1,
                                2,
                                3,
                                4,
                                5)
                        .cells()))
                .isEmpty();
    }

    // North 12, Middle 8 of two, South 12, together 32: of Middle and of the one beside it is known that they add up to
    // 20
    @Test
    void a_region_of_two_keepers_is_withheld_and_so_is_one_from_which_it_would_follow() {
        var herd =
                new Herd().fix(REGIONS).in("North", 1, 2, 3).in("Middle", 4, 5).in("South", 6, 7, 8);
        var cells = animals(herd, 1, 2, 3, 4, 5, 6, 7, 8).cells();
        assertThat(cell(cells, "all", "all", "all").count()).isEqualTo(32);
        assertThat(regions(cells).stream().filter(cell -> cell.count() == null))
                .hasSize(2)
                .contains(region(cells, "Middle"))
                .allSatisfy(withheld -> {
                    assertThat(withheld.lowest()).isZero();
                    assertThat(withheld.highest()).isEqualTo(20);
                    assertThat(withheld.informationWithheld()).isEqualTo(Preparation.WITHHELD);
                });
    }

    @Test
    void whoever_does_not_let_their_place_be_counted_is_counted_as_not_stated() {
        var herd = threeInEach();
        animals(herd.in(null, 10, 11, 12), 10, 11, 12);
        var cells = herd.cells();
        assertThat(region(cells, "not stated").count()).isEqualTo(12);
        assertThat(cell(cells, "all", "all", "all").count()).isEqualTo(48);
    }

    // E4: Middle had 28 in all last year; 39 this year would tell the litter of 11
    @Test
    void a_litter_of_one_keeper_is_not_the_difference_of_a_region() {
        var herd = twentyEightInTheMiddle();
        var first = herd.cells();
        assertThat(region(first, "Middle").count()).isEqualTo(28);
        var earlier = new Earlier(view(first), List.copyOf(herd.animals));

        var second = herd.put("unknown", "young", "2020s", 11, 4).cells(earlier);
        var middle = region(second, "Middle");
        assertThat(middle.count()).isNull();
        assertThat(middle.lowest()).isLessThan(39);
        assertThat(middle.highest() == null || middle.highest() > 39).isTrue();
        // nor is it what is left when the others are taken off the total
        assertThat(Stream.of("North", "South")
                        .map(other -> region(second, other).count()))
                .containsExactly(12, 12);
        assertThat(cell(second, "all", "all", "all").count()).isNull();
    }

    @Test
    void after_releases_that_told_no_regions_that_they_are_stated_now_is_no_change() {
        var herd = threeInEach();
        var before = herd.animals.stream().map(animal -> animal.in(null)).toList();
        var noRegions = view(animals(new Herd(), 1, 2, 3, 4, 5, 6, 7, 8, 9).cells());
        assertThat(noRegions.cells()).extracting(Cell::region).containsOnly("all");

        var cells = herd.cells(new Earlier(noRegions, before));
        assertThat(regions(cells)).extracting(Cell::count).containsExactly(12, 12, 12, 0);
        assertThat(cells).extracting(Cell::informationWithheld).containsOnlyNulls();
    }

    @Test
    void after_a_release_that_told_the_total_alone_a_litter_is_not_what_the_regions_add_up_to() {
        var herd = threeInEach();
        var before = herd.animals.stream().map(animal -> animal.in(null)).toList();
        var total = view(List.of(new Cell("all", "all", null, null, 36, null, null, null)));

        var cells = herd.put("unknown", "young", "2020s", 5, 4).cells(new Earlier(total, before));
        assertThat(cell(cells, "all", "all", "all").count()).isNull();
        assertThat(regions(cells)).extracting(Cell::count).containsNull();
    }

    @Test
    void a_keeper_who_moves_alone_is_not_the_difference_of_two_regions() {
        var herd = animals(threeInEach().in(null, 10, 11, 12, 13), 10, 11, 12, 13);
        var first = herd.cells();
        assertThat(region(first, "South").count()).isEqualTo(12);
        var earlier = new Earlier(view(first), List.copyOf(herd.animals));

        herd.animals.replaceAll(animal -> animal.holder().equals(Herd.id(13)) ? animal.in("South") : animal);
        var second = herd.cells(earlier);
        assertThat(region(second, "South").count()).isNull();
        assertThat(region(second, "not stated").count()).isNull();
        assertThat(cell(second, "all", "all", "all").count()).isEqualTo(52);
    }

    // ── helpers ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private static Herd threeInEach() {
        var herd = new Herd()
                .fix(REGIONS)
                .in("North", 1, 2, 3)
                .in("Middle", 4, 5, 6)
                .in("South", 7, 8, 9);
        return animals(herd, 1, 2, 3, 4, 5, 6, 7, 8, 9);
    }

    /** Keeper 4 has 10, 5 and 6 have 9. */
    private static Herd twentyEightInTheMiddle() {
        return threeInEach()
                .put("female", "adult", "2010s", 2, 4, 5, 6)
                .put("male", "adult", "2010s", 3, 4, 5, 6)
                .put("male", "adult", "2010s", 1, 4);
    }

    /** Four of each keeper: a pair, and a young of each sex. */
    private static Herd animals(Herd herd, int... keepers) {
        return herd.put("female", "adult", "2010s", 1, keepers)
                .put("male", "adult", "2010s", 1, keepers)
                .put("female", "young", "2020s", 1, keepers)
                .put("male", "young", "2020s", 1, keepers);
    }

    private static List<Cell> regions(List<Cell> cells) {
        return cells.stream().filter(cell -> Heading.of(cell).isRegion()).toList();
    }

    private static CountReleaseView view(List<Cell> cells) {
        return new CountReleaseView(
                "MC",
                null,
                null,
                LocalDate.of(2025, 6, 1),
                Instant.parse("2025-06-01T08:00:00Z"),
                "6 to 10",
                cells,
                null,
                null,
                "");
    }
}
