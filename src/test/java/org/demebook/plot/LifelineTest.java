package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.demebook.plot.Lifeline.Event;
import org.demebook.plot.Lifeline.Lane;
import org.junit.jupiter.api.Test;

class LifelineTest {
    private static Event on(String day, String what) {
        return new Event(LocalDate.parse(day), null, Name.of(what));
    }

    private static Lifeline lifeline(String until, Lane... lanes) {
        return Lifeline.of(
                Samples.caption("life", "Life line"),
                List.of(lanes),
                LocalDate.parse(until),
                Samples.DATES,
                count -> count + " ×");
    }

    @Test
    void every_event_is_in_the_list_once_in_the_order_of_days() {
        var life = lifeline(
                "2027-01-01",
                new Lane(
                        "Sheds", Mark.CIRCLE, false, List.of(on("2026-09-02", "Shed"), on("2026-07-10", "First shed"))),
                new Lane("Birth", Mark.DIAMOND, false, List.of(on("2026-06-29", "Born"))));
        assertThat(life.entries())
                .extracting(Lifeline.Entry::machine)
                .containsExactly("2026-06-29", "2026-07-10", "2026-09-02");
        assertThat(life.entries())
                .extracting(entry -> entry.lane() + ": " + entry.what().text())
                .containsExactly("Birth: Born", "Sheds: First shed", "Sheds: Shed");
    }

    @Test
    void meals_of_a_long_life_are_counted_by_month_in_the_list_and_in_the_picture() {
        var meals = new ArrayList<Event>();
        for (var day = LocalDate.parse("2024-01-01"); day.getYear() < 2026; day = day.plusDays(7)) {
            meals.add(new Event(day, null, Name.of("1 pink mouse")));
        }
        var life = lifeline("2026-01-01", new Lane("Meals", Mark.STROKE, true, meals));
        assertThat(life.entries()).hasSize(24);
        assertThat(life.entries().get(0)).isEqualTo(new Lifeline.Entry("Jan 2024", "2024-01", "Meals", Name.of("5 ×")));
        assertThat(life.entries().stream()
                        .mapToInt(entry -> Integer.parseInt(entry.what().text().split(" ")[0]))
                        .sum())
                .isEqualTo(meals.size());
        for (var frame : life.frames()) {
            var bars = frame.shapes().stream()
                    .filter(shape -> shape.css().startsWith("bar"))
                    .toList();
            assertThat(bars).hasSize(1);
            var bounds = PathReader.bounds(bars.get(0).d());
            assertThat(bounds).hasSize(24);
            assertThat(bounds.get(1).getHeight() / bounds.get(0).getHeight()).isEqualTo(4 / 5., within(.02));
        }
    }

    @Test
    void a_short_life_is_counted_by_week_and_a_very_long_one_by_year() {
        var meals = List.of(on("2026-06-30", "a meal"), on("2026-07-04", "a meal"), on("2026-07-06", "a meal"));
        assertThat(lifeline("2026-08-01", new Lane("Meals", Mark.STROKE, true, meals))
                        .entries())
                .extracting(Lifeline.Entry::machine, entry -> entry.what().text())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple("2026-06-29", "2 ×"),
                        org.assertj.core.groups.Tuple.tuple("2026-07-06", "1 ×"));
        assertThat(lifeline("2046-08-01", new Lane("Meals", Mark.STROKE, true, meals))
                        .entries())
                .extracting(Lifeline.Entry::when, entry -> entry.what().text())
                .containsExactly(org.assertj.core.groups.Tuple.tuple("2026", "3 ×"));
    }

    @Test
    void what_lasted_is_drawn_from_its_first_day_to_its_last() {
        var stay = new Event(LocalDate.parse("2026-01-01"), LocalDate.parse("2026-07-02"), Name.of("At Wren's"));
        var life = lifeline(
                "2026-12-31", new Lane("Moves", Mark.SQUARE, false, List.of(stay, on("2026-12-31", "At Ines's"))));
        var frame = life.frames().get(0);
        var span = bounds(frame, "span c1").get(0);
        var marks = bounds(frame, "mark c1");
        assertThat(span.getMinX()).isEqualTo(marks.get(0).getCenterX(), within(.2));
        assertThat(span.getWidth())
                .isEqualTo((marks.get(1).getCenterX() - marks.get(0).getCenterX()) / 2, within(.3));
        assertThat(life.entries().get(0).when()).isEqualTo("Jan 1, 2026 – Jul 2, 2026");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> new Event(LocalDate.parse("2026-01-02"), LocalDate.parse("2026-01-01"), Name.of("x")));
    }

    private static List<java.awt.geom.Rectangle2D> bounds(Frame frame, String css) {
        return frame.shapes().stream()
                .filter(shape -> shape.css().equals(css))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .toList();
    }
}
