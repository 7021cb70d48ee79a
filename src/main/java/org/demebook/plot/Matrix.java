package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;
import org.demebook.plot.Table.Cell;

/** Draws a matrix as cells of eight steps, and writes it as a table. */
final class Matrix {
    private static final int STEPS = 8;
    private static final int WITHHELD = STEPS;
    /** Up to so many a side, each cell also tells its value. */
    private static final int WITH_VALUES = 12;
    /** From so many a side on, names stand on all four sides. */
    private static final int NAMED_TWICE = 25;

    private static final double LONGEST_NAME = 120;
    private static final double BESIDE = 6;

    private final List<Name> rows;
    private final List<Name> columns;
    private final double[][] values;
    private final boolean symmetric;
    private final List<Double> steps;
    private final Measure measure;

    Matrix(
            List<Name> rows,
            List<Name> columns,
            double[][] values,
            boolean symmetric,
            List<Double> steps,
            Measure measure) {
        if (rows.size() > HeatMap.MOST || columns.size() > HeatMap.MOST) {
            throw new IllegalArgumentException("At most " + HeatMap.MOST + " a side can be read");
        }
        if (values.length != rows.size()) {
            throw new IllegalArgumentException(values.length + " rows of values for " + rows.size() + " names");
        }
        for (var row : values) {
            if (row.length != columns.size()) {
                throw new IllegalArgumentException(row.length + " values in a row for " + columns.size() + " names");
            }
            for (double value : row) {
                if (Double.isInfinite(value)) {
                    throw new IllegalArgumentException("A value is finite, or withheld");
                }
            }
        }
        if (steps.size() != STEPS - 1
                || !steps.stream().sorted().distinct().toList().equals(steps)) {
            throw new IllegalArgumentException("Seven values ascending at which a step begins, not " + steps);
        }
        this.rows = rows;
        this.columns = columns;
        this.values = values;
        this.symmetric = symmetric;
        this.steps = steps;
        this.measure = measure;
    }

    private int step(double value) {
        if (Double.isNaN(value)) {
            return WITHHELD;
        }
        return (int) steps.stream().filter(from -> value >= from).count();
    }

    List<Frame> frames() {
        if (rows.isEmpty() || columns.isEmpty()) {
            return List.of();
        }
        int most = Math.max(rows.size(), columns.size());
        boolean tellsValues = most <= WITH_VALUES;
        double side = tellsValues ? Math.max(34, widestValue() + 8) : most < NAMED_TWICE ? 20 : 16;
        double left = longest(rows) + BESIDE;
        double above = longest(columns) + BESIDE;
        double right = left + columns.size() * side;
        double below = above + rows.size() * side;
        var canvas = new Canvas();
        drawCells(canvas, left, above, side);
        drawGrid(canvas, left, above, side);
        drawNames(canvas, left, above, side, false);
        if (tellsValues) {
            drawValues(canvas, left, above, side);
        }
        if (most < NAMED_TWICE) {
            return List.of(canvas.frame("whole", right + 1, below + 1));
        }
        drawNames(canvas, right, below, side, true);
        return List.of(canvas.frame("whole", right + left, below + above));
    }

    private double widestValue() {
        double widest = 0;
        for (var row : values) {
            for (double value : row) {
                widest = Double.isNaN(value) ? widest : Math.max(widest, Letters.width(measure.write(value)));
            }
        }
        return widest;
    }

    private static double longest(List<Name> names) {
        double longest = names.stream()
                .mapToDouble(name -> Letters.width(name.text()))
                .max()
                .orElse(0);
        return Math.min(LONGEST_NAME, longest);
    }

    /** Neighbours of the same step in a row are one rectangle. */
    private void drawCells(Canvas canvas, double left, double above, double side) {
        var cells = new Outline[STEPS + 1];
        for (int step = 0; step <= WITHHELD; step++) {
            cells[step] = new Outline();
        }
        var hatch = new Outline();
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < columns.size(); ) {
                int step = step(values[row][column]);
                int end = column + 1;
                while (end < columns.size() && step(values[row][end]) == step) {
                    end++;
                }
                double x = left + column * side;
                double y = above + row * side;
                cells[step].rectangle(x, y, (end - column) * side, side);
                if (step == WITHHELD) {
                    hatch.hatch(x, y, (end - column) * side, side, 5);
                }
                column = end;
            }
        }
        for (int step = 0; step < WITHHELD; step++) {
            canvas.shape("k" + step, cells[step]);
        }
        canvas.shape("withheld", cells[WITHHELD]);
        canvas.shape("hatch", hatch);
    }

    private void drawGrid(Canvas canvas, double left, double above, double side) {
        var grid = new Outline();
        double right = left + columns.size() * side;
        double below = above + rows.size() * side;
        for (int row = 0; row <= rows.size(); row++) {
            grid.line(left, above + row * side, right, above + row * side);
        }
        for (int column = 0; column <= columns.size(); column++) {
            grid.line(left + column * side, above, left + column * side, below);
        }
        canvas.shape("between", grid);
    }

    /** To the left and above, or after the cells: to the right and below. */
    private void drawNames(Canvas canvas, double x, double y, double side, boolean after) {
        for (int row = 0; row < rows.size(); row++) {
            double middle = (after ? y - rows.size() * side : y) + (row + .5) * side + 4.5;
            var name = Letters.fit(rows.get(row).text(), LONGEST_NAME);
            canvas.text(after ? "" : "end", after ? x + BESIDE : x - BESIDE, middle, name);
        }
        for (int column = 0; column < columns.size(); column++) {
            double middle = (after ? x - columns.size() * side : x) + (column + .5) * side + 4.5;
            var name = Letters.fit(columns.get(column).text(), LONGEST_NAME);
            canvas.turned(after ? "end" : "", middle, after ? y + BESIDE : y - BESIDE, name);
        }
    }

    private void drawValues(Canvas canvas, double left, double above, double side) {
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < columns.size(); column++) {
                int step = step(values[row][column]);
                if (step != WITHHELD) {
                    canvas.text(
                            "mid " + (step < STEPS / 2 ? "on-low" : "on-high"),
                            left + (column + .5) * side,
                            above + (row + .5) * side + 4.5,
                            measure.write(values[row][column]));
                }
            }
        }
    }

    List<Key> keys(HeatMap.Words words) {
        var keys = new ArrayList<Key>();
        for (int step = 0; step < STEPS; step++) {
            var sample = new Canvas();
            sample.shape("k" + step, new Outline().rectangle(0, 0, Key.WIDTH, Key.HEIGHT));
            keys.add(new Key(sample.shapes(), range(step)));
        }
        for (var row : values) {
            for (double value : row) {
                if (Double.isNaN(value)) {
                    var sample = new Canvas();
                    sample.shape("withheld", new Outline().rectangle(0, 0, Key.WIDTH, Key.HEIGHT));
                    sample.shape("hatch", new Outline().hatch(0, 0, Key.WIDTH, Key.HEIGHT, 5));
                    keys.add(new Key(sample.shapes(), words.withheld()));
                    return List.copyOf(keys);
                }
            }
        }
        return List.copyOf(keys);
    }

    private String range(int step) {
        if (step == 0) {
            return "< " + measure.write(steps.get(0));
        }
        var from = "≥ " + measure.write(steps.get(step - 1));
        return step == STEPS - 1 ? from : from + ", < " + measure.write(steps.get(step));
    }

    /** A symmetric matrix tells the lower triangle, its diagonal included. */
    Table table(HeatMap.Words words) {
        var heads = new ArrayList<>(List.of(Cell.words(words.corner())));
        columns.forEach(column -> heads.add(Cell.number(column.text())));
        var table = new ArrayList<Table.Row>();
        for (int row = 0; row < rows.size(); row++) {
            var cells = new ArrayList<Cell>();
            for (int column = 0; column < columns.size(); column++) {
                double value = values[row][column];
                boolean told = !symmetric || column <= row;
                cells.add(Cell.number(!told ? "" : Double.isNaN(value) ? words.withheld() : measure.write(value)));
            }
            table.add(new Table.Row(rows.get(row), cells));
        }
        return new Table(heads, table);
    }
}
