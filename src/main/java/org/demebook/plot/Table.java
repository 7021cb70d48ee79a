package org.demebook.plot;

import java.util.List;

/**
 * The figures of a plot, each once.
 *
 * @param heads one above the names of the rows, one above each of their cells
 */
public record Table(List<Cell> heads, List<Row> rows) {
    public record Row(Name name, List<Cell> cells) {}

    /** @param number whether it is set like a number */
    public record Cell(String text, boolean number) {
        static Cell number(String text) {
            return new Cell(text, true);
        }

        static Cell words(String text) {
            return new Cell(text, false);
        }
    }
}
