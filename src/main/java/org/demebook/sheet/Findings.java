package org.demebook.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.demebook.problem.Finding.Level;
import org.jspecify.annotations.Nullable;

/** Collects what is noticed in a sheet: counts everything, keeps the first {@value Report#MOST_SHOWN}. */
final class Findings {
    private static final int LONGEST_VALUE = 80;

    private final List<SheetFinding> shown = new ArrayList<>();
    private int errors;
    private int warnings;

    void error(@Nullable Integer row, @Nullable String column, @Nullable Object value, String message) {
        errors++;
        keep(row, column, value, Level.ERROR, message);
    }

    void error(int row, Column column, @Nullable Object value, String message) {
        error(row, column.header(), value, message);
    }

    void warning(@Nullable Integer row, @Nullable String column, @Nullable Object value, String message) {
        warnings++;
        keep(row, column, value, Level.WARNING, message);
    }

    private void keep(
            @Nullable Integer row, @Nullable String column, @Nullable Object value, Level level, String message) {
        if (shown.size() < Report.MOST_SHOWN) {
            shown.add(
                    new SheetFinding(row, column, value == null ? null : shortened(value.toString()), level, message));
        }
    }

    /** A value as it is quoted: never so long that it hides the sentence. */
    static String shortened(String value) {
        return value.length() <= LONGEST_VALUE ? value : value.substring(0, LONGEST_VALUE - 1) + "…";
    }

    boolean hasErrors() {
        return errors > 0;
    }

    Report report(int rows, int wouldAdd, int alreadyKnown) {
        var byRow = new ArrayList<>(shown);
        byRow.sort(Comparator.comparing(SheetFinding::row, Comparator.nullsFirst(Comparator.naturalOrder())));
        return new Report(rows, wouldAdd, alreadyKnown, errors, warnings, byRow);
    }
}
