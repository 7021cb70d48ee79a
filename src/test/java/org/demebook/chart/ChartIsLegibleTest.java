package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Nothing lies on anything else; texts are measured with the tables of a real typeface. */
class ChartIsLegibleTest {
    private record Part(String what, Rectangle2D room) {}

    static Stream<Pedigrees.Named> pedigrees() {
        return Pedigrees.all();
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void no_symbol_or_text_overlaps_another(Pedigrees.Named pedigree) {
        var parts = parts(DrawnChart.of(pedigree.figures()));

        for (int one = 0; one < parts.size(); one++) {
            for (int other = 0; other < one; other++) {
                assertThat(parts.get(one).room().intersects(parts.get(other).room()))
                        .as("%s on %s", parts.get(one), parts.get(other))
                        .isFalse();
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void no_line_runs_through_a_symbol_or_text(Pedigrees.Named pedigree) {
        var chart = DrawnChart.of(pedigree.figures());

        for (var part : parts(chart)) {
            var inside = new Rectangle2D.Double(
                    part.room().getX() + 0.5,
                    part.room().getY() + 0.5,
                    part.room().getWidth() - 1,
                    part.room().getHeight() - 1);
            chart.bonds.stream().flatMap(ChartIsLegibleTest::lines).forEach(line -> assertThat(line.intersects(inside))
                    .as("a line from %s to %s through %s", line.getP1(), line.getP2(), part)
                    .isFalse());
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void lines_of_two_couples_cross_and_never_run_on_or_end_at_one_another(Pedigrees.Named pedigree) {
        var chart = DrawnChart.of(pedigree.figures());
        var feet = chart.animals.stream().map(DrawnChart.Animal::foot).toList();

        for (int one = 0; one < chart.bonds.size(); one++) {
            for (int other = 0; other < one; other++) {
                for (var line : lines(chart.bonds.get(one)).toList()) {
                    lines(chart.bonds.get(other)).forEach(second -> assertThat(confusable(line, second, feet))
                            .as("%s–%s and %s–%s", line.getP1(), line.getP2(), second.getP1(), second.getP2())
                            .isFalse());
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void everything_is_within_the_picture(Pedigrees.Named pedigree) {
        var chart = DrawnChart.of(pedigree.figures());
        var root = chart.svg.getDocumentElement();
        var picture = new Rectangle2D.Double(0, 0, DrawnChart.number(root, "width"), DrawnChart.number(root, "height"));

        assertThat(root.getAttribute("viewBox"))
                .isEqualTo("0 0 " + root.getAttribute("width") + " " + root.getAttribute("height"));
        assertThat(parts(chart)).allMatch(it -> picture.contains(it.room()));
        assertThat(chart.bonds.stream().flatMap(ChartIsLegibleTest::lines))
                .allMatch(it -> picture.contains(it.getP1()) && picture.contains(it.getP2()));
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void lines_of_two_couples_side_by_side_leave_a_gap_that_is_seen(Pedigrees.Named pedigree) {
        var bonds = DrawnChart.of(pedigree.figures()).bonds;

        for (int one = 0; one < bonds.size(); one++) {
            for (int other = 0; other < one; other++) {
                for (var line : lines(bonds.get(one)).toList()) {
                    lines(bonds.get(other))
                            .filter(second -> besideEachOther(line, second) > 0)
                            // a double line is 5 px wide; where two bends pass each other, less is seen too
                            .forEach(second -> assertThat(line.ptLineDist(second.getP1()))
                                    .isGreaterThan(besideEachOther(line, second) > 15 ? 8 : 5));
                }
            }
        }
    }

    /** How far two upright or two level lines run beside each other; 0 if one is upright and the other level. */
    private static double besideEachOther(Line2D one, Line2D other) {
        var a = one.getBounds2D();
        var b = other.getBounds2D();
        if (a.getWidth() == 0 && b.getWidth() == 0) {
            return Math.min(a.getMaxY(), b.getMaxY()) - Math.max(a.getMinY(), b.getMinY());
        }
        return a.getHeight() == 0 && b.getHeight() == 0
                ? Math.min(a.getMaxX(), b.getMaxX()) - Math.max(a.getMinX(), b.getMinX())
                : 0;
    }

    /** They touch, and not as two lines that cross: one ends on the other, or they share more than a point. */
    private static boolean confusable(Line2D one, Line2D other, List<Point2D> feet) {
        if (!one.intersectsLine(other)) {
            return false;
        }
        if (feet.stream().anyMatch(foot -> foot.distance(one.getP1()) < 0.01 && foot.distance(other.getP1()) < 0.01)) {
            // two couples of one animal: both leave from its foot, and part at once
            return one.ptSegDist(other.getP2()) < 1 || other.ptSegDist(one.getP2()) < 1;
        }
        return Stream.of(one.getP1(), one.getP2()).anyMatch(end -> other.ptSegDist(end) < 1)
                || Stream.of(other.getP1(), other.getP2()).anyMatch(end -> one.ptSegDist(end) < 1);
    }

    private static List<Part> parts(DrawnChart chart) {
        var parts = new ArrayList<Part>();
        for (var animal : chart.animals) {
            parts.add(new Part("symbol of " + animal.name(), animal.bounds()));
            animal.texts().forEach(it -> parts.add(new Part("text of " + animal.name(), it)));
        }
        return parts;
    }

    private static Stream<Line2D> lines(DrawnChart.Bond bond) {
        return bond.strokes().stream().flatMap(it -> it.segments().stream());
    }
}
