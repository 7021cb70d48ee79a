package org.demebook.sheet;

import org.demebook.problem.Finding.Level;
import org.jspecify.annotations.Nullable;

/**
 * One thing noticed in a sheet.
 *
 * @param row as the spreadsheet counts, the header being row 1; absent when it is about the whole
 * @param column by its canonical name, or as it was headed when it is unknown; absent when it is about the whole row
 * @param value what stood there, shortened; absent when nothing stood there
 * @param level an error refuses the whole import; a warning does not
 * @param message what is wrong and what to do
 */
public record SheetFinding(
        @Nullable Integer row,
        @Nullable String column,
        @Nullable String value,
        Level level,
        String message) {}
