package org.demebook.sheet;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reads text whose values are separated by commas, semicolons or tabs, quoted as in RFC 4180. */
final class CsvFile {
    private static final String SEPARATORS = ",;\t";

    private CsvFile() {}

    static Sheet read(byte[] bytes) {
        var text = withoutSeparatorLine(SheetText.of(bytes));
        if (text.isBlank()) {
            throw Sheet.empty();
        }
        var format = format(separator(text));
        var lines = new ArrayList<Sheet.Line>();
        try (var records = CSVParser.parse(new StringReader(text), format)) {
            var header = List.<String>of();
            for (var record : records) {
                if (record.getRecordNumber() == 1) {
                    header = List.of(record.values());
                } else {
                    Sheet.add(lines, line(record));
                }
            }
            return new Sheet(header, lines);
        } catch (IOException | UncheckedIOException malformed) {
            throw Sheet.unreadable("The file cannot be read any further: %s. Is a quotation mark missing there?"
                    .formatted(malformed.getMessage()));
        }
    }

    private static Sheet.Line line(CSVRecord record) {
        return new Sheet.Line((int) record.getRecordNumber(), record.values());
    }

    private static CSVFormat format(char separator) {
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(separator)
                .setIgnoreEmptyLines(false)
                .get();
    }

    /** Some spreadsheets write a first line {@code sep=;} for themselves. */
    private static String withoutSeparatorLine(String text) {
        if (!text.regionMatches(true, 0, "sep=", 0, 4)) {
            return text;
        }
        return text.substring(text.indexOf('\n') + 1);
    }

    /** The sign that cuts the first row into the most columns that we know, or else into the most columns. */
    private static char separator(String text) {
        char best = SEPARATORS.charAt(0);
        int bestScore = -1;
        for (char separator : SEPARATORS.toCharArray()) {
            try (var records = CSVParser.parse(new StringReader(text), format(separator))) {
                var header = List.of(records.iterator().next().values());
                int known = (int) header.stream()
                        .filter(name -> Column.of(name).isPresent())
                        .count();
                int score = known * 1000 + header.size();
                if (score > bestScore) {
                    best = separator;
                    bestScore = score;
                }
            } catch (IOException | UncheckedIOException malformed) {
                continue; // not cut by this sign; the one that is chosen tells what is wrong
            }
        }
        return best;
    }
}
