package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.demebook.chart.Figure.Sex;
import org.demebook.chart.Figure.SireLink;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures that are no pedigree are a mistake of the caller, and said as such. */
class ChartRefusalsTest {
    private static final Figure DAM = Figure.of("d", Sex.FEMALE, "M-1");
    private static final Figure SIRE = Figure.of("s", Sex.MALE, "M-2");

    @Test
    void nobody_is_an_ancestor_of_their_own() {
        refuses(
                "would be an ancestor of its own",
                DAM.withParents("y", null, false),
                Figure.of("y", Sex.FEMALE, "M-3").withParents("d", null, false));
    }

    @Test
    void a_parent_is_among_the_figures() {
        refuses(
                "s, a parent of y, is not in the chart",
                DAM,
                Figure.of("y", Sex.MALE).withParents("d", "s", false));
    }

    @Test
    void an_animal_is_given_once() {
        refuses("d is in the chart twice", DAM, DAM);
    }

    @Test
    void a_parent_is_named_once() {
        refuses("A parent of y is named twice", DAM, Figure.of("y", Sex.MALE).withParents("d", "d", false));
        var twice = List.of(new SireLink("s", false), new SireLink("s", false));
        refuses("A parent of y is named twice", SIRE, Figure.of("y", Sex.MALE).withPossibleSires(null, twice));
    }

    @Test
    void a_chart_has_an_animal() {
        refuses("A chart without an animal");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "javascript:alert(1)",
                "https://elsewhere.example/",
                "//elsewhere.example/",
                "/\\elsewhere.example",
                "animals/1",
                ""
            })
    void a_link_stays_on_this_server(String link) {
        assertThatThrownBy(() -> DAM.withLink(link))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("leads out of this server");
    }

    private static void refuses(String why, Figure... figures) {
        assertThatThrownBy(() -> AncestryChart.draw(List.of(figures), new EnglishChart()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(why);
    }
}
