package org.demebook.plot;

import java.util.List;

/**
 * A matrix in eight steps, such as the kinship of animals with each other.
 *
 * <p>All cells of a step are one path, so that a picture of 3 600 cells has some ten elements.
 *
 * @param cells at its own size
 * @param rowNames to the left of the cells; stays in sight while they scroll
 * @param keys what the steps mean, lowest first
 */
public record HeatMap(Caption caption, boolean empty, Frame rowNames, Frame cells, List<Key> keys, Table table) {
    public static final int MOST = 60;

    /** Where the second to the eighth step begin for kinships: 1/4 is full siblings, 1/8 half siblings. */
    public static final List<Double> KINSHIP_STEPS =
            List.of(1 / 64., 1 / 32., 1 / 16., 1 / 8., 3 / 16., 1 / 4., 1 / 2.);

    /**
     * @param corner stands above the names of the rows
     * @param withheld of a value that the reader may not see
     */
    public record Words(String corner, String withheld) {}

    /**
     * Animals with each other; the table tells each pair once.
     *
     * @param values symmetric; not a number where it is withheld
     * @param steps the seven values at which a further step begins, ascending
     * @throws IllegalArgumentException if the values are not as many as the names, not symmetric, or more than 60 a side
     */
    public static HeatMap symmetric(
            Caption caption, List<Name> names, double[][] values, List<Double> steps, Measure measure, Words words) {
        for (int row = 0; row < values.length; row++) {
            for (int column = 0; column < row; column++) {
                if (Double.compare(values[row][column], values[column][row]) != 0) {
                    throw new IllegalArgumentException("Not symmetric in row " + row + ", column " + column);
                }
            }
        }
        return draw(new Matrix(names, names, values, true, steps, measure), caption, words);
    }

    /** Some animals, a row each, with others, a column each; otherwise like {@link #symmetric}. */
    public static HeatMap of(
            Caption caption,
            List<Name> rows,
            List<Name> columns,
            double[][] values,
            List<Double> steps,
            Measure measure,
            Words words) {
        return draw(new Matrix(rows, columns, values, false, steps, measure), caption, words);
    }

    private static HeatMap draw(Matrix matrix, Caption caption, Words words) {
        return new HeatMap(
                caption, matrix.isEmpty(), matrix.rowNames(), matrix.cells(), matrix.keys(words), matrix.table(words));
    }
}
