package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Exact kinships, each averaged over all assignments of sires by kinship2 1.9.6.2; every case stands in
 * {@code uncertain-and-parthenogenesis.csv}. Candidates S1 .5, S2 .3, S3 .2.
 */
class UnknownSiresTest {
    private final Map<String, Integer> rows = new HashMap<>();
    private final PedigreeBuilder builder;

    UnknownSiresTest() {
        String[] names = "A B E C D S1 S2 S3 X k1 k2 k3 y z m1 U W t1 t2 t3 v t4 u".split(" ");
        for (var name : names) {
            rows.put(name, rows.size());
        }
        builder = Pedigree.builder(names.length);
        for (var founder : "A B E C D".split(" ")) {
            builder.founder(rows.get(founder));
        }
        young("S1", "A", "C");
        young("S2", "B", "C");
        young("S3", "A", "D");
        young("X", "A", "C");
    }

    @Test
    void young_of_one_unknown_sire_are_related_through_him() {
        int sire = builder.unknownSire(rows("S1 S2 S3"), new double[] {.5, .3, .2});
        for (var name : "k1 k2 k3".split(" ")) {
            builder.young(rows.get(name), sire, rows.get("X"));
        }
        young("y", "S3", "k1");
        young("z", "k2", "k3");
        assertThat(agreesWithEveryKinshipOf("one-unknown-sire-for-the-litter")).isEqualTo(105);
    }

    @Test
    void young_whose_sires_were_drawn_one_by_one_are_less_related() {
        for (var name : "k1 k2 k3".split(" ")) {
            builder.youngOfOneOf(rows.get(name), rows("S1 S2 S3"), new double[] {.5, .3, .2}, rows.get("X"));
        }
        young("y", "S3", "k1");
        young("z", "k2", "k3");
        assertThat(agreesWithEveryKinshipOf("independent-sire-per-young")).isEqualTo(105);
    }

    @Test
    void what_the_candidates_leave_over_is_a_male_unrelated_to_all() {
        // In the file this male is the founder U; here nobody names him, and all others must have the same kinship.
        litterBy(builder.unknownSire(rows("S1 S2"), new double[] {.6, .15}));
        rows.remove("U");
        assertThat(agreesWithEveryKinshipOf("unknown-remainder-0.25")).isEqualTo(91 - 13);
    }

    @Test
    void a_stranger_among_the_candidates_may_be_an_animal_too() {
        litterBy(builder.unknownSire(rows("S1 S2 U"), new double[] {.6, .15, .25}));
        assertThat(agreesWithEveryKinshipOf("unknown-remainder-0.25")).isEqualTo(91);
    }

    private void litterBy(int sire) {
        builder.young(rows.get("k1"), sire, rows.get("X"));
        builder.young(rows.get("k2"), sire, rows.get("X"));
        young("z", "k1", "k2");
    }

    @Test
    void fatherless_young_after_terminal_fusion_at_the_centromere_are_homozygous() {
        young("W", "S1", "X");
        parthenogen("t1", "X");
        parthenogen("t2", "W");
        parthenogen("t3", "W");
        young("v", "S2", "t2");
        parthenogen("t4", "t2");
        young("u", "t2", "t3");
        assertThat(agreesWithEveryKinshipOf("parthenogenesis-terminal-fusion-y0"))
                .isEqualTo(136);
    }

    @Test
    void a_later_litter_by_stored_sperm_is_related_through_the_chance_that_the_sire_is_the_same() {
        // Mean over all assignments: .2921875 when the second litter has the first one's sire with probability .7, else
        // E.
        int first = builder.unknownSire(rows("S1 S2 S3"), new double[] {.5, .3, .2});
        int second = builder.unknownSire(new int[] {first, rows.get("E")}, new double[] {.7, .3});
        builder.young(rows.get("k1"), first, rows.get("X"));
        builder.young(rows.get("m1"), second, rows.get("X"));
        assertThat(build().kinship(rows.get("k1"), rows.get("m1"))).isCloseTo(.2921875, within(1e-15));
    }

    @Test
    void a_hidden_sire_is_no_animal_of_the_pedigree() {
        int sire = builder.unknownSire(rows("S1 S2"), new double[] {.5, .5});
        builder.young(rows.get("k1"), sire, rows.get("X"));
        var pedigree = build();
        assertThat(pedigree.size()).isEqualTo(builder.animals);
        assertThat(pedigree.inbreeding()).hasSize(builder.animals);
        assertThat(pedigree.founderContributions(rows.get("k1")).founders())
                .containsExactly(rows.get("A"), rows.get("B"), rows.get("C"));
    }

    @Test
    void the_chance_of_a_stranger_is_an_unnamed_share() {
        int sire = builder.unknownSire(rows("S1 S2"), new double[] {.6, .15});
        builder.young(rows.get("k1"), sire, rows.get("X"));
        var contributions = build().founderContributions(rows.get("k1"));
        assertThat(contributions.unnamed()).isCloseTo(.125, within(1e-15));
    }

    private void young(String name, String sire, String dam) {
        builder.young(rows.get(name), rows.get(sire), rows.get(dam));
    }

    private void parthenogen(String name, String dam) {
        builder.parthenogen(rows.get(name), rows.get(dam), Fusion.TERMINAL, 0);
    }

    private int[] rows(String names) {
        return Arrays.stream(names.split(" ")).mapToInt(rows::get).toArray();
    }

    private Pedigree build() {
        for (int row = 0; row < builder.animals; row++) {
            if (builder.kind[row] == 0) {
                builder.unknownParents(row);
            }
        }
        return builder.build();
    }

    private int agreesWithEveryKinshipOf(String wanted) {
        var pedigree = build();
        int checked = 0;
        for (var line : Reference.lines("uncertain-and-parthenogenesis.csv")) {
            if (line[0].equals(wanted) && rows.containsKey(line[1]) && rows.containsKey(line[2])) {
                assertThat(pedigree.kinship(rows.get(line[1]), rows.get(line[2])))
                        .as("%s and %s", line[1], line[2])
                        .isCloseTo(Double.parseDouble(line[3]), within(1e-12));
                checked++;
            }
        }
        return checked;
    }
}
