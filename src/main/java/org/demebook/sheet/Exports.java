package org.demebook.sheet;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;

/** Sheets that go out. */
@ApplicationScoped
public class Exports {
    /** The kinds of file. */
    public enum Format {
        CSV(Sheet.CSV + ";charset=UTF-8"),
        XLSX(Sheet.EXCEL);

        final String mediaType;

        Format(String mediaType) {
            this.mediaType = mediaType;
        }

        public String mediaType() {
            return mediaType;
        }
    }

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    /**
     * All animals of a population in the columns of an import, by number: everything about those in the asker's
     * collections, identity and parentage of the others. The same register gives the same bytes.
     *
     * <p>The file is finished before its first byte is given, so that it is of one moment and never breaks off; it is
     * deleted when the stream is closed. Memory does not grow with the number of animals.
     */
    public InputStream export(Standing by, Format format, boolean mine) {
        try {
            var file = Files.createTempFile("export", "." + format);
            try {
                write(by, format, mine, file);
                return Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE);
            } catch (IOException | RuntimeException failed) {
                Files.deleteIfExists(file);
                throw failed;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A sheet with the names of all columns and nothing below: to begin a list with. */
    public byte[] empty(Format format) {
        var bytes = new ByteArrayOutputStream();
        try (var sheet = format == Format.CSV ? new CsvSheet(bytes) : new ExcelSheet(bytes)) {
            sheet.header();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private void write(Standing by, Format format, boolean mine, Path file) throws IOException {
        Map<UUID, String> labels = new HashMap<>();
        keepers.collections(by).forEach(collection -> labels.put(collection.id(), collection.label()));
        try (var out = new BufferedOutputStream(Files.newOutputStream(file));
                var sheet = format == Format.CSV ? new CsvSheet(out) : new ExcelSheet(out)) {
            sheet.header();
            animals.each(by, mine, animal -> sheet.row(AnimalRow.of(animal, labels)));
        }
    }
}
