package org.demebook.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * In which row each animal stands: below all its parents, full siblings side by side, and as low as its young allow, so that
 * partners meet in one row where they can and no line is longer than it has to be.
 */
final class Rows {
    private static final int OPEN = Integer.MAX_VALUE;

    private final List<Figure> figures;
    private final List<Couple> couples;
    private final int[] row;

    private Rows(List<Figure> figures, List<Couple> couples) {
        this.figures = figures;
        this.couples = couples;
        this.row = new int[figures.size()];
    }

    /**
     * A row for each figure, 0 at the top, none empty.
     *
     * @throws IllegalArgumentException if somebody would be their own ancestor
     */
    static int[] of(List<Figure> figures, List<Couple> couples) {
        var rows = new Rows(figures, couples);
        rows.putBelowTheParents();
        rows.lowerTowardsTheYoung();
        return rows.withoutEmptyRows();
    }

    private void putBelowTheParents() {
        boolean moved = true;
        for (int round = 0; moved; round++) {
            moved = false;
            for (var couple : couples) {
                int below =
                        couple.parents().stream().mapToInt(it -> row[it]).max().orElseThrow() + 1;
                for (int young : couple.young()) {
                    if (row[young] < below) {
                        row[young] = below;
                        moved = true;
                    }
                }
            }
            if (round > figures.size()) {
                throw new IllegalArgumentException("%s would be an ancestor of its own".formatted(deepest()));
            }
        }
    }

    private String deepest() {
        int deepest = 0;
        for (int figure = 1; figure < row.length; figure++) {
            deepest = row[figure] > row[deepest] ? figure : deepest;
        }
        return figures.get(deepest).key();
    }

    /** The lowest sibship first: where its young stand is then final. */
    private void lowerTowardsTheYoung() {
        for (var sibship : sibships()) {
            int lowest = OPEN;
            for (int sibling : sibship) {
                for (var couple : couples) {
                    if (couple.parents().contains(sibling)) {
                        lowest = Math.min(lowest, row[couple.young().get(0)] - 1);
                    }
                }
            }
            if (lowest != OPEN) {
                for (int sibling : sibship) {
                    row[sibling] = lowest;
                }
            }
        }
    }

    private List<List<Integer>> sibships() {
        var sibships = new ArrayList<List<Integer>>();
        var born = new boolean[row.length];
        for (var couple : couples) {
            sibships.add(couple.young());
            couple.young().forEach(young -> born[young] = true);
        }
        for (int figure = 0; figure < row.length; figure++) {
            if (!born[figure]) {
                sibships.add(List.of(figure));
            }
        }
        sibships.sort(Comparator.comparingInt((List<Integer> sibship) -> -row[sibship.get(0)]));
        return sibships;
    }

    private int[] withoutEmptyRows() {
        var used = Arrays.stream(row).distinct().sorted().toArray();
        return Arrays.stream(row).map(it -> Arrays.binarySearch(used, it)).toArray();
    }
}
