package org.demebook.disclosure;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;

/** A random table on two dates, and the attack on what lies between; written apart from the code that it attacks. */
final class TwoDates {
    private static final String WHO = "ABCDEF";
    private static final String[] ROWS = {"north", "south", "west"};
    private static final String[] COLUMNS = {"x", "y"};

    /** By date, keeper, row, column. */
    private final int[][][][] shares = new int[2][WHO.length()][ROWS.length][COLUMNS.length];

    TwoDates(Random random) {
        for (int k = 0; k < WHO.length(); k++) {
            for (int i = 0; i < ROWS.length; i++) {
                for (int j = 0; j < COLUMNS.length; j++) {
                    int before = random.nextInt(4) == 0 ? 0 : 1 + random.nextInt(6);
                    int change = random.nextInt(4) > 0 ? 0 : random.nextInt(9) - 3;
                    shares[0][k][i][j] = before;
                    shares[1][k][i][j] = Math.max(0, before + change);
                }
            }
        }
    }

    Tally first() {
        return tally(0);
    }

    Tally second() {
        return tally(1);
    }

    private Tally tally(int date) {
        var cells = new LinkedHashMap<String, String>();
        for (int i = 0; i < ROWS.length; i++) {
            for (int j = 0; j < COLUMNS.length; j++) {
                var text = new StringBuilder();
                for (int k = 0; k < WHO.length(); k++) {
                    if (shares[date][k][i][j] > 0) {
                        text.append(text.isEmpty() ? "" : " ")
                                .append(WHO.charAt(k))
                                .append(shares[date][k][i][j]);
                    }
                }
                cells.put(ROWS[i] + "·" + COLUMNS[j], text.toString());
            }
        }
        return Regions.tally(cells);
    }

    /** Bounds of a change are those of its two ends, since nothing links the dates for who has only read. */
    void attack(Set<String> first, Set<String> second, String what) {
        for (int i = 0; i <= ROWS.length; i++) {
            for (int j = 0; j <= COLUMNS.length; j++) {
                int need = need(i, j);
                for (int k = -1; k < WHO.length(); k++) {
                    var before = intruder(0, k, first);
                    var after = intruder(1, k, second);
                    int spare = all(1, i, j) - (k < 0 ? 0 : share(1, k, i, j));
                    int up = after.up(i, j) + before.down(i, j);
                    int down = after.down(i, j) + before.up(i, j);
                    if (up < need || down < Math.min(need, spare + before.up(i, j))) {
                        throw new AssertionError(
                                "%s: the change in row %d, column %d is found out by %d; withheld %s, %s"
                                        .formatted(what, i, j, k, first, second));
                    }
                }
            }
        }
    }

    private Intruder intruder(int date, int keeper, Set<String> withheld) {
        int[][] values = new int[ROWS.length][COLUMNS.length];
        for (var mine : shares[date]) {
            for (int i = 0; i < ROWS.length; i++) {
                for (int j = 0; j < COLUMNS.length; j++) {
                    values[i][j] += mine[i][j];
                }
            }
        }
        var own = keeper < 0 ? new int[ROWS.length][COLUMNS.length] : shares[date][keeper];
        return new Intruder(values, own, Intruder.withheld(withheld, ROWS, COLUMNS));
    }

    /** Three keepers, 15 %. */
    private int need(int i, int j) {
        var amounts = IntStream.range(0, WHO.length())
                .map(k -> Math.abs(share(1, k, i, j) - share(0, k, i, j)))
                .filter(amount -> amount > 0)
                .sorted()
                .toArray();
        if (amounts.length == 0) {
            return 0;
        }
        int largest = amounts[amounts.length - 1];
        int rest = Arrays.stream(amounts, 0, Math.max(0, amounts.length - 2)).sum();
        int missing = 15 * largest - 100 * rest;
        return amounts.length < 3 || missing > 0 ? Math.max(1, (missing + 99) / 100) : 0;
    }

    private int all(int date, int row, int column) {
        return IntStream.range(0, WHO.length())
                .map(k -> share(date, k, row, column))
                .sum();
    }

    private int share(int date, int keeper, int row, int column) {
        int share = 0;
        for (int i = 0; i < ROWS.length; i++) {
            for (int j = 0; j < COLUMNS.length; j++) {
                if ((row == ROWS.length || row == i) && (column == COLUMNS.length || column == j)) {
                    share += shares[date][keeper][i][j];
                }
            }
        }
        return share;
    }
}
