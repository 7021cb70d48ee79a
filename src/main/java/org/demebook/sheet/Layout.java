package org.demebook.sheet;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Which column of a sheet stands where. */
final class Layout {
    private static final int HEADER = 1;

    private final Map<Column, Integer> placeOf = new EnumMap<>(Column.class);
    private final int columns;
    private final boolean[] named;

    private Layout(List<String> header) {
        columns = header.size();
        named = new boolean[columns];
    }

    static Layout of(List<String> header, Findings findings) {
        var layout = new Layout(header);
        for (int place = 0; place < header.size(); place++) {
            layout.put(place, header.get(place).strip(), header, findings);
        }
        if (!layout.placeOf.containsKey(Column.NUMBER) && !layout.placeOf.containsKey(Column.REFERENCE)) {
            findings.error(
                    HEADER,
                    (String) null,
                    null,
                    "There is no column \"reference\" and none \"number\", so no row says which animal it is about. Name the columns in the first row; known are %s."
                            .formatted(Column.allHeaders()));
        }
        return layout;
    }

    private void put(int place, String name, List<String> header, Findings findings) {
        named[place] = !name.isEmpty();
        var column = Column.of(name).orElse(null);
        if (column == null) {
            if (named[place]) {
                findings.warning(
                        HEADER,
                        name,
                        name,
                        "\"%s\" is no column of the register: what stands in it is kept nowhere. Rename it if it is one of %s."
                                .formatted(Findings.shortened(name), Column.allHeaders()));
            }
            return;
        }
        var before = placeOf.putIfAbsent(column, place);
        if (before != null) {
            findings.error(
                    HEADER,
                    column,
                    name,
                    "\"%s\" and \"%s\" both mean %s; delete or rename one of them."
                            .formatted(header.get(before).strip(), name, column.header()));
        }
    }

    /** The text of a cell as it is meant; empty when the sheet has no such column or the row ends before it. */
    String text(Sheet.Line line, Column column) {
        var place = placeOf.get(column);
        return place == null || place >= line.cells().length ? "" : Cells.read(line.cells()[place]);
    }

    /** Tells of values that stand under no header. */
    void checkWidth(Sheet.Line line, Findings findings) {
        var stray = stray(line.cells());
        if (stray != null) {
            findings.error(
                    line.row(),
                    (String) null,
                    stray,
                    "The row has a value where no column is named; is there a separator too many, in a text without quotation marks perhaps?");
        }
    }

    private @Nullable String stray(String[] cells) {
        for (int place = 0; place < cells.length; place++) {
            if ((place >= columns || !named[place]) && !cells[place].isBlank()) {
                return cells[place];
            }
        }
        return null;
    }
}
