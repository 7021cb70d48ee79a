package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.util.List;
import org.demebook.plot.Tradeoff.Choice;
import org.demebook.plot.Tradeoff.Kind;
import org.junit.jupiter.api.Test;

class TradeoffTest {
    @Test
    void the_curve_goes_through_what_could_be_had_and_what_is_in_force() {
        for (var frame : Samples.tradeoff().frames()) {
            var curve = drawn(frame, "line c1").get(0);
            assertThat(drawn(frame, "mark hollow c1")).hasSize(7);
            var chosen = drawn(frame, "mark chosen");
            assertThat(chosen).hasSize(1);
            assertThat(curve.contains(chosen.get(0).getCenterX(), chosen.get(0).getCenterY()))
                    .isTrue();
            assertThat(drawn(frame, "mark c2")).hasSize(1);
        }
    }

    @Test
    void the_bound_is_a_line_beyond_which_no_point_lies() {
        for (var frame : Samples.tradeoff().frames()) {
            var bound = drawn(frame, "bound").get(0);
            assertThat(bound.getWidth()).isZero();
            assertThat(drawn(frame, "line c1").get(0).getMaxX()).isLessThan(bound.getX());
        }
    }

    @Test
    void names_stand_beside_each_other_and_no_point_is_hidden() {
        for (var frame : Samples.tradeoff().frames()) {
            var names = frame.texts().stream()
                    .filter(text -> text.css().equals("halo"))
                    .map(TradeoffTest::bounds)
                    .toList();
            assertThat(names).hasSize(3);
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < i; j++) {
                    assertThat(names.get(i).intersects(names.get(j))).isFalse();
                }
            }
            for (var css : List.of("mark hollow c1", "mark chosen", "mark c2")) {
                for (var mark : drawn(frame, css)) {
                    assertThat(names).noneMatch(name -> name.contains(mark.getCenterX(), mark.getCenterY()));
                }
            }
        }
    }

    private static Rectangle2D bounds(Frame.Text text) {
        return new Rectangle2D.Double(text.x(), text.y() - 10, Letters.width(text.text()), 13);
    }

    private static List<Rectangle2D> drawn(Frame frame, String css) {
        return frame.shapes().stream()
                .filter(shape -> shape.css().equals(css))
                .flatMap(shape -> PathReader.bounds(shape.d()).stream())
                .toList();
    }

    @Test
    void each_choice_is_in_the_table_once_with_what_it_is() {
        var rows = Samples.tradeoff().table().rows();
        assertThat(rows).hasSize(10);
        assertThat(rows.stream()
                        .filter(row -> row.name().text().equals("Plan in force"))
                        .flatMap(row -> row.cells().stream())
                        .map(Table.Cell::text))
                .containsExactly("in force", "0.9385", "0.039");
        assertThat(rows.get(9).cells())
                .extracting(Table.Cell::text)
                .containsExactly("proven bound", "0.9419", "not computed");
    }

    @Test
    void points_lie_where_both_axes_say() {
        var measure = new Measure("x", Samples.NUMBERS, 0, true);
        var plot = Tradeoff.of(
                Samples.caption("c", "c"),
                List.of(
                        new Choice(Name.of("a"), 0, 0, Kind.POSSIBLE),
                        new Choice(Name.of("b"), 4, 2, Kind.POSSIBLE),
                        new Choice(Name.of("c"), 8, 8, Kind.POSSIBLE)),
                measure,
                measure,
                new Tradeoff.Words("a", "b", "c", "d", "e", "f", "g"));
        var marks = drawn(plot.frames().get(0), "mark hollow c1");
        double across = marks.get(2).getCenterX() - marks.get(0).getCenterX();
        double up = marks.get(2).getCenterY() - marks.get(0).getCenterY();
        assertThat(marks.get(1).getCenterX() - marks.get(0).getCenterX()).isEqualTo(across / 2, within(.2));
        assertThat(marks.get(1).getCenterY() - marks.get(0).getCenterY()).isEqualTo(up / 4, within(.2));
    }

    @Test
    void only_a_bound_may_do_without_its_second_figure() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Choice(Name.of("a"), 1, Double.NaN, Kind.CHOSEN));
        assertThat(new Choice(Name.of("a"), 1, Double.NaN, Kind.BOUND).up()).isNaN();
    }
}
