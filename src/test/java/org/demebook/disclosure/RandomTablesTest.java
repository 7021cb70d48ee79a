package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Random tables, attacked from each keeper's view; {@code -Dthorough} takes twenty times as many. */
class RandomTablesTest {
    private static final Rules RULES = new Rules(3, 20);
    private static final String WHO = "ABCDEFGHIJKL";

    /** A random table and what is in it, as plain numbers. */
    private static final class Table {
        final String[] rows;
        final String[] columns;
        /** By keeper, row, column. */
        final int[][][] shares;

        final Tally tally;

        Table(Random random, int mostRows, int mostColumns) {
            rows = names("r", 2 + random.nextInt(mostRows - 1));
            columns = names("c", 2 + random.nextInt(mostColumns - 1));
            int keepers = 1 + random.nextInt(WHO.length());
            shares = new int[keepers][rows.length][columns.length];
            double filled = random.nextDouble();
            var cells = new LinkedHashMap<String, String>();
            for (int i = 0; i < rows.length; i++) {
                for (int j = 0; j < columns.length; j++) {
                    var text = new StringBuilder();
                    for (int k = 0; k < keepers; k++) {
                        if (random.nextDouble() < filled) {
                            shares[k][i][j] = 1 + (int) Math.floor(Math.pow(random.nextDouble(), 3) * 12);
                            text.append(text.isEmpty() ? "" : " ")
                                    .append(WHO.charAt(k))
                                    .append(shares[k][i][j]);
                        }
                    }
                    cells.put(rows[i] + "·" + columns[j], text.toString());
                }
            }
            tally = Regions.tally(cells);
        }

        private static String[] names(String prefix, int count) {
            return IntStream.range(0, count).mapToObj(i -> prefix + i).toArray(String[]::new);
        }

        int share(int keeper, int row, int column) {
            int share = 0;
            for (int i = 0; i < rows.length; i++) {
                for (int j = 0; j < columns.length; j++) {
                    if ((row == rows.length || row == i) && (column == columns.length || column == j)) {
                        share += shares[keeper][i][j];
                    }
                }
            }
            return share;
        }

        int all(int row, int column) {
            int all = 0;
            for (int keeper = 0; keeper < shares.length; keeper++) {
                all += share(keeper, row, column);
            }
            return all;
        }

        int[][] values() {
            int[][] values = new int[rows.length][columns.length];
            for (var mine : shares) {
                for (int i = 0; i < rows.length; i++) {
                    for (int j = 0; j < columns.length; j++) {
                        values[i][j] += mine[i][j];
                    }
                }
            }
            return values;
        }
    }

    @Test
    void no_keeper_and_not_the_public_narrows_a_sensitive_count_to_less_than_it_needs() {
        int tables = System.getProperty("thorough") != null ? 20_000 : 1_000;
        int sensitive = 0;
        for (long seed = 0; seed < tables; seed++) {
            var table = new Table(new Random(seed), 4, 4);
            var withheld = Regions.withheld(Suppression.choose(List.of(), table.tally, RULES));
            sensitive += attack(table, withheld, "seed " + seed);
        }
        assertThat(sensitive).isGreaterThan(tables);
    }

    @Test
    void the_audit_agrees_with_the_intruder_on_patterns_that_are_safe_and_on_some_that_are_not() {
        int safe = 0;
        int patterns = 0;
        for (long seed = 0; seed < 60; seed++) {
            var random = new Random(seed);
            var table = new Table(random, 3, 3);
            var withheld = Regions.withheld(Suppression.choose(List.of(), table.tally, RULES));
            assertThat(audit(table, withheld)).as("seed %d, as chosen", seed).isTrue();
            for (var figure : Set.copyOf(withheld)) {
                if (random.nextInt(3) == 0) {
                    withheld.remove(figure);
                }
            }
            boolean isSafe = isSafe(table, withheld);
            assertThat(audit(table, withheld)).as("seed %d, %s", seed, withheld).isEqualTo(isSafe);
            safe += isSafe ? 1 : 0;
            patterns++;
        }
        assertThat(safe).isBetween(5, patterns - 5);
    }

    @Test
    void of_all_safe_patterns_the_lightest_is_chosen() {
        for (long seed = 0; seed < 25; seed++) {
            var table = new Table(new Random(seed), 2, 3);
            var chosen = Suppression.choose(List.of(), table.tally, RULES);
            var figures = table.tally.plan().figures();
            int lightest = Integer.MAX_VALUE;
            for (int pattern = 0; pattern < 1 << figures.size(); pattern++) {
                int bits = pattern;
                var withheld = IntStream.range(0, figures.size())
                        .filter(f -> (bits >> f & 1) == 1)
                        .mapToObj(figures::get)
                        .toList();
                int weight = withheld.stream().mapToInt(table.tally::value).sum();
                if (weight < lightest
                        && isSafe(table, withheld.stream().map(Figure::name).collect(Collectors.toSet()))) {
                    lightest = weight;
                }
            }
            assertThat(Regions.suppressed(chosen)).as("seed %d", seed).isEqualTo(lightest);
        }
    }

    @Test
    void the_same_table_gives_the_same_pattern_every_time() {
        for (long seed = 0; seed < 20; seed++) {
            var first = Suppression.choose(List.of(), new Table(new Random(seed), 4, 4).tally, RULES);
            var second = Suppression.choose(List.of(), new Table(new Random(seed), 4, 4).tally, RULES);
            assertThat(second.told()).isEqualTo(first.told());
        }
    }

    // ── what is asked, written apart from the rules of the house ─────────────────────────────────────────────────────

    private static boolean audit(Table table, Set<String> withheld) {
        var release = Regions.withholding(table.tally, withheld.toArray(String[]::new));
        return Audit.of(List.of(), release, RULES).passed();
    }

    private static boolean isSafe(Table table, Set<String> withheld) {
        try {
            attack(table, withheld, "");
            return true;
        } catch (AssertionError found) {
            return false;
        }
    }

    /** Attacks every sensitive cell and total from every view; how many are sensitive. */
    private static int attack(Table table, Set<String> names, String what) {
        int keepers = table.shares.length;
        var withheld = Intruder.withheld(names, table.rows, table.columns);
        int[][] values = table.values();
        int sensitive = 0;
        for (int i = 0; i <= table.rows.length; i++) {
            for (int j = 0; j <= table.columns.length; j++) {
                int[] needs = needs(table, i, j);
                int all = table.all(i, j);
                if (needs[0] + needs[1] == 0) {
                    continue;
                }
                sensitive++;
                for (int keeper = -1; keeper < keepers; keeper++) {
                    var own = keeper < 0 ? new int[table.rows.length][table.columns.length] : table.shares[keeper];
                    var intruder = new Intruder(values, own, withheld);
                    int mine = keeper < 0 ? 0 : table.share(keeper, i, j);
                    if (intruder.up(i, j) < needs[1] || intruder.down(i, j) < Math.min(needs[0], all - mine)) {
                        throw new AssertionError("%s: row %d, column %d is found out by %d, %s told"
                                .formatted(what, i, j, keeper, Arrays.deepToString(withheld)));
                    }
                }
            }
        }
        return sensitive;
    }

    /** Below and above: three keepers, 20 %, everything in one class. */
    private static int[] needs(Table table, int i, int j) {
        var amounts = IntStream.range(0, table.shares.length)
                .map(keeper -> table.share(keeper, i, j))
                .filter(share -> share > 0)
                .boxed()
                .sorted((a, b) -> b - a)
                .toList();
        if (amounts.isEmpty()) {
            return new int[] {0, 0};
        }
        int rest = amounts.stream().skip(2).mapToInt(Integer::intValue).sum();
        boolean dominated = 100 * rest < 20 * amounts.get(0);
        if (amounts.size() < 3 || dominated) {
            int need = Math.max(1, (int) Math.ceil((20 * amounts.get(0) - 100 * rest) / 100.0));
            return new int[] {need, need};
        }
        boolean inner = i < table.rows.length && j < table.columns.length;
        boolean alone = inner && (others(table, i, j, true) == 0 || others(table, i, j, false) == 0);
        return new int[] {alone ? 1 : 0, 0};
    }

    /** What else is in the row or in the column of a cell. */
    private static int others(Table table, int i, int j, boolean inRow) {
        int line = inRow ? table.all(i, table.columns.length) : table.all(table.rows.length, j);
        return line - table.all(i, j);
    }
}
