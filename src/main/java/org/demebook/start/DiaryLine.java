package org.demebook.start;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;

/**
 * One line of a keeper's diary, as demo-data/README.md describes it; what is not told is empty.
 *
 * @param where file and line, to be found again
 * @param keeper sign-in name
 * @param what the verb
 */
record DiaryLine(
        String where,
        LocalDate on,
        String keeper,
        String what,
        String animal,
        String with,
        String value,
        String notes) {
    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setHeader("on", "keeper", "what", "animal", "with", "value", "notes")
            .setSkipHeaderRecord(true)
            .get();

    static List<DiaryLine> read(Path file) throws IOException {
        try (Reader reader = Files.newBufferedReader(file);
                var rows = CSVParser.parse(reader, FORMAT)) {
            var lines = new ArrayList<DiaryLine>();
            for (var row : rows) {
                lines.add(new DiaryLine(
                        // the header is a line too
                        "%s, line %d".formatted(file.getFileName(), row.getRecordNumber() + 1),
                        LocalDate.parse(row.get("on")),
                        row.get("keeper"),
                        row.get("what"),
                        row.get("animal"),
                        row.get("with"),
                        row.get("value"),
                        row.get("notes")));
            }
            return lines;
        }
    }

    /** The parts of the value that begin with a word, such as {@code until 2026-09-01} in {@code 30 days; until 2026-09-01}. */
    Optional<String> told(String word) {
        return parts(value, ";").stream()
                .filter(part -> part.startsWith(word + " "))
                .map(part -> part.substring(word.length() + 1).strip())
                .findFirst();
    }

    /** What stands before the first semicolon of the value. */
    String first() {
        var parts = parts(value, ";");
        return parts.isEmpty() ? "" : parts.get(0);
    }

    static List<String> parts(String text, String separator) {
        return Arrays.stream(text.split(separator))
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .toList();
    }
}
