package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.chart.Figure.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Attr;
import org.w3c.dom.Element;

/** What stands in the markup: nothing that a strict content security policy forbids, nothing that a keeper wrote into it. */
class ChartMarkupTest {
    private static final Set<String> ELEMENTS =
            Set.of("svg", "title", "desc", "g", "a", "rect", "circle", "path", "text");
    private static final Set<String> ATTRIBUTES = Set.of(
            "xmlns",
            "class",
            "id",
            "width",
            "height",
            "viewBox",
            "role",
            "href",
            "x",
            "y",
            "cx",
            "cy",
            "r",
            "d",
            "text-anchor",
            "font-size",
            "focusable",
            "aria-hidden",
            "aria-label",
            "aria-labelledby",
            "aria-describedby");

    static Stream<Pedigrees.Named> pedigrees() {
        return Pedigrees.all();
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void the_markup_is_plain_shapes_with_classes_without_style_or_script(Pedigrees.Named pedigree) {
        var drawing = AncestryChart.draw(pedigree.figures(), new EnglishChart());
        var pictures = new ArrayList<>(List.of(drawing.svg()));
        drawing.legend().forEach(it -> pictures.add(it.svg()));

        for (var picture : pictures) {
            var svg = DrawnChart.read(picture).svg;
            var all = svg.getElementsByTagName("*");
            for (int element = 0; element < all.getLength(); element++) {
                assertThat(all.item(element).getNodeName()).isIn(ELEMENTS);
                assertThat(attributes((Element) all.item(element)))
                        .extracting(Attr::getName)
                        .isSubsetOf(ATTRIBUTES);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<script>alert(1)</script>",
                "\"/><a href=\"javascript:alert(1)\">x</a>",
                "' onload='alert(1)",
                "]]>&amp;&lt;&#0;",
                "\u0000\u0008\u001f\ufffe\ud800",
                "M-1\n  dam: forged",
                "\u202eevil\u202c",
                "{config:secret} %s %n $1"
            })
    void what_a_keeper_wrote_stays_text(String hostile) {
        var drawing = AncestryChart.draw(
                List.of(
                        Figure.of("d", Sex.FEMALE, "M-1"),
                        Figure.of("y", Sex.MALE, hostile, hostile)
                                .asAsked()
                                .withParents("d", null, false)
                                .withLink("/animals/" + hostile)),
                new EnglishChart());
        var chart = DrawnChart.read(drawing.svg());

        assertThat(chart.elements().map(Element::getTagName)).isSubsetOf(ELEMENTS);
        assertThat(chart.elements().flatMap(it -> attributes(it).stream()).map(Attr::getName))
                .isSubsetOf(ATTRIBUTES);
        var title =
                Objects.requireNonNull(chart.svg.getElementsByTagName("title").item(0));
        assertThat(title.getTextContent()).isEqualTo("Ancestry of " + readable(hostile));
        assertThat(drawing.outline().toText().lines()).hasSize(2);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a name of a length that no number of an animal has",
                "\ufdfd\ufdfd\ufdfd",
                "蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇蛇",
                "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
                "🐍🐍🐍🐍🐍🐍🐍🐍🐍🐍🐍🐍🐍"
            })
    void a_long_text_is_cut_beside_the_symbol_and_whole_in_tooltip_and_outline(String name) {
        var drawing = AncestryChart.draw(
                List.of(
                        Figure.of("d", Sex.FEMALE, name, name, name),
                        Figure.of("s", Sex.MALE, name, name, name),
                        Figure.of("y", Sex.MALE, name).asAsked().withParents("d", "s", false)),
                new EnglishChart());
        var chart = DrawnChart.read(drawing.svg());

        // an inner <svg> cuts at its edge (SVG 2, overflow of inner svg elements): its room is the most that a text can
        // take
        var rooms = chart.animals.stream()
                .map(it -> (Element) it.element().getElementsByTagName("svg").item(0))
                .map(it -> new Rectangle2D.Double(
                        DrawnChart.number(it, "x"),
                        DrawnChart.number(it, "y"),
                        DrawnChart.number(it, "width"),
                        DrawnChart.number(it, "height")))
                .toList();
        for (int one = 0; one < rooms.size(); one++) {
            assertThat(rooms.get(one).getWidth()).isLessThanOrEqualTo(140);
            for (int other = 0; other < rooms.size(); other++) {
                assertThat(rooms.get(one).intersects(chart.animals.get(other).bounds()))
                        .isFalse();
                assertThat(other != one && rooms.get(one).intersects(rooms.get(other)))
                        .isFalse();
            }
        }
        assertThat(chart.animals).allSatisfy(it -> assertThat(it.element().getAttribute("aria-label"))
                .startsWith(name));
        assertThat(drawing.outline().toText()).contains(name);
    }

    @Test
    void a_link_is_reached_with_the_keyboard_named_by_what_is_seen_and_large_enough_to_touch() {
        var chart = DrawnChart.of(Pedigrees.ofEveryKind());

        var links = chart.elements().filter(it -> it.getTagName().equals("a")).toList();
        assertThat(links).extracting(it -> it.getAttribute("href")).containsExactly("/animals/M-013?tab=a&b");
        var link = links.get(0);
        assertThat(link.getAttribute("aria-label")).isEqualTo("M-013, 2015, female; dam not shown; sire unknown");
        var target = DrawnChart.withClass(link, "chart-target").findFirst().orElseThrow();
        // 44 px: WCAG 2.2, 2.5.5 (enhanced); issue "touch targets of at least 44 px"
        assertThat(DrawnChart.number(target, "width")).isGreaterThanOrEqualTo(44);
        assertThat(DrawnChart.number(target, "height")).isGreaterThanOrEqualTo(44);
    }

    @Test
    void the_keyboard_goes_through_the_rows_from_top_left_to_bottom_right() {
        var chart = DrawnChart.of(Pedigrees.worked());

        for (int later = 1; later < chart.animals.size(); later++) {
            var before = chart.animals.get(later - 1).bounds();
            var after = chart.animals.get(later).bounds();
            assertThat(after.getY() > before.getY() || (after.getY() == before.getY() && after.getX() > before.getX()))
                    .isTrue();
        }
    }

    @Test
    void the_picture_is_a_group_with_a_title_and_a_description() {
        var chart = DrawnChart.of(Pedigrees.worked());
        var root = chart.svg.getDocumentElement();

        assertThat(root.getAttribute("role")).isEqualTo("group"); // role img would hide the links within it
        assertThat(byId(chart, root.getAttribute("aria-labelledby"))).isEqualTo("Ancestry of M-023");
        assertThat(byId(chart, root.getAttribute("aria-describedby")))
                .isEqualTo("16 animals in 3 rows, the oldest at the top");
        assertThat(chart.animals.stream().map(DrawnChart.Animal::element).filter(it -> it.getTagName()
                        .equals("g")))
                .allMatch(it -> it.getAttribute("role").equals("img"));
    }

    @Test
    void a_key_is_nowhere_in_what_is_handed_out() {
        var drawing = AncestryChart.draw(Pedigrees.ofEveryKind(), new EnglishChart());

        assertThat(drawing.toString()).contains("not shown").doesNotContain("key-of-the");
    }

    private static String byId(DrawnChart chart, String id) {
        return chart.elements()
                .filter(it -> it.getAttribute("id").equals(id))
                .findFirst()
                .orElseThrow()
                .getTextContent();
    }

    private static List<Attr> attributes(Element element) {
        var all = element.getAttributes();
        return IntStream.range(0, all.getLength())
                .mapToObj(it -> (Attr) all.item(it))
                .toList();
    }

    /** What XML 1.0 (section 2.2) has no character for becomes U+FFFD, a line break a blank. */
    private static String readable(String text) {
        return text.replaceAll("[\\u0000-\\u0008\\u000e-\\u001f\\ufffe\\ud800]", "\ufffd")
                .replace('\n', ' ');
    }
}
