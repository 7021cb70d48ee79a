package org.demebook.sheet;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** An Excel workbook of one sheet; every cell is text, so that no code is rounded and no date is guessed at. */
final class ExcelSheet implements SheetWriter {
    private static final int ROWS_IN_MEMORY = 1000;

    // ECMA-376 part 2 wants no moment of creation, and a zip cannot do without one
    private static final Pattern CREATED = Pattern.compile("<dcterms:created[^>]*>[^<]*</dcterms:created>");
    private static final LocalDateTime NO_MOMENT = LocalDateTime.of(1980, 1, 1, 0, 0);

    private final OutputStream out;
    private final Path dated;
    private final OutputStream datedOut;
    private final Workbook workbook;
    private final Worksheet sheet;
    private int row;

    ExcelSheet(OutputStream out) throws IOException {
        this.out = out;
        dated = Files.createTempFile("export", ".dated");
        datedOut = new BufferedOutputStream(Files.newOutputStream(dated));
        workbook = new Workbook(datedOut, "Demebook", "1.0");
        sheet = workbook.newWorksheet("animals");
        sheet.freezePane(0, 1);
    }

    @Override
    public void row(String[] cells) {
        for (int column = 0; column < cells.length; column++) {
            if (!cells[column].isEmpty()) {
                sheet.inlineString(row, column, cells[column]);
            }
        }
        try {
            if (++row % ROWS_IN_MEMORY == 0) {
                sheet.flush();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() throws IOException {
        try {
            workbook.close();
            datedOut.close();
            copyWithoutMoments();
        } finally {
            Files.delete(dated);
        }
    }

    /** The library writes down when it wrote; without that the same animals give the same bytes. */
    private void copyWithoutMoments() throws IOException {
        try (var from = new ZipFile(dated.toFile());
                var to = new ZipOutputStream(out)) {
            for (var entry : Collections.list(from.entries())) {
                var timeless = new ZipEntry(entry.getName());
                timeless.setTimeLocal(NO_MOMENT);
                to.putNextEntry(timeless);
                try (var content = from.getInputStream(entry)) {
                    if (entry.getName().equals("docProps/core.xml")) {
                        var core = new String(content.readAllBytes(), StandardCharsets.UTF_8);
                        to.write(CREATED.matcher(core).replaceAll("").getBytes(StandardCharsets.UTF_8));
                    } else {
                        content.transferTo(to);
                    }
                }
                to.closeEntry();
            }
        }
    }
}
