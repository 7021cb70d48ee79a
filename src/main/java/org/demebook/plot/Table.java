package org.demebook.plot;

import java.util.List;

/**
 * The figures of a plot, each once.
 *
 * @param heads one above the names of the rows, one above each of their cells
 */
public record Table(List<Cell> heads, List<Row> rows) {
    public record Row(Name name, List<Cell> cells) {}

    /**
     * @param number whether it is set like a number
     * @param columns how many columns it covers
     */
    public record Cell(String text, boolean number, int columns) {
        static Cell number(String text) {
            return new Cell(text, true, 1);
        }

        static Cell words(String text) {
            return new Cell(text, false, 1);
        }

        static Cell empty(int columns) {
            return new Cell("", false, columns);
        }

        public boolean wide() {
            return columns > 1;
        }
    }
}
