package org.demebook.sheet;

import static org.demebook.problem.ProblemType.UNREADABLE_SHEET;

import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.demebook.problem.Refusal;

/** The texts of a spreadsheet as they stand there, whatever kind of file it was. */
public record Sheet(List<String> header, List<Line> lines) {
    static final String CSV = "text/csv";
    static final String EXCEL = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    static final int MOST_ROWS = 150_000;
    static final int MOST_COLUMNS = 200;
    // PKWARE APPNOTE 4.3.7, signature of a local file header
    private static final byte[] ZIP = {'P', 'K', 3, 4};

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

    /** The same of a file of which nobody said what it is: a workbook is a ZIP, everything else is read as text. */
    public static Sheet read(byte[] bytes) {
        return read(bytes, startsWith(bytes, ZIP) ? EXCEL : CSV);
    }

    private static boolean startsWith(byte[] bytes, byte[] mark) {
        return bytes.length >= mark.length && Arrays.equals(bytes, 0, mark.length, mark, 0, mark.length);
    }

    /**
     * Where a column stands, from 0; -1 when the sheet has none.
     *
     * @param column by its canonical name, or as it is headed
     */
    public int place(String column) {
        for (int place = 0; place < header.size(); place++) {
            var headed = header.get(place).strip();
            if (headed.equals(column)
                    || Column.of(headed)
                            .filter(known -> known.header().equals(column))
                            .isPresent()) {
                return place;
            }
        }
        return -1;
    }

    /** The same with a column more at the end, in which nothing stands yet. */
    public Sheet withColumn(Column column) {
        var longer = new ArrayList<>(header);
        longer.add(column.header());
        return new Sheet(longer, lines);
    }

    /** A cell that somebody wrote anew. The header is row 1, the first place is 0. */
    public record Place(int row, int place) {}

    /**
     * The same with some cells written anew and some rows left out; every other row keeps its number.
     *
     * @param cells of rows that are there; others are not looked at
     */
    public Sheet with(Map<Place, String> cells, Set<Integer> without) {
        var mended = new ArrayList<Line>();
        for (var line : lines) {
            if (!without.contains(line.row())) {
                mended.add(new Line(line.row(), mended(line.row(), line.cells(), cells)));
            }
        }
        return new Sheet(List.of(mended(1, header.toArray(String[]::new), cells)), mended);
    }

    private static String[] mended(int row, String[] texts, Map<Place, String> cells) {
        var width = cells.keySet().stream()
                .filter(cell -> cell.row() == row && cell.place() < MOST_COLUMNS)
                .mapToInt(cell -> cell.place() + 1)
                .max()
                .orElse(0);
        var mended = Arrays.copyOf(texts, Math.max(width, texts.length));
        for (int place = 0; place < mended.length; place++) {
            var there = place < texts.length ? texts[place] : "";
            mended[place] = cells.getOrDefault(new Place(row, place), there);
        }
        return mended;
    }

    /** All of it as text, to be read again: each row keeps its number. */
    public String csv() {
        var text = new StringWriter();
        try (var printer = new CSVPrinter(text, CSVFormat.RFC4180)) {
            printer.printRecord(header);
            int row = 1;
            for (var line : lines) {
                while (++row < line.row()) {
                    printer.println();
                }
                printer.printRecord((Object[]) line.cells());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
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
