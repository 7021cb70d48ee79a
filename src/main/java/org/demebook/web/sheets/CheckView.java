package org.demebook.web.sheets;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.demebook.problem.Finding.Level;
import org.demebook.problem.Rule;
import org.demebook.sheet.Column;
import org.demebook.sheet.Report;
import org.demebook.sheet.Sheet;
import org.demebook.sheet.SheetFinding;
import org.jspecify.annotations.Nullable;

/**
 * A checked sheet, as its page shows it.
 *
 * @param csv all of the sheet, to travel on; null when it is too large for that
 * @param whole what is noticed of no row
 * @param wrong rows that are in the way
 * @param moreWrong how many rows like these are not shown
 * @param notable rows with something to look at
 * @param moreNotable how many rows like these are not shown
 * @param leavable the rules that may be left as they are, those that are left already among them
 */
public record CheckView(
        Report report,
        @Nullable String csv,
        List<SheetFinding> whole,
        List<Row> wrong,
        int moreWrong,
        List<Row> notable,
        int moreNotable,
        List<Leavable> leavable) {
    private static final int MOST_WRONG = 60;
    private static final int MOST_NOTABLE = 30;
    /** Some 8 000 rows; more is mended in a spreadsheet, where so much can be seen. */
    private static final int LONGEST = 1_000_000;

    /**
     * @param row as the spreadsheet counts; 1 names the columns
     * @param label how its keeper knows the animal; empty when nothing says
     * @param cells where something is noticed, with it
     * @param others where nothing is noticed, when something is noticed of the row as a whole
     * @param findings about the row as a whole
     */
    public record Row(int row, String label, List<Cell> cells, List<Cell> others, List<SheetFinding> findings) {
        public boolean isHeader() {
            return row == 1;
        }
    }

    /**
     * @param name of its field
     * @param column as it is headed; empty when it is not
     * @param place counted from 1
     * @param text what stands in it
     */
    public record Cell(String name, String column, int place, String text, List<SheetFinding> findings) {
        public boolean isLong() {
            return text.length() > 60 || text.contains("\n");
        }

        public boolean isWrong() {
            return findings.stream().anyMatch(CheckView::isError);
        }
    }

    /** @param count how often the rule speaks against the sheet; 0 when it is left already */
    public record Leavable(Rule rule, int count) {
        public String reasonField() {
            return SheetForm.reason(rule.word());
        }
    }

    static CheckView of(Sheet checked, Report report, List<Rule> left) {
        var sheet = withNamedColumns(checked, report);
        Map<Integer, List<SheetFinding>> byRow = new TreeMap<>();
        var whole = new ArrayList<SheetFinding>();
        Map<Rule, Integer> leavable = new LinkedHashMap<>();
        left.forEach(rule -> leavable.put(rule, 0));
        for (var finding : report.findings()) {
            if (finding.row() == null) {
                whole.add(finding);
            } else {
                byRow.computeIfAbsent(finding.row(), row -> new ArrayList<>()).add(finding);
            }
            if (finding.mayBeLeft() && finding.rule() != null) {
                leavable.merge(finding.rule(), 1, Integer::sum);
            }
        }
        Map<Integer, Sheet.Line> lines = new LinkedHashMap<>();
        sheet.lines().forEach(line -> lines.put(line.row(), line));
        var wrong = new ArrayList<Row>();
        var notable = new ArrayList<Row>();
        int moreWrong = 0;
        int moreNotable = 0;
        for (var entry : byRow.entrySet()) {
            boolean inTheWay = entry.getValue().stream().anyMatch(CheckView::isError);
            if (inTheWay && wrong.size() == MOST_WRONG) {
                moreWrong++;
            } else if (!inTheWay && notable.size() == MOST_NOTABLE) {
                moreNotable++;
            } else {
                (inTheWay ? wrong : notable).add(row(sheet, lines, entry.getKey(), entry.getValue()));
            }
        }
        var csv = sheet.csv();
        return new CheckView(
                report,
                csv.length() > LONGEST ? null : csv,
                whole,
                wrong,
                moreWrong,
                notable,
                moreNotable,
                leavable.entrySet().stream()
                        .map(entry -> new Leavable(entry.getKey(), entry.getValue()))
                        .toList());
    }

    /** A cell can only be filled in a column that is there. */
    private static Sheet withNamedColumns(Sheet checked, Report report) {
        var sheet = checked;
        for (var finding : report.findings()) {
            var column = finding.row() == null || finding.row() == 1 || finding.column() == null
                    ? null
                    : Column.named(finding.column()).orElse(null);
            if (column != null && sheet.place(column.header()) < 0) {
                sheet = sheet.withColumn(column);
            }
        }
        return sheet;
    }

    private static Row row(Sheet sheet, Map<Integer, Sheet.Line> lines, int row, List<SheetFinding> findings) {
        var line = lines.get(row);
        var texts = line == null ? sheet.header() : List.of(line.cells());
        Map<Integer, List<SheetFinding>> byPlace = new TreeMap<>();
        var ofRow = new ArrayList<SheetFinding>();
        for (var finding : findings) {
            int place =
                    row == 1 ? headed(sheet, finding) : finding.column() == null ? -1 : sheet.place(finding.column());
            if (place < 0) {
                ofRow.add(finding);
            } else {
                byPlace.computeIfAbsent(place, some -> new ArrayList<>()).add(finding);
            }
        }
        var cells = byPlace.entrySet().stream()
                .map(entry -> cell(sheet, texts, row, entry.getKey(), entry.getValue()))
                .toList();
        var others = ofRow.isEmpty()
                ? List.<Cell>of()
                : IntStream.range(0, Math.max(texts.size(), sheet.header().size()))
                        .filter(place -> !byPlace.containsKey(place))
                        .mapToObj(place -> cell(sheet, texts, row, place, List.of()))
                        .toList();
        return new Row(row, row == 1 ? "" : label(sheet, texts), cells, others, ofRow);
    }

    /** Where the name of a column stands that is noticed; the last when it is there twice; -1 when it is there not at all. */
    private static int headed(Sheet sheet, SheetFinding finding) {
        return sheet.header().stream().map(String::strip).toList().lastIndexOf(finding.value());
    }

    private static Cell cell(Sheet sheet, List<String> texts, int row, int place, List<SheetFinding> findings) {
        return new Cell(
                SheetForm.cell(row, place),
                row == 1 ? "" : text(sheet.header(), place).strip(),
                place + 1,
                text(texts, place),
                findings);
    }

    private static String label(Sheet sheet, List<String> texts) {
        var reference = text(texts, sheet.place(Column.REFERENCE.header())).strip();
        return reference.isEmpty()
                ? text(texts, sheet.place(Column.NUMBER.header())).strip()
                : reference;
    }

    private static String text(List<String> texts, int place) {
        return place < 0 || place >= texts.size() ? "" : Objects.requireNonNullElse(texts.get(place), "");
    }

    private static boolean isError(SheetFinding finding) {
        return finding.level() == Level.ERROR;
    }

    /** Nothing is in the way. */
    public boolean isClean() {
        return !report.isRefused();
    }

    public boolean isLarge() {
        return csv == null;
    }
}
