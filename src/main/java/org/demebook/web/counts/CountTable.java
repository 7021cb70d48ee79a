package org.demebook.web.counts;

import java.util.List;

/**
 * Counts as a table.
 *
 * @param rowHead above the names of the rows
 * @param columns above the cells of each row
 */
public record CountTable(String title, String rowHead, List<String> columns, List<Row> rows) {
    public record Row(String name, List<Cell> cells) {}

    /**
     * @param column the column's name, where cells stand below one another
     * @param count as it is told; empty where it is withheld, or where nothing of it was published
     * @param range what everybody can work out; empty unless it is withheld
     */
    public record Cell(String column, String count, String range) {
        static Cell none(String column) {
            return new Cell(column, "", "");
        }

        public boolean withheld() {
            return !range.isEmpty();
        }
    }
}
