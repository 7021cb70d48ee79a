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

    boolean isEmpty() {
        return rows.isEmpty() || columns.isEmpty();
    }

    private int most() {
        return Math.max(rows.size(), columns.size());
    }

    private double side() {
        if (most() <= WITH_VALUES) {
            return Math.max(34, widestValue() + 8);
        }
        return most() < NAMED_TWICE ? 20 : 16;
    }

    private double above() {
        return longest(columns) + BESIDE;
    }

    private double height() {
        double twice = most() < NAMED_TWICE ? 1 : above();
        return above() + rows.size() * side() + twice;
    }

    /** The cells, with the names of the columns, and of everything a second time if it is a long way. */
    Frame cells() {
        double side = side();
        double right = columns.size() * side + 1;
        var canvas = new Canvas();
        drawCells(canvas, above(), side);
        drawGrid(canvas, above(), side);
        drawColumnNames(canvas, above() - BESIDE, "");
        if (most() <= WITH_VALUES) {
            drawValues(canvas, above(), side);
        }
        if (most() < NAMED_TWICE) {
            return canvas.frame("whole", right, height());
        }
        drawColumnNames(canvas, above() + rows.size() * side + BESIDE, "end");
        drawRowNames(canvas, right + BESIDE, "");
        return canvas.frame("whole big", right + BESIDE + longest(rows), height());
    }

    /** What stands to the left of the cells, as high as they are. */
    Frame rowNames() {
        var canvas = new Canvas();
        double width = longest(rows) + BESIDE;
        drawRowNames(canvas, width - BESIDE, "end");
        return canvas.frame(most() < NAMED_TWICE ? "rows" : "rows big", width, height());
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
    private void drawCells(Canvas canvas, double above, double side) {
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
                double x = column * side;
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

    private void drawGrid(Canvas canvas, double above, double side) {
        var grid = new Outline();
        double right = columns.size() * side;
        double below = above + rows.size() * side;
        for (int row = 0; row <= rows.size(); row++) {
            grid.line(0, above + row * side, right, above + row * side);
        }
        for (int column = 0; column <= columns.size(); column++) {
            grid.line(column * side, above, column * side, below);
        }
        canvas.shape("between", grid);
    }

    private void drawRowNames(Canvas canvas, double x, String css) {
        for (int row = 0; row < rows.size(); row++) {
            canvas.text(
                    css,
                    x,
                    above() + (row + .5) * side() + 4.5,
                    Letters.fit(rows.get(row).text(), LONGEST_NAME));
        }
    }

    private void drawColumnNames(Canvas canvas, double y, String css) {
        for (int column = 0; column < columns.size(); column++) {
            canvas.turned(
                    css,
                    (column + .5) * side() + 4.5,
                    y,
                    Letters.fit(columns.get(column).text(), LONGEST_NAME));
        }
    }

    private void drawValues(Canvas canvas, double above, double side) {
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < columns.size(); column++) {
                int step = step(values[row][column]);
                if (step != WITHHELD) {
                    canvas.text(
                            "mid " + (step < STEPS / 2 ? "on-low" : "on-high"),
                            (column + .5) * side,
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
            int told = symmetric ? row + 1 : columns.size();
            for (int column = 0; column < told; column++) {
                double value = values[row][column];
                cells.add(Cell.number(Double.isNaN(value) ? words.withheld() : measure.write(value)));
            }
            if (told < columns.size()) {
                cells.add(Cell.empty(columns.size() - told));
            }
            table.add(new Table.Row(rows.get(row), cells));
        }
        return new Table(heads, table);
    }
}
