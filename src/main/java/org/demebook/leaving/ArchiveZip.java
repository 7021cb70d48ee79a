package org.demebook.leaving;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** Writes files one behind the other into a zip, and at the end the list of their digests as {@code sha256sum -c} reads it. */
final class ArchiveZip implements AutoCloseable {
    private static final String SUMS = "SHA256SUMS";

    private final ZipOutputStream zip;
    private final ObjectMapper json;
    private final StringBuilder sums = new StringBuilder();

    ArchiveZip(OutputStream out, ObjectMapper json) {
        this.zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        this.json = json;
    }

    /** What writes the bytes of a file. */
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    void file(String name, Content content) {
        try {
            var sha256 = MessageDigest.getInstance("SHA-256");
            zip.putNextEntry(new ZipEntry(name));
            content.writeTo(new DigestOutputStream(new Open(zip), sha256));
            zip.closeEntry();
            sums.append(HexFormat.of().formatHex(sha256.digest()))
                    .append("  ")
                    .append(name)
                    .append('\n');
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void text(String name, String text) {
        file(name, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
    }

    void copy(String name, InputStream content) {
        file(name, out -> {
            try (content) {
                content.transferTo(out);
            }
        });
    }

    /** A JSON array of whatever is handed over, one by one. */
    void list(String name, Consumer<Consumer<Object>> items) {
        file(name, out -> {
            try (var array = json.getFactory().createGenerator(out)) {
                array.disable(JsonGenerator.Feature.FLUSH_PASSED_TO_STREAM);
                array.writeStartArray();
                items.accept(item -> write(array, item));
                array.writeEndArray();
            }
        });
    }

    void object(String name, Object value) {
        file(name, out -> out.write(json.writeValueAsBytes(value)));
    }

    private void write(JsonGenerator array, Object item) {
        try {
            array.writeRaw('\n');
            json.writeValue(array, item);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes the digests, and finishes the zip. */
    @Override
    public void close() throws IOException {
        zip.putNextEntry(new ZipEntry(SUMS));
        zip.write(sums.toString().getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
        zip.close();
    }

    /** A file's end is not the zip's. */
    private static final class Open extends FilterOutputStream {
        Open(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            out.write(bytes, offset, length);
        }

        @Override
        public void close() {}
    }
}
