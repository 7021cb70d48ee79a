package org.demebook.sheet;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** Findings as CSV: to be sorted and ticked off beside the sheet that they are about. */
final class FindingsText {
    private FindingsText() {}

    static String of(Report report) {
        var text = new StringWriter();
        try (var printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord("row", "column", "level", "value", "message", "rule");
            for (var finding : report.findings()) {
                printer.printRecord(
                        finding.row(),
                        finding.column(),
                        finding.level().name().toLowerCase(Locale.ROOT),
                        Cells.write(Objects.requireNonNullElse(finding.value(), "")),
                        Cells.write(finding.message()),
                        finding.rule() == null ? null : finding.rule().word());
            }
            int left = report.errors() + report.warnings() - report.findings().size();
            if (left > 0) {
                printer.printRecord(null, null, null, null, "and %d more; mend these first".formatted(left), null);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
