package org.demebook.sheet;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/** As RFC 4180 has it: commas, lines that end in CR LF, UTF-8. */
final class CsvSheet implements SheetWriter {
    private final CSVPrinter printer;

    CsvSheet(OutputStream out) throws IOException {
        printer = new CSVPrinter(new OutputStreamWriter(out, StandardCharsets.UTF_8), CSVFormat.RFC4180);
    }

    @Override
    public void row(String[] cells) {
        try {
            printer.printRecord((Object[]) cells);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        printer.close();
    }
}
