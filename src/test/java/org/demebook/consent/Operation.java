package org.demebook.consent;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * One operation of the committed contract.
 *
 * @param path as it stands there, with its parameters in braces
 * @param open whether it says that nobody has to be signed in
 */
record Operation(String id, String method, String path, boolean open) {
    private static final String BELOW = "/api/v1/populations/{population}";
    private static final Set<String> METHODS = Set.of("get", "head", "post", "put", "patch", "delete");
    private static final Pattern PARAMETER = Pattern.compile("\\{([^}]+)}");

    /** Every one, in the order of the contract. */
    static List<Operation> all() {
        var operations = new ArrayList<Operation>();
        for (var path : contract().path("paths").properties()) {
            for (var method : path.getValue().properties()) {
                if (METHODS.contains(method.getKey())) {
                    var operation = method.getValue();
                    var security = operation.get("security");
                    operations.add(new Operation(
                            operation.path("operationId").asText(),
                            method.getKey().toUpperCase(),
                            path.getKey(),
                            security != null && security.isEmpty()));
                }
            }
        }
        return operations;
    }

    private static JsonNode contract() {
        try {
            return new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Method and path, {@code ~} for a population: as a table of operations writes it. */
    String name() {
        return method + " " + path.replace(BELOW, "~");
    }

    boolean reads() {
        return method.equals("GET");
    }

    /** The names of what the path has in braces. */
    List<String> parameters() {
        return PARAMETER
                .matcher(path)
                .results()
                .map(parameter -> parameter.group(1))
                .toList();
    }

    /** Whether the path names something within a population, or the body or the query does. */
    boolean isAboutAThing() {
        return path.startsWith(BELOW) && parameters().size() > 1 || Bodies.NAMES_A_THING.contains(id);
    }
}
