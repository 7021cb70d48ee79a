package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.junit.jupiter.api.Test;

class PyramidTest {
    private static final Pyramid PYRAMID = Pyramid.of(
            Samples.caption("ages", "Age and sex"),
            List.of(
                    new Pyramid.AgeClass("0", 2, 5, 11),
                    new Pyramid.AgeClass("1", 7, 0, 3),
                    new Pyramid.AgeClass("2 +", 9, 4, 0)),
            Samples.NUMBERS,
            new Pyramid.Words("Years", "Males", "Females", "Unknown"));

    private static List<Rectangle2D> bars(Frame frame, String part) {
        return frame.shapes().stream()
                .filter(shape -> shape.css().equals("bar " + part))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .toList();
    }

    @Test
    void bars_are_as_long_as_their_counts_at_one_scale_the_oldest_on_top() {
        for (var frame : PYRAMID.frames()) {
            double unit = bars(frame, "males").get(0).getWidth() / 9;
            assertLengths(bars(frame, "males"), unit, 9, 7, 2);
            assertLengths(bars(frame, "females"), unit, 4, 5);
            assertLengths(bars(frame, "unknown"), unit, 3, 11);
            assertThat(bars(frame, "males").get(0).getMinY())
                    .isLessThan(bars(frame, "males").get(2).getMinY());
        }
    }

    private static void assertLengths(List<Rectangle2D> bars, double unit, int... counts) {
        assertThat(bars).hasSize(counts.length);
        for (int i = 0; i < counts.length; i++) {
            assertThat(bars.get(i).getWidth()).isEqualTo(unit * counts[i], within(.3));
        }
    }

    @Test
    void males_end_where_females_begin_and_the_unknown_are_apart_and_hatched() {
        for (var frame : PYRAMID.frames()) {
            assertThat(bars(frame, "males")).allSatisfy(bar -> assertThat(bar.getMaxX())
                    .isEqualTo(bars(frame, "females").get(0).getMinX(), within(.1)));
            assertThat(bars(frame, "unknown").get(0).getMinX())
                    .isGreaterThan(bars(frame, "females").get(1).getMaxX());
            var hatch = frame.shapes().stream()
                    .filter(shape -> shape.css().equals("hatch"))
                    .toList();
            assertThat(hatch).hasSize(1);
            assertThat(PathReader.bounds(hatch.get(0).d())).allSatisfy(line -> assertThat(bars(frame, "unknown"))
                    .anySatisfy(bar -> assertThat(grown(bar).contains(line)).isTrue()));
        }
    }

    private static Rectangle2D grown(Rectangle2D bar) {
        return new Rectangle2D.Double(bar.getX() - .1, bar.getY() - .1, bar.getWidth() + .2, bar.getHeight() + .2);
    }

    @Test
    void each_count_is_in_the_table_once_zeros_too() {
        assertThat(PYRAMID.table().rows()).extracting(row -> row.name().text()).containsExactly("2 +", "1", "0");
        assertThat(PYRAMID.table().rows().stream()
                        .flatMap(row -> row.cells().stream())
                        .map(Table.Cell::text))
                .containsExactly("9", "4", "0", "7", "0", "3", "2", "5", "11");
    }

    @Test
    void without_animals_of_unknown_sex_there_is_no_third_part() {
        var two = Pyramid.of(
                Samples.caption("ages", "Ages"),
                List.of(new Pyramid.AgeClass("0", 1, 1, 0)),
                Samples.NUMBERS,
                new Pyramid.Words("Years", "Males", "Females", "Unknown"));
        assertThat(two.frames().get(0).texts()).extracting(Frame.Text::text).doesNotContain("Unknown");
    }

    @Test
    void a_count_below_zero_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Pyramid.AgeClass("0", 1, -1, 0));
    }
}
