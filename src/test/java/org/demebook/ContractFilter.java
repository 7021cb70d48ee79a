package org.demebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.restassured.filter.Filter;
import io.restassured.filter.FilterContext;
import io.restassured.response.Response;
import io.restassured.specification.FilterableRequestSpecification;
import io.restassured.specification.FilterableResponseSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.demebook.peering.SecretWatch;

/**
 * Holds every answer of every test against the committed contract: its status is listed for the operation, its form too,
 * and where it is a problem, the problem's type.
 */
public final class ContractFilter implements Filter {
    private record Operation(Pattern path, int variables, String verb, JsonNode responses) {}

    private static final List<Operation> OPERATIONS = operations();

    @Override
    public Response filter(
            FilterableRequestSpecification request, FilterableResponseSpecification expected, FilterContext context) {
        var response = context.next(request, expected);
        var path = URI.create(request.getURI()).getRawPath();
        SecretWatch.requireNone(request.getMethod() + " " + path, response);
        OPERATIONS.stream()
                .filter(operation -> operation.verb.equalsIgnoreCase(request.getMethod())
                        && operation.path.matcher(path).matches())
                // of {sheet} and {sheet}.html the one that says more
                .min(Comparator.comparingInt(Operation::variables)
                        .thenComparing(operation -> -operation.path.pattern().length()))
                .ifPresent(operation -> check(operation, request.getMethod() + " " + path, response));
        return response;
    }

    private static void check(Operation operation, String what, Response response) {
        var listed = operation.responses.get(Integer.toString(response.statusCode()));
        if (response.statusCode() == 304) {
            return; // RFC 9110 gives it to every GET with an ETag
        }
        assertThat(listed)
                .as(
                        "%s answered %d, which the contract does not list: %s",
                        what, response.statusCode(), response.asString())
                .isNotNull();
        if (response.statusCode() >= 400) {
            assertThat(response.contentType()).as(what).startsWith("application/problem+json");
            var types = StreamSupport.stream(listed.get("x-problem-types").spliterator(), false)
                    .map(JsonNode::asText)
                    .toList();
            assertThat(types)
                    .as("problem types of %s in the contract", what)
                    .contains(response.path("type").toString());
        } else if (listed.has("content")
                && response.contentType() != null
                && !response.contentType().isEmpty()) {
            var forms = new ArrayList<String>();
            listed.get("content").fieldNames().forEachRemaining(forms::add);
            assertThat(forms)
                    .as("forms of %s in the contract", what)
                    .anyMatch(form ->
                            form.split(";")[0].equals(response.contentType().split(";")[0]));
        }
    }

    private static List<Operation> operations() {
        try {
            var contract =
                    new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
            var operations = new ArrayList<Operation>();
            for (Map.Entry<String, JsonNode> path : contract.path("paths").properties()) {
                var pattern = Pattern.compile(path.getKey().replaceAll("\\{[^}]+}", "[^/]+"));
                int variables = path.getKey().split("\\{").length - 1;
                for (Map.Entry<String, JsonNode> verb : path.getValue().properties()) {
                    operations.add(new Operation(
                            pattern, variables, verb.getKey(), verb.getValue().get("responses")));
                }
            }
            return operations;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
