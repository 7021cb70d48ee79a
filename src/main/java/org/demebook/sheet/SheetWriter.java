package org.demebook.sheet;

import java.io.Closeable;
import java.util.Arrays;

/** Writes a sheet row by row. */
interface SheetWriter extends Closeable {
    void row(String[] cells);

    default void header() {
        row(Arrays.stream(Column.values()).map(Column::header).toArray(String[]::new));
    }
}
