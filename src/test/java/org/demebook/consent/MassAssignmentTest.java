package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Nobody sets what is not theirs to set: a member of a body that its operation does not take is refused by name, at the top and
 * in every object below, whatever else is in the body. OWASP API Security Top 10 (2023), API3: broken object property level
 * authorization (from memory).
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class MassAssignmentTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** What views and rows hold, and nobody states in a body that does not have it. */
    private static final List<String> MEMBERS = List.of(
            "id",
            "number",
            "revision",
            "population",
            "populationId",
            "collectionId",
            "collection",
            "heldBy",
            "owner",
            "ownerCollectionId",
            "role",
            "name",
            "sameAs",
            "sameAsId",
            "disputeId",
            "state",
            "statedBy",
            "issuedBy",
            "grantedTo",
            "withdrawnAt",
            "granted");

    /** An object in a body: its place, and what may stand in it. */
    private record Place(List<String> steps, JsonNode properties) {
        /** A body that holds only this, at its place, and the numbers without which its object cannot be read. */
        JsonNode body(String member) {
            var object = JSON.createObjectNode().put(member, "MC-H-1-X");
            for (var property : properties.properties()) {
                switch (property.getValue().path("type").asText()) {
                    case "integer", "number" -> object.put(property.getKey(), 1);
                    case "boolean" -> object.put(property.getKey(), true);
                    default -> {}
                }
            }
            JsonNode body = object;
            for (int i = steps.size() - 1; i >= 0; i--) {
                var step = steps.get(i);
                ObjectNode outer = JSON.createObjectNode();
                outer.set(
                        step.replace("[]", ""),
                        step.endsWith("[]") ? JSON.createArrayNode().add(body) : body);
                body = outer;
            }
            return body;
        }

        String field(String member) {
            var field = new StringBuilder();
            steps.forEach(step -> field.append(step.replace("[]", "[0]")).append('.'));
            return field.append(member).toString();
        }
    }

    private JsonNode contract;

    @Test
    void a_member_that_a_body_does_not_have_is_refused_by_name() throws IOException {
        contract = new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
        var colony = Colony.foundPrivate();
        var animal = colony.female(INES);
        var before = colony.get(INES, "/animals/" + animal).extract().asString();
        int operations = 0;
        int refused = 0;
        for (var path : contract.path("paths").properties()) {
            for (var verb : path.getValue().properties()) {
                var schema = verb.getValue().at("/requestBody/content/application~1json/schema");
                if (schema.isMissingNode()) {
                    continue;
                }
                operations++;
                var address = path.getKey()
                        .replace("{population}", colony.code)
                        .replace("{number}", animal)
                        .replaceAll("\\{[^}]+}", UUID.randomUUID().toString());
                for (var place : places(List.of(), schema, 0)) {
                    // all of them at the top, some in each object below
                    for (var member : place.steps.isEmpty() ? MEMBERS : MEMBERS.subList(0, 5)) {
                        if (!place.properties.has(member)) {
                            refuse(verb.getKey(), address, place.body(member), place.field(member));
                            refused++;
                        }
                    }
                }
            }
        }
        assertThat(operations).as("operations with a body").isGreaterThan(50);
        assertThat(refused).as("members that were refused").isGreaterThan(900);
        assertThat(colony.get(INES, "/animals/" + animal).extract().asString()).isEqualTo(before);
    }

    private static void refuse(String verb, String address, JsonNode body, String field) {
        var answer = Colony.as(INES)
                .header("If-Match", "\"1\"")
                .body(body.toString())
                .request(verb.toUpperCase(Locale.ROOT), address);
        assertThat(answer.statusCode())
                .as("%s %s %s: %s", verb, address, body, answer.asString())
                .isEqualTo(400);
        assertThat(answer.<String>path("type"))
                .as("%s %s %s", verb, address, body)
                .isEqualTo("/problems/unknown-field");
        assertThat(answer.<String>path("detail")).contains("\"" + field + "\"");
    }

    /** The objects of a body, two deep. */
    private List<Place> places(List<String> steps, JsonNode schema, int depth) {
        var places = new ArrayList<Place>();
        var object = resolved(schema);
        if (!object.path("properties").isObject() || depth > 2) {
            return places;
        }
        places.add(new Place(steps, object.get("properties")));
        for (Map.Entry<String, JsonNode> property : object.get("properties").properties()) {
            var below = resolved(property.getValue());
            if (below.path("items").isObject()) {
                places.addAll(places(step(steps, property.getKey() + "[]"), below.get("items"), depth + 1));
            } else {
                places.addAll(places(step(steps, property.getKey()), below, depth + 1));
            }
        }
        return places;
    }

    private static List<String> step(List<String> steps, String next) {
        var more = new ArrayList<>(steps);
        more.add(next);
        return more;
    }

    /** What a schema refers to; of several the one that is not null. */
    private JsonNode resolved(JsonNode schema) {
        for (var several : List.of("anyOf", "oneOf", "allOf")) {
            for (var one : schema.path(several)) {
                if (!one.path("type").asText().equals("null")) {
                    return resolved(one);
                }
            }
        }
        return schema.has("$ref")
                ? resolved(contract.at(schema.get("$ref").asText().substring(1)))
                : schema;
    }
}
