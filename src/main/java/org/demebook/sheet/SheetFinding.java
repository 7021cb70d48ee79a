package org.demebook.sheet;

import org.demebook.problem.Finding.Level;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/**
 * One thing noticed in a sheet.
 *
 * @param row as the spreadsheet counts, the header being row 1; absent when it is about the whole
 * @param column by its canonical name, or as it was headed when it is unknown; absent when it is about the whole row
 * @param value what stood there, shortened; absent when nothing stood there
 * @param level an error refuses the whole import; a warning and a notice do not
 * @param message what is wrong and what to do
 * @param rule the rule of the catalogue; absent when it is about the sheet itself
 * @param mayBeLeft true of an error that the import may leave as it is, by its rule
 * @param why why the rule is there; absent without one
 * @param likelier which of the facts is likelier wrong; absent when nothing speaks for either
 */
public record SheetFinding(
        @Nullable Integer row,
        @Nullable String column,
        @Nullable String value,
        Level level,
        String message,
        @Nullable Rule rule,
        boolean mayBeLeft,
        @Nullable String why,
        @Nullable String likelier) {}
