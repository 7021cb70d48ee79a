package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every plot, as its template draws it. */
class PictureTest {
    private static final String HOSTILE = "</text><script>alert('1')</script>\" onload=\"x & y ☃ 漢字";

    static Stream<Record> plots() {
        return Stream.concat(Samples.all().stream(), Stream.concat(hostile(), degenerate()));
    }

    static Stream<Record> hostile() {
        return Stream.of(
                HeatMap.symmetric(
                        caption(),
                        List.of(Name.of(HOSTILE), Name.of("x".repeat(500))),
                        new double[2][2],
                        HeatMap.KINSHIP_STEPS,
                        measure(),
                        new HeatMap.Words(HOSTILE, HOSTILE)),
                Trend.of(
                        caption(),
                        new Along.Whole(HOSTILE, (value, decimals) -> HOSTILE),
                        measure(),
                        List.of(new Series(
                                HOSTILE,
                                List.of(Series.Point.of(1, 2), Series.Point.missing(2), Series.Point.of(3, 1)))),
                        new Trend.Now(2, HOSTILE),
                        new Trend.Words(HOSTILE, HOSTILE, HOSTILE)),
                Pyramid.of(
                        caption(),
                        List.of(new Pyramid.AgeClass(HOSTILE, 1, 2, 3)),
                        (value, decimals) -> HOSTILE.substring(0, 20),
                        new Pyramid.Words(HOSTILE, HOSTILE, HOSTILE, HOSTILE)),
                Shares.of(
                        caption(),
                        List.of(new Shares.Share(Name.of(HOSTILE), .5, .4)),
                        Samples.KINSHIP,
                        new Shares.Words(HOSTILE, HOSTILE, HOSTILE, HOSTILE)),
                Tradeoff.of(
                        caption(),
                        List.of(
                                new Tradeoff.Choice(Name.of(HOSTILE), 1, 2, Tradeoff.Kind.CHOSEN),
                                new Tradeoff.Choice(Name.of(HOSTILE), 3, 4, Tradeoff.Kind.OTHER)),
                        measure(),
                        measure(),
                        new Tradeoff.Words(HOSTILE, HOSTILE, HOSTILE, HOSTILE, HOSTILE, HOSTILE, HOSTILE)),
                Growth.of(
                        caption(),
                        Samples.YEARS,
                        measure(),
                        List.of(new Growth.Weighing(1, 2)),
                        List.of(),
                        new Growth.Words(HOSTILE, HOSTILE, HOSTILE)),
                Lifeline.of(
                        caption(),
                        List.of(new Lifeline.Lane(
                                HOSTILE,
                                Mark.CIRCLE,
                                false,
                                List.of(new Lifeline.Event(Samples.BORN_ON, null, Name.of(HOSTILE))))),
                        Samples.BORN_ON,
                        Samples.DATES,
                        count -> HOSTILE));
    }

    /** One point, nothing but zeros, all equal: what a young register has. */
    static Stream<Record> degenerate() {
        var plots = new ArrayList<Record>();
        for (var values : new double[][] {{0}, {5}, {5, 5, 5}, {0, 0}, {1e9, 1e9 + 1}, {-4, -4}, {1e-9, 2e-9}}) {
            var points = new ArrayList<Series.Point>();
            var weighings = new ArrayList<Growth.Weighing>();
            var shares = new ArrayList<Shares.Share>();
            var choices = new ArrayList<Tradeoff.Choice>();
            for (int i = 0; i < values.length; i++) {
                points.add(new Series.Point(2020 + i, values[i], values[i], values[i]));
                weighings.add(new Growth.Weighing(i, values[i]));
                shares.add(new Shares.Share(Name.of("Founder " + i), Math.abs(values[i]), 0));
                choices.add(new Tradeoff.Choice(Name.of("Plan " + i), values[i], values[i], Tradeoff.Kind.CHOSEN));
            }
            for (var measure : List.of(Samples.COUNT, Samples.DIVERSITY)) {
                plots.add(Trend.of(
                        Samples.caption("t", "Trend"),
                        Samples.YEARS,
                        measure,
                        List.of(new Series("One", points)),
                        null,
                        Samples.TREND_WORDS));
                plots.add(Trend.of(
                        Samples.caption("n", "Trend"),
                        Samples.YEARS,
                        measure,
                        List.of(new Series("One", points)),
                        new Trend.Now(2020, "now"),
                        Samples.TREND_WORDS));
                plots.add(Growth.of(
                        Samples.caption("g", "Growth"),
                        Samples.YEARS,
                        measure,
                        weighings,
                        List.of(),
                        new Growth.Words("One", "Others", "none")));
                plots.add(Shares.of(
                        Samples.caption("s", "Shares"), shares, measure, new Shares.Words("a", "b", "c", "d")));
                plots.add(Tradeoff.of(
                        Samples.caption("o", "Curve"),
                        choices,
                        measure,
                        measure,
                        new Tradeoff.Words("a", "b", "c", "d", "e", "f", "g")));
            }
        }
        plots.add(Pyramid.of(
                Samples.caption("p", "Ages"),
                List.of(new Pyramid.AgeClass("0", 0, 0, 1)),
                Samples.NUMBERS,
                new Pyramid.Words("Years", "Males", "Females", "Unknown")));
        plots.add(Pyramid.of(
                Samples.caption("q", "Ages"),
                List.of(new Pyramid.AgeClass("0", 4, 0, 0)),
                Samples.NUMBERS,
                new Pyramid.Words("Years", "Males", "Females", "Unknown")));
        plots.add(Samples.heatMap(1, false));
        plots.add(Samples.heatMap(1, true));
        plots.add(Lifeline.of(
                Samples.caption("l", "Life"),
                List.of(new Lifeline.Lane(
                        "Meals",
                        Mark.STROKE,
                        true,
                        List.of(new Lifeline.Event(Samples.BORN_ON, null, Name.of("a meal"))))),
                Samples.BORN_ON,
                Samples.DATES,
                count -> count + " meals"));
        return plots.stream();
    }

    static Stream<Record> empty() {
        var lane = new Lifeline.Lane("Sheds", Mark.CIRCLE, false, List.of());
        return Stream.of(
                HeatMap.symmetric(
                        Samples.caption("h", "Kinship"),
                        List.of(),
                        new double[0][0],
                        HeatMap.KINSHIP_STEPS,
                        measure(),
                        new HeatMap.Words("a", "b")),
                Trend.of(
                        Samples.caption("t", "Trend"),
                        Samples.YEARS,
                        measure(),
                        List.of(),
                        Samples.NOW,
                        Samples.TREND_WORDS),
                Trend.of(
                        Samples.caption("t", "Trend"),
                        Samples.YEARS,
                        measure(),
                        List.of(new Series("One", List.of(Series.Point.missing(3)))),
                        null,
                        Samples.TREND_WORDS),
                Pyramid.of(
                        Samples.caption("p", "Ages"),
                        List.of(new Pyramid.AgeClass("0", 0, 0, 0)),
                        Samples.NUMBERS,
                        new Pyramid.Words("Years", "Males", "Females", "Unknown")),
                Shares.of(Samples.caption("s", "Shares"), List.of(), measure(), new Shares.Words("a", "b", "c", "d")),
                Tradeoff.of(
                        Samples.caption("o", "Curve"),
                        List.of(new Tradeoff.Choice(Name.of("x"), 1, Double.NaN, Tradeoff.Kind.BOUND)),
                        measure(),
                        measure(),
                        new Tradeoff.Words("a", "b", "c", "d", "e", "f", "g")),
                Growth.of(
                        Samples.caption("g", "Growth"),
                        Samples.YEARS,
                        measure(),
                        List.of(),
                        List.of(new Growth.Range(1, 2, 3)),
                        new Growth.Words("One", "Others", "none")),
                Lifeline.of(Samples.caption("l", "Life"), List.of(lane), Samples.BORN_ON, Samples.DATES, count -> ""));
    }

    private static Caption caption() {
        return new Caption("hostile", HOSTILE, HOSTILE, HOSTILE, HOSTILE);
    }

    private static Measure measure() {
        return new Measure(HOSTILE, (value, decimals) -> HOSTILE, 2, true);
    }

    @ParameterizedTest
    @MethodSource("plots")
    void all_of_it_lies_within_the_picture(Record plot) {
        for (var svg : Drawn.of(plot).elements("svg")) {
            var box = svg.getAttribute("viewBox").split(" ");
            double width = Double.parseDouble(box[2]);
            double height = Double.parseDouble(box[3]);
            var paths = svg.getElementsByTagName("path");
            for (int i = 0; i < paths.getLength(); i++) {
                var d = paths.item(i).getAttributes().getNamedItem("d").getNodeValue();
                assertThat(PathReader.bounds(d)).isNotEmpty().allSatisfy(part -> {
                    assertThat(part.getMinX()).as(d).isGreaterThanOrEqualTo(0);
                    assertThat(part.getMinY()).as(d).isGreaterThanOrEqualTo(0);
                    assertThat(part.getMaxX()).as(d).isLessThanOrEqualTo(width);
                    assertThat(part.getMaxY()).as(d).isLessThanOrEqualTo(height);
                });
            }
            var texts = svg.getElementsByTagName("text");
            for (int i = 0; i < texts.getLength(); i++) {
                assertWithin((org.w3c.dom.Element) texts.item(i), width, height);
            }
        }
    }

    private static void assertWithin(org.w3c.dom.Element text, double width, double height) {
        var css = List.of(text.getAttribute("class").split(" "));
        double length = Letters.width(text.getTextContent());
        double before = css.contains("end") ? length : css.contains("mid") ? length / 2 : 0;
        boolean turned = text.hasAttribute("transform");
        double along = Double.parseDouble(text.getAttribute(turned ? "y" : "x"));
        double begin = turned ? along + before - length : along - before;
        assertThat(begin).as(text.getTextContent()).isGreaterThanOrEqualTo(-.1);
        assertThat(begin + length).as(text.getTextContent()).isLessThanOrEqualTo((turned ? height : width) + .1);
        assertThat(Double.parseDouble(text.getAttribute(turned ? "x" : "y"))).isBetween(9.0, turned ? width : height);
    }

    @ParameterizedTest
    @MethodSource("plots")
    void nothing_in_it_is_refused_by_a_strict_content_security_policy(Record plot) {
        var drawn = Drawn.of(plot);
        assertThat(drawn.elements("script")).isEmpty();
        assertThat(drawn.elements("style")).isEmpty();
        assertThat(drawn.elements("*")).allSatisfy(element -> {
            for (int i = 0; i < element.getAttributes().getLength(); i++) {
                assertThat(element.getAttributes().item(i).getNodeName())
                        .isNotEqualTo("style")
                        .doesNotStartWith("on");
            }
        });
    }

    @ParameterizedTest
    @MethodSource("plots")
    void each_picture_has_a_name_and_a_description_and_no_id_twice(Record plot) {
        var drawn = Drawn.of(plot);
        var ids = new HashSet<String>();
        var elements = drawn.elements("*");
        elements.stream().filter(element -> element.hasAttribute("id")).forEach(element -> assertThat(
                        ids.add(element.getAttribute("id")))
                .isTrue());
        var pictures = elements.stream()
                .filter(element -> element.getAttribute("role").equals("img"))
                .toList();
        assertThat(pictures).isNotEmpty().allSatisfy(picture -> {
            assertThat(ids).contains(picture.getAttribute("aria-labelledby"), picture.getAttribute("aria-describedby"));
        });
        drawn.elements("svg").stream()
                .filter(svg -> !pictures.contains(svg))
                .forEach(svg -> assertThat(svg.getAttribute("aria-hidden")).isEqualTo("true"));
    }

    @ParameterizedTest
    @MethodSource("plots")
    void what_scrolls_is_reached_by_keyboard_and_named_once(Record plot) {
        var names = new HashSet<String>();
        Drawn.of(plot).elements("div").stream()
                .filter(div -> div.getAttribute("class").matches("scroll|plot-scroll"))
                .forEach(div -> {
                    assertThat(div.getAttribute("tabindex")).isEqualTo("0");
                    assertThat(div.getAttribute("role")).isEqualTo("region");
                    assertThat(names.add(div.getAttribute("aria-label"))).isTrue();
                });
    }

    @ParameterizedTest
    @MethodSource("hostile")
    void hostile_words_are_read_as_words(Record plot) {
        var drawn = Drawn.of(plot);
        assertThat(drawn.elements("figcaption").get(0).getTextContent()).isEqualTo(HOSTILE);
        assertThat(drawn.elements("summary").get(0).getTextContent()).isEqualTo(HOSTILE);
    }

    @ParameterizedTest
    @MethodSource("empty")
    void where_there_is_nothing_to_draw_that_is_said(Record plot) {
        var drawn = Drawn.of(plot);
        assertThat(drawn.elements("svg")).isEmpty();
        assertThat(drawn.elements("table")).isEmpty();
        assertThat(drawn.elements("p").get(0).getTextContent()).isEqualTo("There is nothing to draw yet.");
    }

    @Test
    void a_name_leads_nowhere_but_to_this_server() {
        for (var link : new String[] {
            "javascript:alert(1)", "//elsewhere.example/", "https://elsewhere.example/", "/\\elsewhere.example"
        }) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Name("x", link))
                    .withMessageContaining(link);
        }
        assertThatIllegalArgumentException().isThrownBy(() -> new Caption("a b", "", "", "", ""));
    }
}
