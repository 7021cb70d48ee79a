package org.demebook.kinship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Exact fractions for small pedigrees, from all outcomes of meiosis enumerated apart from this code:
 * {@code gene-drop-exact.csv}. Estimates must lie within four standard errors of them, 4·√(r(1 − r)/n).
 */
class GeneDropTest {
    private static final int LOCI = 40_000;
    private static final long SEED = 19_860_501;

    /** Births as "young sire dam", "?" unknown, "-" none; of the rest who is not told is a founder. */
    private record Story(Map<String, Integer> rows, Pedigree pedigree, List<String> living) {
        static Story of(String births, String living) {
            var rows = new HashMap<String, Integer>();
            String[] lines = births.split(", ");
            for (var line : lines) {
                for (var name : line.split(" ")) {
                    if (!name.equals("?") && !name.equals("-")) {
                        rows.putIfAbsent(name, rows.size());
                    }
                }
            }
            var builder = Pedigree.builder(rows.size());
            for (var line : lines) {
                tell(builder, rows, line.split(" "));
            }
            for (int row = 0; row < builder.animals; row++) {
                if (builder.kind[row] == 0) {
                    builder.founder(row);
                }
            }
            return new Story(rows, builder.build(), List.of(living.split(" ")));
        }

        private static void tell(PedigreeBuilder builder, Map<String, Integer> rows, String[] birth) {
            int young = rows.get(birth[0]);
            int sire = rows.getOrDefault(birth[1], Pedigree.UNKNOWN);
            int dam = rows.getOrDefault(birth[2], Pedigree.UNKNOWN);
            if (birth[1].equals("-")) {
                builder.parthenogen(young, dam, Fusion.TERMINAL, 0);
            } else {
                builder.young(young, sire, dam);
            }
        }

        GenePool pool() {
            return pedigree.pool(living.stream().mapToInt(rows::get).toArray());
        }
    }

    private static Story story(String name) {
        return switch (name) {
            case "g1-three-young" -> Story.of("x A B, y A B, z A B", "x y z");
            case "g2-founder-alive" -> Story.of("x A B, y A C, z A C", "A x y z");
            case "g3-fullsib-line" -> Story.of("c A B, d A B, e c d, f c d, p e f, q e f", "p q");
            case "g4-two-sires" -> Story.of("s A B, t B C, e A C, v s D, w t D, x s e, y t e, z v y", "v w x y z");
            case "g5-half-known" -> Story.of("x A ?, y A B, z y x, w y x", "z w y");
            case "g6-terminal-fusion-dam-only" -> Story.of("m A B, x - m, y - m, z A m", "x y z");
            default -> throw new IllegalArgumentException(name);
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "g1-three-young",
                "g2-founder-alive",
                "g3-fullsib-line",
                "g4-two-sires",
                "g5-half-known",
                "g6-terminal-fusion-dam-only"
            })
    void estimates_lie_within_four_standard_errors_of_the_exact_fractions(String name) {
        var story = story(name);
        var pool = story.pool();
        var drop = pool.geneDrop(LOCI, SEED);
        int checked = 0;
        for (var line : Reference.lines("gene-drop-exact.csv")) {
            if (line[0].equals(name)) {
                check(story, pool, drop, line[1], line[2], Double.parseDouble(line[4]));
                checked++;
            }
        }
        assertThat(checked).isGreaterThanOrEqualTo(8);
    }

    private static void check(Story story, GenePool pool, GeneDrop drop, String quantity, String id, double exact) {
        switch (quantity) {
            case "retention" -> {
                var estimate = id.startsWith("?dam:")
                        ? drop.retentionOfUnnamedParent(story.rows.get(id.substring(5)))
                        : drop.retention(story.rows.get(id));
                agrees(quantity + " " + id, estimate.value(), exact, LOCI);
                assertThat(estimate.standardError()).isLessThanOrEqualTo(Math.sqrt(.25 / LOCI) * 1.01);
            }
            case "genomeUniqueness" ->
                agrees(quantity + " " + id, drop.genomeUniqueness()[story.living.indexOf(id)].value(), exact, LOCI);
            case "F" ->
                assertThat(story.pedigree.inbreeding(story.rows.get(id))).isEqualTo(exact);
            case "meanAllelesRetained" -> assertThat(drop.meanGenesKept()).isCloseTo(exact, within(.02));
            case "geneDiversity" -> {
                assertThat(pool.geneDiversity()).isCloseTo(exact, within(1e-15));
                var estimate = drop.geneDiversity();
                assertThat(Math.abs(estimate.value() - exact))
                        .as("seed %d: %s", SEED, estimate)
                        .isLessThanOrEqualTo(4 * estimate.standardError());
            }
            default -> throw new IllegalArgumentException(quantity);
        }
    }

    private static void agrees(String what, double found, double exact, int loci) {
        assertThat(Math.abs(found - exact))
                .as("seed %d: %s is %s, exactly %s", SEED, what, found, exact)
                .isLessThanOrEqualTo(4 * Math.sqrt(exact * (1 - exact) / loci));
    }

    @Test
    void genome_equivalents_by_retention_are_not_those_by_coancestry() {
        // Two founders, three young: 7/8 of each founder's genes are left. 1/Σ(p²/r) = 1.75, 1/(2·mean kinship) = 1.5.
        var pool = story("g1-three-young").pool();
        assertThat(pool.geneDrop(LOCI, SEED).founderGenomesByRetention()).isCloseTo(1.75, within(.01));
        assertThat(pool.founderGenomeEquivalents()).isCloseTo(1.5, within(1e-15));
    }

    @Test
    void an_animal_alone_is_one_genome_whoever_its_parents_may_have_been() {
        // By the formula of Lacy (1989): a parent gave one gene of its two, so p = r = ½ of each, and Σp²/r = 1. A sire
        // who is one of several has both p and r in proportion to his chance, and so has the stranger.
        int unknown = Pedigree.UNKNOWN;
        var builder =
                Pedigree.builder(8).founder(0).founder(1).unknownParents(2).founder(3);
        builder.young(4, 0, 1).young(5, unknown, 2);
        builder.youngOfOneOf(6, new int[] {0, 1, 3}, new double[] {.5, .25, .25}, 2);
        builder.youngOfOneOf(7, new int[] {0, 1}, new double[] {.5, .25}, 2);
        var pedigree = builder.build();
        for (int animal : new int[] {0, 4, 5, 6, 7}) {
            assertThat(pedigree.pool(animal).geneDrop(LOCI, SEED).founderGenomesByRetention())
                    .as("%d", animal)
                    .isCloseTo(1, within(.01));
        }
    }

    @Test
    void a_founder_with_three_young_is_lost_at_one_locus_in_eight_by_each_gene() {
        // One gene through k young is kept with 1 − (1/2)^k. Both are lost only if all three got neither: never.
        var story = story("g1-three-young");
        var drop = story.pool().geneDrop(LOCI, SEED);
        assertThat(drop.lost(story.rows.get("A")).value()).isZero();
        var one = story("g2-founder-alive");
        var fromOne = one.pool().geneDrop(LOCI, SEED);
        assertThat(fromOne.lost(one.rows.get("B")).value()).isZero();
        assertThat(fromOne.retention(one.rows.get("A")).value()).isEqualTo(1);
    }

    @Test
    void mean_diversity_of_dropped_genes_is_one_minus_mean_kinship_for_every_kind_of_birth() {
        for (long seed = 1; seed <= 8; seed++) {
            var made = new RandomPedigree(seed, 60, 6);
            var pool = made.told(made.rowsAsMade()).pool(IntStream.range(40, 60).toArray());
            var estimate = pool.geneDrop(20_000, seed).geneDiversity();
            assertThat(Math.abs(estimate.value() - pool.geneDiversity()))
                    .as("seed %d: %s, exactly %s", seed, estimate, pool.geneDiversity())
                    .isLessThanOrEqualTo(4.5 * estimate.standardError());
        }
    }

    @Test
    void the_number_of_threads_changes_nothing() throws ExecutionException, InterruptedException {
        var pool = Reference.read("p2-overlap");
        var living = pool.pedigree().pool(pool.living());
        var one = figures(new ForkJoinPool(1), living);
        assertThat(figures(new ForkJoinPool(5), living)).isEqualTo(one);
    }

    private static String figures(ForkJoinPool threads, GenePool pool) throws ExecutionException, InterruptedException {
        try {
            var drop = threads.submit(() -> pool.geneDrop(1_000, SEED)).get();
            return drop.geneDiversity() + " " + drop.meanGenesKept() + " " + drop.founderGenomesByRetention()
                    + Arrays.toString(drop.genomeUniqueness());
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void another_seed_gives_another_estimate() {
        var pool = story("g4-two-sires").pool();
        assertThat(pool.geneDrop(999, 1).geneDiversity())
                .isEqualTo(pool.geneDrop(999, 1).geneDiversity());
        assertThat(pool.geneDrop(999, 1).geneDiversity())
                .isNotEqualTo(pool.geneDrop(999, 2).geneDiversity());
    }

    @Test
    void an_inbred_founder_brings_fewer_distinct_genes() {
        var builder = Pedigree.builder(3).founder(0, .5).founder(1).young(2, 0, 1);
        var pool = builder.build().pool(0);
        var drop = pool.geneDrop(LOCI, SEED);
        assertThat(drop.meanGenesKept()).isCloseTo(1.5, within(.02));
        assertThat(drop.retention(0).value()).isCloseTo(1, within(.02));
        assertThat(drop.retention(1).value()).isZero();
        assertThat(drop.lost(1).value()).isEqualTo(1);
    }

    @Test
    void retention_is_a_figure_of_founders() {
        var story = story("g1-three-young");
        var drop = story.pool().geneDrop(16, SEED);
        assertThatIllegalArgumentException().isThrownBy(() -> drop.retention(story.rows.get("x")));
        assertThatIllegalArgumentException().isThrownBy(() -> drop.retentionOfUnnamedParent(story.rows.get("x")));
    }
}
