package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Small pedigrees from books and papers. Each check names its source. */
class PublishedPedigreesTest {
    private static final int U = Pedigree.UNKNOWN;
    private static final Offset<Double> EXACT = within(1e-15);

    /** Parents by row; both unknown is a founder. */
    static Pedigree pedigree(int[] sires, int[] dams) {
        var builder = Pedigree.builder(sires.length);
        for (int row = 0; row < sires.length; row++) {
            if (sires[row] == U && dams[row] == U) {
                builder.founder(row);
            } else {
                builder.young(row, sires[row], dams[row]);
            }
        }
        return builder.build();
    }

    @Test
    void mrode_table_2_1() {
        // Mrode, Linear Models for the Prediction of Animal Breeding Values, 3rd ed., pp. 24-27; A recomputed with
        // nadiv.
        var pedigree = pedigree(new int[] {U, U, 0, 0, 3, 4}, new int[] {U, U, 1, U, 2, 1});
        double[][] a = {
            {1},
            {0, 1},
            {.5, .5, 1},
            {.5, 0, .25, 1},
            {.5, .25, .625, .625, 1.125},
            {.25, .625, .5625, .3125, .6875, 1.125}
        };
        int[] all = Reference.all(pedigree);
        double[][] kinship = pedigree.kinship(all, all);
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j <= i; j++) {
                assertThat(2 * kinship[i][j]).as("a %d %d", i + 1, j + 1).isEqualTo(a[i][j]);
                assertThat(2 * pedigree.kinship(i, j))
                        .as("a %d %d alone", i + 1, j + 1)
                        .isEqualTo(a[i][j]);
            }
        }
        assertThat(pedigree.inbreeding()).containsExactly(0, 0, 0, 0, .125, .125);
    }

    @Test
    void fernando_and_grossman_1990() {
        // Theor. Appl. Genet. 80: 75-80, Table 1, adapted; F recomputed with pedigreemm and nadiv.
        var pedigree = pedigree(new int[] {U, U, 0, 0, 2, 0, 4, 4}, new int[] {U, U, U, 1, 3, 3, 5, 5});
        assertThat(pedigree.inbreeding()).containsExactly(0, 0, 0, 0, .125, .25, .28125, .28125);
    }

    @Test
    void wray_1990() {
        // Biometrics 46: 177-186, adapted; F recomputed with pedigreemm and nadiv.
        var pedigree = pedigree(new int[] {U, U, 1, 1, 2, 1, 4, 4}, new int[] {U, U, 0, 0, 3, 3, 5, 6});
        assertThat(pedigree.inbreeding()).containsExactly(0, 0, 0, 0, .25, .25, .3125, .46875);
    }

    @Test
    void charles_ii_of_spain_is_almost_as_inbred_by_87_ancestors_as_by_3000() {
        // Alvarez, Ceballos & Quinteiro 2009, PLoS ONE 4: e5174: .254 from 16 generations. This pedigree, typed from
        // general history, is shorter and must stay below; its own values were recomputed with pedigreemm.
        var habsburg = Reference.read("habsburg");
        for (var line : Reference.lines("habsburg.F.csv")) {
            assertThat(habsburg.pedigree().inbreeding(habsburg.row(line[0])))
                    .as(line[0])
                    .isCloseTo(Double.parseDouble(line[1]), within(1e-10));
        }
        assertThat(habsburg.pedigree().inbreeding(habsburg.row("Charles II of Spain")))
                .isBetween(.246, .254);
    }

    @ParameterizedTest
    @CsvSource({
        // Falconer & Mackay 1996, ch. 5 (from memory), recomputed with pedigreemm: regular-systems.csv
        "full-sib",
        "selfing",
        "backcross-to-one-noninbred-sire",
        "parent-offspring-younger-parent"
    })
    void inbreeding_in_regular_systems_follows_the_textbook(String system) {
        var pedigree = regularSystem(system, 12);
        int checked = 0;
        for (var line : Reference.lines("regular-systems.csv")) {
            if (line[0].equals(system)) {
                int t = Integer.parseInt(line[1]);
                assertThat(pedigree.inbreeding(2 * t))
                        .as("%s %d", system, t)
                        .isCloseTo(Double.parseDouble(line[2]), EXACT);
                checked++;
            }
        }
        assertThat(checked).isEqualTo(12);
    }

    /** Animals 2t and 2t + 1 are those of generation t. */
    private static Pedigree regularSystem(String system, int generations) {
        var builder = Pedigree.builder(2 * generations + 2).founder(0).founder(1);
        for (int t = 1; t <= generations; t++) {
            int before = 2 * (t - 1);
            int sire =
                    switch (system) {
                        case "full-sib", "selfing" -> before;
                        case "backcross-to-one-noninbred-sire" -> 1;
                        default -> t == 1 ? 1 : before - 2;
                    };
            int dam = system.equals("full-sib") ? before + 1 : before;
            builder.young(2 * t, sire, dam).young(2 * t + 1, sire, dam);
        }
        return builder.build();
    }

    @Test
    void half_sibs_by_one_male_of_each_generation_follow_the_textbook() {
        // Falconer & Mackay 1996, ch. 5 (from memory): one male with females that are his half sisters.
        int generations = 7;
        int width = 1 << generations;
        var builder = Pedigree.builder((generations + 1) * 2 * width);
        for (int row = 0; row < 2 * width; row++) {
            builder.founder(row);
        }
        for (int t = 1; t <= generations; t++) {
            int before = (t - 1) * 2 * width;
            for (int i = 0; i < 2 * width; i++) {
                // The male is the first; every young has a dam of its own, as long as there are enough.
                builder.young(t * 2 * width + i, before, before + 1 + i % (2 * width - 1));
            }
        }
        var pedigree = builder.build();
        for (var line : Reference.lines("regular-systems.csv")) {
            if (line[0].equals("half-sib-one-male-many-females")) {
                int t = Integer.parseInt(line[1]);
                assertThat(pedigree.inbreeding(t * 2 * width + 1))
                        .as("generation %d", t)
                        .isCloseTo(Double.parseDouble(line[2]), within(1e-12));
            }
        }
    }

    @Test
    void kinship_of_common_relatives() {
        // Wright 1922, Am. Nat. 56: 330-338 (as in encyclopaedia text); recomputed with kinship2.
        //  0-3 founders; 4, 5 full sibs; 6 half sib of both by 0; 7, 8 founders; 9, 10 first cousins through 4 and 5;
        //  11, 12 founders; 13, 14 second cousins.
        var pedigree = pedigree(
                new int[] {U, U, U, U, 0, 0, 0, U, U, 4, 5, U, U, 9, 10},
                new int[] {U, U, U, U, 1, 1, 2, U, U, 7, 8, U, U, 11, 12});
        assertThat(pedigree.kinship(0, 4)).as("parent and young").isEqualTo(.25);
        assertThat(pedigree.kinship(4, 5)).as("full sibs").isEqualTo(.25);
        assertThat(pedigree.kinship(4, 6)).as("half sibs").isEqualTo(.125);
        assertThat(pedigree.kinship(4, 10)).as("uncle and niece").isEqualTo(.125);
        assertThat(pedigree.kinship(6, 10)).as("half uncle").isEqualTo(.0625);
        assertThat(pedigree.kinship(9, 10)).as("first cousins").isEqualTo(.0625);
        assertThat(pedigree.kinship(9, 14)).as("once removed").isEqualTo(.03125);
        assertThat(pedigree.kinship(13, 14)).as("second cousins").isEqualTo(.015625);
        assertThat(pedigree.kinship(4, 4)).as("itself").isEqualTo(.5);
        assertThat(pedigree.kinship(0, 3)).as("unrelated").isEqualTo(0);
    }

    @Test
    void fatherless_young_after_terminal_and_central_fusion() {
        // F = 1 - y(1 - F_dam) and F_dam + (y/2)(1 - F_dam); for y = 2/3 far from the centromere heterozygosity falls
        // by
        // a third in both: Pearcy, Hardy & Aron 2006 and their note of 2011, Heredity.
        var builder = Pedigree.builder(8).founder(0).founder(1).young(2, 0, 1).young(3, 2, 1);
        builder.parthenogen(4, 3, Fusion.TERMINAL, 0)
                .parthenogen(5, 3, Fusion.TERMINAL, 2. / 3)
                .parthenogen(6, 3, Fusion.CENTRAL, 2. / 3)
                .parthenogen(7, 3, Fusion.CENTRAL, 0);
        var pedigree = builder.build();
        double dam = .25;
        assertThat(pedigree.inbreeding(3)).isEqualTo(dam);
        assertThat(pedigree.inbreeding(4)).isEqualTo(1);
        assertThat(pedigree.inbreeding(5)).isCloseTo(1 - 2. / 3 * (1 - dam), EXACT);
        assertThat(pedigree.inbreeding(6)).isCloseTo(dam + (1 - dam) / 3, EXACT);
        assertThat(pedigree.inbreeding(7)).isCloseTo(dam, EXACT);
        assertThat(pedigree.kinship(4, 5)).as("two sisters").isCloseTo((1 + dam) / 2, EXACT);
        assertThat(pedigree.kinship(4, 0)).as("as the dam's").isEqualTo(pedigree.kinship(3, 0));
    }
}
