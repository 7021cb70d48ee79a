package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class GrowthTest {
    private static final Growth.Words WORDS = new Growth.Words("MC-H-27-K", "Littermates", "not weighed");

    private static Growth growth(List<Growth.Weighing> weighings, List<Growth.Range> littermates) {
        return Growth.of(
                Samples.caption("growth", "Mass"),
                new Along.Whole("Age in days", Samples.NUMBERS),
                new Measure("Mass in g", Samples.NUMBERS, 1, true),
                weighings,
                littermates,
                WORDS);
    }

    @Test
    void weighings_and_littermates_of_other_days_stand_in_one_table() {
        var table = growth(
                        List.of(new Growth.Weighing(0, 7.4), new Growth.Weighing(16, 9.1)),
                        List.of(new Growth.Range(0, 6.8, 8.2), new Growth.Range(14, 8.0, 10.5)))
                .table();
        assertThat(table.heads())
                .extracting(Table.Cell::text)
                .containsExactly("Age in days", "MC-H-27-K", "Littermates");
        assertThat(table.rows()).extracting(row -> row.name().text()).containsExactly("0", "14", "16");
        assertThat(table.rows().stream().flatMap(row -> row.cells().stream()).map(Table.Cell::text))
                .containsExactly("7.4", "6.8 – 8.2", "not weighed", "8.0 – 10.5", "9.1", "not weighed");
    }

    @Test
    void an_animal_without_littermates_is_a_line_alone() {
        var growth = growth(List.of(new Growth.Weighing(0, 7.4), new Growth.Weighing(16, 9.1)), List.of());
        assertThat(growth.keys()).extracting(Key::text).containsExactly("MC-H-27-K");
        assertThat(growth.frames().get(0).shapes()).extracting(Frame.Shape::css).doesNotContain("band c2");
    }

    @Test
    void days_on_which_only_littermates_were_weighed_leave_no_gap() {
        var frame = growth(
                        List.of(new Growth.Weighing(0, 7.4), new Growth.Weighing(28, 9.1)),
                        List.of(
                                new Growth.Range(0, 6.8, 8.2),
                                new Growth.Range(14, 8.0, 10.5),
                                new Growth.Range(28, 8, 12)))
                .frames()
                .get(0);
        assertThat(frame.shapes()).extracting(Frame.Shape::css).contains("line c1", "band c2");
    }

    @Test
    void an_animal_never_weighed_has_no_plot_though_its_littermates_were() {
        assertThat(growth(List.of(), List.of(new Growth.Range(0, 6.8, 8.2))).empty())
                .isTrue();
    }
}
