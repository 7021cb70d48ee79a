package org.demebook.sheet;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.demebook.problem.Finding;
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
        keep(row, Finding.error(column, value, message));
    }

    void error(int row, Column column, @Nullable Object value, String message) {
        error(row, column.header(), value, message);
    }

    void warning(@Nullable Integer row, @Nullable String column, @Nullable Object value, String message) {
        tell(
                row,
                new Finding(Level.WARNING, null, column, value == null ? null : value.toString(), message, null, null));
    }

    /** A finding of the register's rules: what it refuses is an error here, what it tells a warning. */
    void tell(@Nullable Integer row, Finding finding) {
        if (finding.level() == Level.ERROR || finding.level() == Level.BLOCK) {
            errors++;
        } else {
            warnings++;
        }
        keep(row, finding);
    }

    private void keep(@Nullable Integer row, Finding finding) {
        if (shown.size() < Report.MOST_SHOWN) {
            var value = finding.value() == null ? null : shortened(finding.value());
            shown.add(new SheetFinding(
                    row,
                    finding.field(),
                    value,
                    finding.level() == Level.BLOCK ? Level.ERROR : finding.level(),
                    finding.message(),
                    finding.rule(),
                    finding.level() == Level.BLOCK,
                    finding.why(),
                    finding.likelier()));
        }
    }

    /** A value as it is quoted: never so long that it hides the sentence. */
    static String shortened(String value) {
        return value.length() <= LONGEST_VALUE ? value : value.substring(0, LONGEST_VALUE - 1) + "…";
    }

    /** By row; what refuses the whole stands before, and what is only to be known of the whole behind. */
    private static int place(SheetFinding finding) {
        return finding.row() != null ? finding.row() : finding.level() == Level.ERROR ? 0 : Integer.MAX_VALUE;
    }

    boolean hasErrors() {
        return errors > 0;
    }

    Report report(int rows, int wouldAdd, int alreadyKnown) {
        var byRow = new ArrayList<>(shown);
        byRow.sort(Comparator.comparing(Findings::place));
        return new Report(rows, wouldAdd, alreadyKnown, errors, warnings, byRow);
    }
}
