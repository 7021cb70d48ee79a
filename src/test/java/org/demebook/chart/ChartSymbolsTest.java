package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.demebook.chart.Figure.Sex;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/**
 * The symbols after the standardized pedigree nomenclature (Bennett et al. 1995, 2008) as the AMA Manual of Style, 10th edition, repeats
 * it: square, circle, diamond; slash; the consultand's plain arrow, where a proband's has a P. What package-info marks
 * as this house's own is checked as such.
 */
class ChartSymbolsTest {
    @Test
    void the_dead_alone_are_slashed() {
        var chart = DrawnChart.of(Pedigrees.worked());

        assertThat(chart.animals.stream().filter(it -> holds(it, "chart-slash")).map(DrawnChart.Animal::name))
                .containsExactlyInAnyOrder("M-001", "M-002", "M-003", "M-004", "M-005", "M-010", "M-011");
    }

    @Test
    void one_animal_has_the_arrow_and_it_has_no_letter() {
        var chart = DrawnChart.of(Pedigrees.worked());

        assertThat(chart.animals.stream().filter(it -> holds(it, "chart-arrow")).map(DrawnChart.Animal::name))
                .containsExactly("M-023");
        assertThat(texts(chart.named("M-023").element())).containsExactly("M-023");
    }

    @Test
    void founders_have_a_thick_outline() {
        var chart = DrawnChart.of(Pedigrees.worked());

        assertThat(chart.animals.stream().filter(it -> it.has("chart-founder")).map(DrawnChart.Animal::name))
                .containsExactlyInAnyOrder("M-001", "M-002", "M-003", "M-004", "M-005", "M-006");
    }

    @Test
    void who_is_withheld_has_a_dashed_outline_and_words() {
        var chart = DrawnChart.of(Pedigrees.ofEveryKind());

        assertThat(chart.animals.stream().filter(it -> it.has("chart-withheld")).map(DrawnChart.Animal::name))
                .containsExactly("not shown");
    }

    @Test
    void a_parent_that_nobody_knows_has_a_question_mark_and_words() {
        var unknown = DrawnChart.of(Pedigrees.ofEveryKind()).named("unknown");

        assertThat(texts(unknown.element())).containsExactly("?", "unknown");
    }

    @Test
    void each_possible_sire_has_a_dashed_line_with_a_question_mark() {
        var chart = DrawnChart.of(Pedigrees.ofEveryKind());
        var bond = chart.bonds.stream()
                .filter(it -> it.parents().size() == 3)
                .findFirst()
                .orElseThrow();

        assertThat(bond.parents().stream().filter(DrawnChart.Parent::candidate).map(it -> it.animal()
                        .name()))
                .containsExactlyInAnyOrder("M-014", "M-022");
        assertThat(chart.elements().filter(it -> DrawnChart.classes(it).contains("chart-badge")))
                .hasSize(2);
    }

    @Test
    void the_legend_says_what_occurs_and_nothing_else() {
        var plain = List.of(
                Figure.of("d", Sex.FEMALE, "M-1"),
                Figure.of("y", Sex.FEMALE, "M-2").withParents("d", null, false));

        assertThat(legend(plain)).containsExactly("female");
        assertThat(legend(Pedigrees.worked()))
                .containsExactly("female", "male", "dead", "founder", "asked about", "parents related");
        assertThat(legend(Pedigrees.ofEveryKind()))
                .containsExactly(
                        "female",
                        "male",
                        "sex unknown",
                        "dead",
                        "not shown",
                        "unknown",
                        "asked about",
                        "parents related",
                        "possible sire");
    }

    @Test
    void every_class_has_its_look_and_colours_are_those_of_the_page() throws IOException {
        var css = stylesheet();

        var classes = Pedigrees.all()
                .flatMap(it -> DrawnChart.of(it.figures()).elements())
                .flatMap(it -> DrawnChart.classes(it).stream())
                .filter(it -> !it.isEmpty()
                        && !List.of("chart-animal", "chart-couple").contains(it))
                .distinct();
        assertThat(classes).allMatch(it -> css.matches("(?s).*\\." + it + "\\b.*"));
        var screen = css.substring(0, css.indexOf("@page"));
        assertThat(screen)
                .doesNotContainPattern(
                        "(fill|stroke): (?!none|var\\(--(ink|ink-soft|panel|line|accent|paper)\\))[a-z#]");
    }

    private static String stylesheet() throws IOException {
        try (var in = ChartSymbolsTest.class.getResourceAsStream("/META-INF/resources/pages/chart.css")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static Stream<String> legend(List<Figure> figures) {
        return AncestryChart.draw(figures, new EnglishChart()).legend().stream().map(Drawing.LegendEntry::words);
    }

    private static boolean holds(DrawnChart.Animal animal, String wanted) {
        return DrawnChart.withClass(animal.element(), wanted).findAny().isPresent();
    }

    private static List<String> texts(Element element) {
        var all = element.getElementsByTagName("text");
        return IntStream.range(0, all.getLength())
                .mapToObj(it -> all.item(it).getTextContent())
                .toList();
    }
}
