package org.demebook.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The chart in words. */
class OutlineTest {
    static Stream<Pedigrees.Named> pedigrees() {
        return Pedigrees.all();
    }

    @Test
    void the_worked_pedigree_reads_from_the_animal_asked_about_upwards() {
        assertThat(outline(Pedigrees.worked()).toText()).isEqualTo("""
                        M-023, female, parents related, asked about
                          dam: M-010, female, dead
                            dam: M-001, female, dead, founder
                            sire: M-002, male, dead, founder
                          sire: M-011, male, dead
                            dam: M-001 (as above)
                            sire: M-002 (as above)
                        M-006, male, founder
                        M-020, female
                          dam: M-010 (as above)
                          sire: M-012, male
                            dam: M-003, female, dead, founder
                            sire: M-004, male, dead, founder
                        M-021, male
                          dam: M-013, female
                            dam: M-003 (as above)
                            sire: M-004 (as above)
                          sire: M-011 (as above)
                        M-022, male, parents related
                          dam: M-010 (as above)
                          sire: M-014, male
                            dam: M-005, female, dead, founder
                            sire: M-002 (as above)
                        M-024, male
                          dam: M-010 (as above)
                          sire: M-012 (as above)
                        """);
    }

    @Test
    void withheld_unknown_and_possible_parents_are_said() {
        assertThat(outline(Pedigrees.ofEveryKind()).toText()).isEqualTo("""
                        M-101, sex unknown, asked about
                          dam: M-013, 2015, female
                            dam: not shown, female
                            sire: unknown, male
                          possible sire: M-014, male
                          possible sire: M-022, 2018, Marrowfin Cay, male, dead
                            dam: not shown (as above)
                        """);
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void each_animal_is_told_once_in_full_and_before_it_is_referred_to(Pedigrees.Named pedigree) {
        var entries = outline(pedigree.figures()).roots().stream()
                .flatMap(OutlineTest::withParents)
                .toList();

        assertThat(entries.stream().filter(Outline.Entry::inFull).map(Outline.Entry::name))
                .containsExactlyInAnyOrderElementsOf(pedigree.figures().stream()
                        .map(it -> Telling.name(it, new EnglishChart()))
                        .toList());
        for (int entry = 0; entry < entries.size(); entry++) {
            var reference = entries.get(entry);
            assertThat(reference.inFull()
                            || entries.subList(0, entry).stream()
                                    .anyMatch(it -> it.inFull() && it.name().equals(reference.name())))
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("pedigrees")
    void every_link_stands_in_it_once(Pedigrees.Named pedigree) {
        var links = outline(pedigree.figures()).roots().stream()
                .flatMap(OutlineTest::withParents)
                .mapToInt(it -> it.parents().size())
                .sum();

        assertThat(links)
                .isEqualTo(pedigree.figures().stream()
                        .mapToInt(it -> it.sires().size() + (it.dam() == null ? 0 : 1))
                        .sum());
    }

    private static Stream<Outline.Entry> withParents(Outline.Entry entry) {
        return Stream.concat(Stream.of(entry), entry.parents().stream().flatMap(OutlineTest::withParents));
    }

    private static Outline outline(List<Figure> figures) {
        return AncestryChart.draw(figures, new EnglishChart()).outline();
    }
}
