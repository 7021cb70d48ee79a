package org.demebook.sheet;

import static org.demebook.problem.ProblemType.UNREADABLE_SHEET;

import java.util.Arrays;
import java.util.List;
import org.demebook.problem.Refusal;

/** The texts of a spreadsheet as they stand there, whatever kind of file it was. */
public record Sheet(List<String> header, List<Line> lines) {
    static final String CSV = "text/csv";
    static final String EXCEL = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    static final int MOST_ROWS = 150_000;

    /**
     * A row with anything in it.
     *
     * @param row as the spreadsheet counts, the header being row 1
     */
    public record Line(int row, String[] cells) {
        boolean isBlank() {
            return Arrays.stream(cells).allMatch(String::isBlank);
        }
    }

    /**
     * Reads the texts of a file; refuses with UNREADABLE_SHEET.
     *
     * @param mediaType text/csv, or that of an Excel workbook
     */
    public static Sheet read(byte[] bytes, String mediaType) {
        if (bytes.length == 0) {
            throw empty();
        }
        return mediaType.startsWith(EXCEL) ? ExcelFile.read(bytes) : CsvFile.read(bytes);
    }

    static void add(List<Line> lines, Line line) {
        if (line.isBlank()) {
            return;
        }
        if (lines.size() == MOST_ROWS) {
            throw unreadable("The file has more than %d rows; send it in parts, parents first.".formatted(MOST_ROWS));
        }
        lines.add(line);
    }

    static Refusal empty() {
        return unreadable("The file is empty; its first row names the columns: %s.".formatted(Column.allHeaders()));
    }

    static Refusal unreadable(String sentence) {
        return new Refusal(UNREADABLE_SHEET, sentence);
    }
}
