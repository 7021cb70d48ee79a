package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.demebook.plot.Series.Point;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static Trend trend(Trend.Now now, Point... points) {
        return Trend.of(
                Samples.caption("trend", "Living animals"),
                Samples.YEARS,
                Samples.COUNT,
                List.of(new Series("All", List.of(points))),
                now,
                Samples.TREND_WORDS);
    }

    private static List<Rectangle2D> drawn(Frame frame, String css) {
        return frame.shapes().stream()
                .filter(shape -> shape.css().equals(css))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .toList();
    }

    /** What a reader would do with a ruler: between the labels of the ticks. */
    @Test
    void values_lie_where_their_axis_says() {
        var frame = trend(null, Point.of(2000, 0), Point.of(2001, 25), Point.of(2010, 100))
                .frames()
                .get(0);
        double zero = y(frame, "0");
        double hundred = y(frame, "100");
        var marks = drawn(frame, "mark c1");
        for (int i = 0; i < 3; i++) {
            double value = new double[] {0, 25, 100}[i];
            assertThat(marks.get(i).getCenterY()).isEqualTo(zero + (hundred - zero) * value / 100, within(.2));
        }
        assertThat((marks.get(1).getCenterX() - marks.get(0).getCenterX()) * 10)
                .isEqualTo(marks.get(2).getCenterX() - marks.get(0).getCenterX(), within(2.));
    }

    private static double y(Frame frame, String label) {
        return frame.texts().stream()
                        .filter(text -> text.text().equals(label) && text.css().equals("end"))
                        .findAny()
                        .orElseThrow()
                        .y()
                - 4.5;
    }

    @Test
    void a_missing_value_is_a_gap_and_a_value_between_gaps_is_seen() {
        var frame = trend(
                        null,
                        Point.of(1, 4),
                        Point.of(2, 5),
                        Point.missing(3),
                        Point.of(4, 6),
                        Point.missing(5),
                        Point.of(6, 7),
                        Point.of(7, 8))
                .frames()
                .get(0);
        assertThat(drawn(frame, "line c1")).hasSize(2);
        assertThat(drawn(frame, "mark c1")).hasSize(5);
        assertThat(frame.shapes()).extracting(Frame.Shape::css).doesNotContain("line projected c1", "mark hollow c1");
    }

    @Test
    void what_comes_after_now_is_dashed_and_hollow() {
        var frame = trend(
                        new Trend.Now(3, "today"),
                        Point.of(1, 4),
                        Point.of(2, 5),
                        Point.of(3, 6),
                        Point.of(4, 7),
                        Point.of(5, 8))
                .frames()
                .get(1);
        assertThat(drawn(frame, "line c1")).hasSize(2);
        assertThat(drawn(frame, "line projected c1")).hasSize(2);
        assertThat(drawn(frame, "mark hollow c1")).hasSize(2);
        var now = drawn(frame, "now").get(0);
        assertThat(now.getCenterX()).isEqualTo(drawn(frame, "mark c1").get(2).getCenterX(), within(.2));
        assertThat(frame.texts()).extracting(Frame.Text::text).contains("today");
    }

    @Test
    void the_interval_encloses_the_line() {
        for (var frame : Samples.diversity().frames()) {
            var band = drawn(frame, "band c1").get(0);
            var projected = drawn(frame, "line projected c1").stream()
                    .reduce((a, b) -> a.createUnion(b))
                    .orElseThrow();
            assertThat(band.getMaxX()).isEqualTo(projected.getMaxX(), within(.2));
            assertThat(band.getMinY()).isLessThan(projected.getMinY());
            assertThat(band.getMaxY()).isGreaterThan(projected.getMaxY());
        }
    }

    @Test
    void each_value_is_in_the_table_once() {
        var table = trend(new Trend.Now(2, "today"), Point.of(1, 11), Point.missing(2), new Point(3, 33, 31, 35))
                .table();
        assertThat(table.heads())
                .extracting(Table.Cell::text)
                .containsExactly("Year", "All", "nine of ten simulations");
        assertThat(table.rows()).extracting(row -> row.name().text()).containsExactly("1", "2", "3 · projected");
        assertThat(table.rows().stream().flatMap(row -> row.cells().stream()).map(Table.Cell::text))
                .containsExactly("11", "not known", "not known", "not known", "33", "31 – 35");
    }

    @Test
    void series_of_different_places_share_the_rows_of_a_table() {
        var series = List.of(
                new Series("Females", List.of(Point.of(1, 10), Point.of(3, 30))),
                new Series("Males", List.of(Point.of(2, 20), Point.of(3, 31))));
        var table = Trend.of(Samples.caption("t", "t"), Samples.YEARS, Samples.COUNT, series, null, Samples.TREND_WORDS)
                .table();
        assertThat(table.rows())
                .extracting(row -> row.cells().stream().map(Table.Cell::text).toList())
                .containsExactly(List.of("10", "not known"), List.of("not known", "20"), List.of("30", "31"));
    }

    @Test
    void lines_differ_in_more_than_their_colour() {
        var samples = Samples.living().keys().stream()
                .limit(4)
                .map(key -> key.sample().get(1).d())
                .distinct();
        assertThat(samples).hasSize(4);
    }

    @Test
    void labels_below_the_axis_do_not_touch() {
        for (var frame : Samples.living().frames()) {
            var labels = frame.texts().stream()
                    .filter(text -> text.css().equals("mid"))
                    .toList();
            assertThat(labels).hasSizeGreaterThan(2);
            for (int i = 1; i < labels.size(); i++) {
                double half = (Letters.width(labels.get(i).text())
                                + Letters.width(labels.get(i - 1).text()))
                        / 2;
                assertThat(labels.get(i).x() - labels.get(i - 1).x()).isGreaterThan(half);
            }
        }
    }

    @Test
    void days_of_the_calendar_stand_below_the_axis_and_in_the_table() {
        var points = IntStream.range(0, 300)
                .mapToObj(
                        day -> Point.of(LocalDate.of(2026, 1, 15).plusDays(day).toEpochDay(), day))
                .toList();
        var trend = Trend.of(
                Samples.caption("t", "t"),
                new Along.Days("Day", Samples.DATES),
                Samples.COUNT,
                List.of(new Series("Meals", points)),
                null,
                Samples.TREND_WORDS);
        assertThat(trend.frames().get(0).texts()).extracting(Frame.Text::text).contains("May 2026", "Sep 2026");
        assertThat(trend.table().rows().get(0).name().text()).isEqualTo("Jan 15, 2026");
        assertThat(trend.table().rows()).hasSize(300);
    }

    @Test
    void what_cannot_be_read_is_refused() {
        assertThatIllegalArgumentException().isThrownBy(() -> trend(null, Point.of(2, 1), Point.of(2, 3)));
        assertThatIllegalArgumentException().isThrownBy(() -> Point.of(2, Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException().isThrownBy(() -> new Point(1, 2, 3, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> new Point(1, 2, 3, 1));
        var five = Collections.nCopies(5, new Series("All", List.of()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Trend.of(
                        Samples.caption("t", "t"), Samples.YEARS, Samples.COUNT, five, null, Samples.TREND_WORDS));
    }
}
