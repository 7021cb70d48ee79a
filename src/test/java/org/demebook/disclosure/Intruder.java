package org.demebook.disclosure;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Set;

/**
 * Somebody who wants to know a cell of a two-way table with totals, written apart from the code that it attacks.
 *
 * <p>A change of the withheld cells that leaves all that is told as it is goes round in the graph whose nodes are rows and
 * columns (those of the totals too) and whose arcs are the withheld cells: from the row to the column, for totals of rows and
 * columns back. How much a cell can grow is the largest flow from its column to its row over the other arcs (Ford &amp;
 * Fulkerson 1956, from memory); the integer and the fractional bound are the same.
 */
final class Intruder {
    private static final int UNLIMITED = 1_000_000;

    private final int rows;
    private final int columns;
    private final int[][] values;
    private final int[][] own;
    private final boolean[][] withheld;

    /**
     * @param values inner cells
     * @param own units of each inner cell that the intruder knows as their own
     * @param withheld with the totals as last row and column
     */
    Intruder(int[][] values, int[][] own, boolean[][] withheld) {
        rows = values.length;
        columns = values[0].length;
        this.values = values;
        this.own = own;
        this.withheld = withheld;
    }

    static boolean[][] withheld(Set<String> names, String[] rows, String[] columns) {
        var withheld = new boolean[rows.length + 1][columns.length + 1];
        for (int i = 0; i <= rows.length; i++) {
            for (int j = 0; j <= columns.length; j++) {
                var row = i == rows.length ? Regions.TOTAL : rows[i];
                var column = j == columns.length ? Regions.TOTAL : columns[j];
                withheld[i][j] =
                        names.contains(i == rows.length && j == columns.length ? Regions.TOTAL : row + "·" + column);
            }
        }
        return withheld;
    }

    /** By how much a cell or total can be more than it is; a large number where there is no bound. */
    int up(int i, int j) {
        if (!withheld[i][j]) {
            return 0;
        }
        return flow(i, j, head(i, j), tail(i, j));
    }

    /** By how much it can be less. */
    int down(int i, int j) {
        if (!withheld[i][j]) {
            return 0;
        }
        return Math.min(spare(i, j), flow(i, j, tail(i, j), head(i, j)));
    }

    private int tail(int i, int j) {
        return back(i, j) ? rows + 1 + j : i;
    }

    private int head(int i, int j) {
        return back(i, j) ? i : rows + 1 + j;
    }

    private boolean back(int i, int j) {
        return (i == rows) != (j == columns);
    }

    private int spare(int i, int j) {
        int spare = 0;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                if ((i == rows || i == r) && (j == columns || j == c)) {
                    spare += values[r][c] - own[r][c];
                }
            }
        }
        return spare;
    }

    private int flow(int withoutRow, int withoutColumn, int source, int sink) {
        int nodes = rows + columns + 2;
        int[][] capacity = new int[nodes][nodes];
        for (int i = 0; i <= rows; i++) {
            for (int j = 0; j <= columns; j++) {
                if (withheld[i][j] && !(i == withoutRow && j == withoutColumn)) {
                    capacity[tail(i, j)][head(i, j)] = UNLIMITED;
                    capacity[head(i, j)][tail(i, j)] = spare(i, j);
                }
            }
        }
        int flow = 0;
        while (flow < UNLIMITED) {
            int[] from = new int[nodes];
            Arrays.fill(from, -1);
            from[source] = source;
            var queue = new ArrayDeque<Integer>();
            queue.add(source);
            while (!queue.isEmpty() && from[sink] < 0) {
                int node = queue.remove();
                for (int next = 0; next < nodes; next++) {
                    if (from[next] < 0 && capacity[node][next] > 0) {
                        from[next] = node;
                        queue.add(next);
                    }
                }
            }
            if (from[sink] < 0) {
                return flow;
            }
            int bottleneck = UNLIMITED;
            for (int node = sink; node != source; node = from[node]) {
                bottleneck = Math.min(bottleneck, capacity[from[node]][node]);
            }
            for (int node = sink; node != source; node = from[node]) {
                capacity[from[node]][node] -= bottleneck;
                capacity[node][from[node]] += bottleneck;
            }
            flow += bottleneck;
        }
        return UNLIMITED;
    }
}
