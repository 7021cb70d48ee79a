package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.demebook.chart.Figure.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whoever reads the picture alone finds the pedigree again that was given. */
class ChartReadsBackTest {
    private record Link(String parent, String young, boolean certain, boolean related) {}

    static Stream<Pedigrees.Named> pedigrees() {
        return Pedigrees.all();
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void each_animal_is_drawn_once_with_the_symbol_of_its_sex(Pedigrees.Named pedigree) {
        var chart = DrawnChart.of(pedigree.figures());

        assertThat(chart.animals)
                .extracting(it -> it.symbol().getTagName() + " " + saidName(it))
                .containsExactlyInAnyOrderElementsOf(pedigree.figures().stream()
                        .map(it -> symbol(it.sex()) + " " + name(it))
                        .toList());
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void each_link_is_drawn_once_and_double_where_parents_are_related(Pedigrees.Named pedigree) {
        var chart = DrawnChart.of(pedigree.figures());

        assertThat(links(chart)).containsExactlyInAnyOrderElementsOf(links(pedigree.figures()));
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void parents_stand_above_their_young(Pedigrees.Named pedigree) {
        for (var bond : DrawnChart.of(pedigree.figures()).bonds) {
            for (var parent : bond.parents()) {
                assertThat(bond.young())
                        .allSatisfy(young -> assertThat(young.bounds().getMinY())
                                .isGreaterThan(parent.animal().bounds().getMaxY()));
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void full_siblings_stand_in_one_row(Pedigrees.Named pedigree) {
        for (var bond : DrawnChart.of(pedigree.figures()).bonds) {
            assertThat(bond.young())
                    .extracting(it -> it.bounds().getMinY())
                    .containsOnly(bond.young().get(0).bounds().getMinY());
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void the_same_figures_give_the_same_picture(Pedigrees.Named pedigree) {
        assertThat(AncestryChart.draw(pedigree.figures(), new EnglishChart()))
                .isEqualTo(AncestryChart.draw(pedigree.figures(), new EnglishChart()));
    }

    @Test
    void charts_drawn_at_the_same_time_do_not_disturb_each_other() {
        AncestryChart.warmUp();
        var alone = Pedigrees.all()
                .map(it -> AncestryChart.draw(it.figures(), new EnglishChart()))
                .toList();

        var together = Pedigrees.all().toList().parallelStream()
                .map(it -> AncestryChart.draw(it.figures(), new EnglishChart()))
                .toList();

        assertThat(together).isEqualTo(alone);
    }

    @Test
    void in_the_worked_pedigree_two_couples_of_seven_have_double_lines() {
        var chart = DrawnChart.of(Pedigrees.worked());

        // by hand: F of 022 = 1/8 (014 and 010 share 002), of 023 = 1/4 (full siblings); all other parents are
        // unrelated
        assertThat(chart.bonds.stream().filter(it -> it.parents().stream().anyMatch(DrawnChart.Parent::related)))
                .extracting(it -> it.parents().stream()
                        .map(parent -> parent.animal().name())
                        .sorted()
                        .toList())
                .containsExactlyInAnyOrder(List.of("M-010", "M-014"), List.of("M-010", "M-011"));
        assertThat(chart.bonds).hasSize(7);
    }

    private static List<Link> links(DrawnChart chart) {
        var links = new ArrayList<Link>();
        for (var bond : chart.bonds) {
            for (var parent : bond.parents()) {
                for (var young : bond.young()) {
                    links.add(new Link(
                            saidName(parent.animal()), saidName(young), !parent.candidate(), parent.related()));
                }
            }
        }
        return links;
    }

    private static List<Link> links(List<Figure> figures) {
        var links = new ArrayList<Link>();
        for (var young : figures) {
            if (young.dam() != null) {
                boolean related =
                        !young.sires().isEmpty() && young.sires().stream().allMatch(Figure.SireLink::relatedToDam);
                links.add(new Link(name(figures, young.dam()), name(young), true, related));
            }
            young.sires()
                    .forEach(sire -> links.add(new Link(
                            name(figures, sire.key()), name(young), young.sireCertain(), sire.relatedToDam())));
        }
        return links;
    }

    private static String name(List<Figure> figures, String key) {
        return name(
                figures.stream().filter(it -> it.key().equals(key)).findFirst().orElseThrow());
    }

    private static String name(Figure figure) {
        return Telling.name(figure, new EnglishChart());
    }

    /** The beginning of its tooltip, whole where the text beside the symbol is cut. */
    private static String saidName(DrawnChart.Animal animal) {
        var title = Objects.requireNonNull(
                        animal.element().getElementsByTagName("title").item(0))
                .getTextContent();
        return title.substring(0, title.indexOf(", "));
    }

    private static String symbol(Sex sex) {
        return switch (sex) {
            case MALE -> "rect";
            case FEMALE -> "circle";
            case UNKNOWN -> "path";
        };
    }
}
