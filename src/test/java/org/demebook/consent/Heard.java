package org.demebook.consent;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.zip.ZipInputStream;
import org.demebook.Colony;

/** What somebody is answered, as one text that can be compared. */
final class Heard {
    private static final ObjectMapper JSON = new ObjectMapper();

    private Heard() {}

    /** Status, headers and body, byte for byte; the body begins behind the first line. */
    static String answer(String asker, String address) {
        var response = Colony.as(asker).get(address);
        return response.statusCode() + " "
                + response.headers().toString().replace("\n", "; ") + "\n"
                + ("application/zip".equals(response.contentType())
                        ? files(response.asByteArray())
                        : new String(response.asByteArray(), StandardCharsets.ISO_8859_1));
    }

    /** A zip says when each of its files was written: their names and bytes without that. */
    private static String files(byte[] zip) {
        var files = new StringBuilder();
        try (var entries = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (var entry = entries.getNextEntry(); entry != null; entry = entries.getNextEntry()) {
                files.append(entry.getName())
                        .append('\n')
                        .append(new String(entries.readAllBytes(), StandardCharsets.ISO_8859_1));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files.toString();
    }

    /** The values of each field, wherever in a list it stands. */
    static Map<String, Set<String>> leaves(String answer) {
        var leaves = new HashMap<String, Set<String>>();
        try {
            gather(JSON.readTree(body(answer)), "", leaves);
        } catch (JsonProcessingException e) {
            throw new AssertionError(answer, e);
        }
        return leaves;
    }

    static String body(String answer) {
        return answer.substring(answer.indexOf('\n') + 1);
    }

    private static void gather(JsonNode node, String path, Map<String, Set<String>> leaves) {
        if (node.isObject()) {
            node.properties().forEach(field -> gather(field.getValue(), path + "." + field.getKey(), leaves));
        } else if (node.isArray()) {
            node.forEach(item -> gather(item, path + "[]", leaves));
        } else {
            leaves.computeIfAbsent(path, first -> new HashSet<>()).add(node.asText());
        }
    }
}
