package org.demebook.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;

/** Reads the first sheet of an Excel workbook (ISO/IEC 29500). */
final class ExcelFile {
    private static final long MOST_BYTES_UNPACKED = 256L << 20;
    // y, d and h stand in formats of days and hours only, once texts, colours and escaped signs are taken out
    private static final Pattern NO_DATE = Pattern.compile("\"[^\"]*\"|\\[[^\\]]*]|\\\\.|_.");
    private static final Pattern DATE = Pattern.compile("(?i).*[yd].*");

    private ExcelFile() {}

    static Sheet read(byte[] bytes) {
        requireModestSize(bytes);
        var lines = new ArrayList<Sheet.Line>();
        try (var workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, true));
                var rows = workbook.getFirstSheet().openStream()) {
            var header = List.<String>of();
            for (var row : (Iterable<Row>) rows::iterator) {
                var line = new Sheet.Line(row.getRowNum(), texts(row));
                if (line.row() == 1) {
                    header = List.of(line.cells());
                } else {
                    Sheet.add(lines, line);
                }
            }
            return new Sheet(header, lines);
        } catch (IOException | ExcelReaderException unreadable) {
            throw Sheet.unreadable(
                    "This is no Excel workbook (.xlsx), or a damaged one; save it again, or save it as CSV UTF-8.");
        }
    }

    /** A small file can unpack to more than the memory holds. */
    private static void requireModestSize(byte[] bytes) {
        long unpacked = 0;
        var block = new byte[1 << 16];
        try (var zip = ZipFile.builder().setByteArray(bytes).get()) {
            for (var entry : Collections.list(zip.getEntries())) {
                try (var content = zip.getInputStream(entry)) {
                    for (int read = content.read(block); read >= 0; read = content.read(block)) {
                        unpacked += read;
                        if (unpacked > MOST_BYTES_UNPACKED) {
                            throw Sheet.unreadable("The workbook is too large when it is unpacked; send it in parts.");
                        }
                    }
                }
            }
        } catch (IOException damaged) {
            throw Sheet.unreadable("This is no Excel workbook (.xlsx), or a damaged one; save it again.");
        }
    }

    private static String[] texts(Row row) {
        if (row.getCellCount() > Sheet.MOST_COLUMNS) {
            throw Sheet.unreadable("Row %d has more than %d columns; keep to the columns of the register: %s."
                    .formatted(row.getRowNum(), Sheet.MOST_COLUMNS, Column.allHeaders()));
        }
        var texts = new String[row.getCellCount()];
        for (int i = 0; i < texts.length; i++) {
            texts[i] = row.getOptionalCell(i).map(ExcelFile::text).orElse("");
        }
        return texts;
    }

    private static String text(Cell cell) {
        if (cell.getType() == CellType.NUMBER) {
            return isDate(cell) ? cell.asDate().toLocalDate().toString() : plain(cell.asNumber());
        }
        var raw = cell.getType() == CellType.FORMULA ? cell.getRawValue() : cell.getText();
        return raw == null ? "" : raw;
    }

    private static String plain(BigDecimal number) {
        return number.stripTrailingZeros().toPlainString();
    }

    private static boolean isDate(Cell cell) {
        var format = cell.getDataFormatString();
        if (format != null) {
            return DATE.matcher(NO_DATE.matcher(format).replaceAll("")).matches();
        }
        var id = cell.getDataFormatId();
        // the formats that need no text of their own: ECMA-376 part 1, 18.8.30
        return id != null && (id >= 14 && id <= 17 || id == 22 || id >= 27 && id <= 36 || id >= 50 && id <= 58);
    }
}
