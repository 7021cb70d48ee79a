package org.demebook;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.UUID;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ContractTest {
    private static final Path COMMITTED = Path.of("openapi", "openapi.yaml");

    /** To take a wanted change over: {@code mvn test -Dtest=ContractTest -Ddemebook.contract=write}. */
    @Test
    void the_committed_contract_is_the_one_that_the_server_speaks() throws IOException {
        var spoken =
                Colony.anonymous().accept("application/yaml").get("/openapi").asString();
        if ("write".equals(System.getProperty("demebook.contract"))) {
            Files.createDirectories(COMMITTED.getParent());
            Files.writeString(COMMITTED, spoken);
        }
        assertThat(Files.readString(COMMITTED)).isEqualTo(spoken);
    }

    @Test
    void every_operation_is_there_and_answers_without_a_token_only_where_it_says_so() throws IOException {
        var contract = new YAMLMapper().readTree(COMMITTED.toFile());
        var missing = new ArrayList<String>();
        int operations = 0;
        for (var path : contract.path("paths").properties()) {
            for (var verb : path.getValue().properties()) {
                operations++;
                var operation = verb.getValue();
                var open =
                        operation.has("security") && operation.get("security").isEmpty();
                var address = path.getKey()
                        .replaceAll(
                                "\\{(claim|photo|id|transfer|import|release|sheet|litter|record|grant|collection)}",
                                UUID.randomUUID().toString())
                        .replaceAll("\\{[^}]+}", "none");
                var form = operation.path("requestBody").path("content").fieldNames();
                var status = Colony.anonymous()
                        .contentType(form.hasNext() ? form.next() : "application/json")
                        .header("Idempotency-Key", UUID.randomUUID().toString())
                        .request(verb.getKey().toUpperCase(), address)
                        .statusCode();
                if (open ? status == 401 || status == 405 : status != 401) {
                    missing.add(verb.getKey() + " " + path.getKey() + " answered " + status);
                }
            }
        }
        assertThat(operations).isGreaterThan(25);
        assertThat(missing).isEmpty();
    }

    @Test
    void every_error_of_every_operation_names_its_problem_types() throws IOException {
        var contract = new YAMLMapper().readTree(COMMITTED.toFile());
        for (var path : contract.path("paths").properties()) {
            for (var verb : path.getValue().properties()) {
                for (var response : verb.getValue().get("responses").properties()) {
                    if (response.getKey().startsWith("4") || response.getKey().startsWith("5")) {
                        assertThat(response.getValue().path("x-problem-types"))
                                .as("%s %s %s", verb.getKey(), path.getKey(), response.getKey())
                                .isNotEmpty()
                                .allMatch(JsonNode::isTextual);
                    }
                }
            }
        }
    }
}
