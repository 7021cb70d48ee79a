package org.demebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The test vectors of docs/federation/vectors, by which somebody can check a node in another language. {@code
 * -Ddemebook.vectors=write} takes a wanted change of a format over.
 */
public final class Vectors {
    private static final Path FOLDER = Path.of("docs/federation/vectors");
    private static final ObjectMapper JSON = new ObjectMapper();

    private Vectors() {}

    /** The published vectors, once they are those that the code makes. */
    public static JsonNode reproduced(String name, ObjectNode made) {
        var file = FOLDER.resolve(name + ".json");
        var indent = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indent).withArrayIndenter(indent);
        try {
            var text = JSON.writer(printer).writeValueAsString(made) + "\n";
            if ("write".equals(System.getProperty("demebook.vectors"))) {
                Files.createDirectories(FOLDER);
                Files.writeString(file, text);
            }
            assertThat(Files.readString(file))
                    .as("%s; -Ddemebook.vectors=write takes a change over", file)
                    .isEqualTo(text);
            return JSON.readTree(text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
