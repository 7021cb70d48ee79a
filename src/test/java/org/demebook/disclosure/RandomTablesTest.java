package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.demebook.Thorough;
import org.junit.jupiter.api.Test;

/** Random tables, attacked from each keeper's view; {@code mvn -Pthorough verify} takes twenty times as many. */
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

        /** Whether a cell of the table (not a total) is the only one in its row, or in its column, that is not empty. */
        boolean isAlone(int i, int j, boolean inRow) {
            return i < rows.length
                    && j < columns.length
                    && all(i, j) > 0
                    && all(i, j) == (inRow ? all(i, columns.length) : all(rows.length, j));
        }

        boolean hidesAClass(int i, int j) {
            return isAlone(i, j, true) || isAlone(i, j, false);
        }

        /** Empty, and not beside a cell that has everything of a row or column. */
        boolean isAlwaysTold(String name) {
            for (int i = 0; i <= rows.length; i++) {
                for (int j = 0; j <= columns.length; j++) {
                    if (name(i, j).equals(name)) {
                        return all(i, j) == 0 && !isBesideOneThatIsAlone(i, j);
                    }
                }
            }
            throw new IllegalArgumentException(name);
        }

        private boolean isBesideOneThatIsAlone(int i, int j) {
            return i < rows.length
                    && j < columns.length
                    && (IntStream.range(0, columns.length).anyMatch(c -> isAlone(i, c, true))
                            || IntStream.range(0, rows.length).anyMatch(r -> isAlone(r, j, false)));
        }

        Set<String> mayBeWithheld() {
            return tally.plan().figures().stream()
                    .map(Figure::name)
                    .filter(name -> !isAlwaysTold(name))
                    .collect(Collectors.toSet());
        }

        private String name(int i, int j) {
            var row = i == rows.length ? Regions.TOTAL : rows[i];
            var column = j == columns.length ? Regions.TOTAL : columns[j];
            return i == rows.length && j == columns.length ? Regions.TOTAL : row + "·" + column;
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
        int tables = Thorough.size("demebook.tables", 1_000, 20_000);
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
                if (withheld.stream().anyMatch(figure -> table.isAlwaysTold(figure.name()))) {
                    continue;
                }
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

    /** Attacks every sensitive cell and total, and what is all in one class, from every view; how many there are. */
    private static int attack(Table table, Set<String> names, String what) {
        var withheld = Intruder.withheld(names, table.rows, table.columns);
        var most = Intruder.withheld(table.mayBeWithheld(), table.rows, table.columns);
        int sensitive = 0;
        for (int i = 0; i <= table.rows.length; i++) {
            for (int j = 0; j <= table.columns.length; j++) {
                int need = need(table, i, j);
                boolean hides = table.hidesAClass(i, j);
                if (need == 0 && !hides) {
                    continue;
                }
                sensitive++;
                for (int keeper = -1; keeper < table.shares.length; keeper++) {
                    var own = keeper < 0 ? new int[table.rows.length][table.columns.length] : table.shares[keeper];
                    var intruder = new Intruder(table.values(), own, withheld);
                    int mine = keeper < 0 ? 0 : table.share(keeper, i, j);
                    boolean found = need > 0
                            && (intruder.up(i, j) < need
                                    || intruder.down(i, j) < Math.min(need, table.all(i, j) - mine));
                    if (hides) {
                        found |= othersAreEmpty(table, i, j, intruder, new Intruder(table.values(), own, most));
                    }
                    if (found) {
                        throw new AssertionError("%s: row %d, column %d is found out by %d, %s withheld"
                                .formatted(what, i, j, keeper, names));
                    }
                }
            }
        }
        return sensitive;
    }

    /** Whether they find that a row or column has no other class, although that could be hidden. */
    private static boolean othersAreEmpty(Table table, int i, int j, Intruder intruder, Intruder atBest) {
        boolean found = false;
        if (table.isAlone(i, j, true)) {
            found = IntStream.range(0, table.columns.length).allMatch(c -> c == j || intruder.up(i, c) == 0)
                    && !IntStream.range(0, table.columns.length).allMatch(c -> c == j || atBest.up(i, c) == 0);
        }
        if (table.isAlone(i, j, false)) {
            found |= IntStream.range(0, table.rows.length).allMatch(r -> r == i || intruder.up(r, j) == 0)
                    && !IntStream.range(0, table.rows.length).allMatch(r -> r == i || atBest.up(r, j) == 0);
        }
        return found;
    }

    /** On both sides: three keepers, 20 %. */
    private static int need(Table table, int i, int j) {
        var amounts = IntStream.range(0, table.shares.length)
                .map(keeper -> table.share(keeper, i, j))
                .filter(share -> share > 0)
                .boxed()
                .sorted((a, b) -> b - a)
                .toList();
        if (amounts.isEmpty()) {
            return 0;
        }
        int rest = amounts.stream().skip(2).mapToInt(Integer::intValue).sum();
        boolean dominated = 100 * rest < 20 * amounts.get(0);
        return amounts.size() < 3 || dominated
                ? Math.max(1, (int) Math.ceil((20 * amounts.get(0) - 100 * rest) / 100.0))
                : 0;
    }
}
