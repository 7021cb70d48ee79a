package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashMap;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Invented pedigrees of 56 to 20 296 animals against values from pedigreemm 0.3-5, nadiv 2.18.0, pedigree 1.4.2 and
 * kinship2 1.9.6.2 under R 4.2.2, printed with twelve digits.
 */
class ReferencePedigreesTest {
    /** For what is printed to the twelfth place. */
    private static final double TWELVE_DIGITS = 1e-12;
    /** For figures above 1, and sums of printed ones. */
    private static final double NINE_DIGITS = 1e-9;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "p1-tiny-loops",
                "p2-overlap",
                "p3-half-known",
                "p4-popular-sire",
                "p5-bottleneck-demes",
                "p6-large-deep"
            })
    void inbreeding_of_every_animal_agrees_with_the_libraries(String name) {
        var reference = Reference.read(name);
        var lines = Reference.lines(name + ".F.csv");
        assertThat(lines).hasSize(reference.pedigree().size());
        for (var line : lines) {
            agrees(line[0], reference.pedigree().inbreeding(reference.row(line[0])), line[1]);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "p1-tiny-loops",
                "p2-overlap",
                "p3-half-known",
                "p4-popular-sire",
                "p5-bottleneck-demes",
                "p6-large-deep"
            })
    void mean_kinship_of_every_living_animal_agrees_with_the_libraries(String name) {
        var reference = Reference.read(name);
        var pool = reference.pedigree().pool(reference.living());
        for (var line : Reference.lines(name + ".mk.csv")) {
            int row = reference.row(line[0]);
            double all = pool.meanKinship(row);
            double others = (all * pool.size() - reference.pedigree().kinship(row, row)) / (pool.size() - 1);
            agrees(line[0], all, line[1]);
            agrees(line[0] + " without itself", others, line[2]);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "p1-tiny-loops",
                "p2-overlap",
                "p3-half-known",
                "p4-popular-sire",
                "p5-bottleneck-demes",
                "p6-large-deep"
            })
    void kinship_of_pairs_agrees_with_the_libraries_one_by_one_and_in_a_table(String name) {
        var reference = Reference.read(name);
        var lines = Reference.lines(name + ".pairs.csv");
        int[] rows = lines.stream()
                .mapToInt(line -> reference.row(line[0]))
                .distinct()
                .toArray();
        int[] columns = lines.stream()
                .mapToInt(line -> reference.row(line[1]))
                .distinct()
                .toArray();
        double[][] table = reference.pedigree().kinship(rows, columns);
        var cells = new HashMap<String, Double>();
        for (int r = 0; r < rows.length; r++) {
            for (int c = 0; c < columns.length; c++) {
                cells.put(rows[r] + "," + columns[c], table[r][c]);
            }
        }
        for (var line : lines) {
            int a = reference.row(line[0]);
            int b = reference.row(line[1]);
            agrees(line[0] + " and " + line[1], reference.pedigree().kinship(a, b), line[2]);
            agrees(line[0] + " and " + line[1] + " in a table", cells.get(a + "," + b), line[2]);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "p1-tiny-loops",
                "p2-overlap",
                "p3-half-known",
                "p4-popular-sire",
                "p5-bottleneck-demes",
                "p6-large-deep"
            })
    void founder_contributions_agree_with_the_libraries(String name) {
        var reference = Reference.read(name);
        var contributions = reference.pedigree().pool(reference.living()).founderContributions();
        double unnamed = 0;
        int named = 0;
        for (var line : Reference.lines(name + ".founders.csv")) {
            if (line[0].startsWith("?")) {
                unnamed += Double.parseDouble(line[1]);
            } else if (Double.parseDouble(line[1]) > 0) {
                int place = Arrays.binarySearch(contributions.founders(), reference.row(line[0]));
                agrees(line[0], contributions.shares()[place], line[1]);
                named++;
            }
        }
        assertThat(contributions.founders()).hasSize(named);
        assertThat(contributions.unnamed()).isCloseTo(unnamed, within(NINE_DIGITS));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "p1-tiny-loops",
                "p2-overlap",
                "p3-half-known",
                "p4-popular-sire",
                "p5-bottleneck-demes",
                "p6-large-deep"
            })
    void totals_of_the_living_agree_with_the_libraries(String name) {
        var reference = Reference.read(name);
        var pedigree = reference.pedigree();
        var pool = pedigree.pool(reference.living());
        var contributions = pool.founderContributions();
        double sumOfF = 0;
        for (int animal : pool.animals()) {
            sumOfF += pedigree.inbreeding(animal);
        }
        double highest = Arrays.stream(pedigree.inbreeding()).max().orElseThrow();
        long inbred = Arrays.stream(pedigree.inbreeding()).filter(f -> f > 0).count();

        var found = new HashMap<String, DoubleSupplier>();
        double meanF = sumOfF / pool.size();
        found.put("n", pedigree::size);
        found.put("living", pool::size);
        found.put("meanF_living", () -> meanF);
        found.put("maxF", () -> highest);
        found.put("nInbred", () -> inbred);
        found.put("meanKinship", pool::meanKinship);
        found.put("geneDiversity", pool::geneDiversity);
        found.put("founderGenomeEquivalents", pool::founderGenomeEquivalents);
        found.put("founderEquivalents", contributions::effectiveFounders);
        found.put("foundersNamedContributing", () -> contributions.founders().length);
        found.put("contributionOfUnknown", contributions::unnamed);
        var summary = reference.summary();
        found.forEach(
                (quantity, value) -> agrees(quantity, value.getAsDouble(), String.valueOf(summary.get(quantity))));
    }

    private static void agrees(String what, double found, String printed) {
        double expected = Double.parseDouble(printed);
        assertThat(Math.abs(found - expected))
                .as("%s: %s, the libraries say %s", what, found, printed)
                .isLessThanOrEqualTo(expected < 1 ? TWELVE_DIGITS : NINE_DIGITS);
    }
}
