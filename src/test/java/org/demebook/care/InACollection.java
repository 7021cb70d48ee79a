package org.demebook.care;

import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.equalTo;

import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import org.demebook.Colony;
import org.junit.jupiter.api.BeforeEach;

/** A collection with one animal, of a population of its own, and what its keepers ask and do. */
abstract class InACollection {
    static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    Colony colony;
    String animal;

    @BeforeEach
    void found() {
        colony = Colony.found();
        animal = colony.female(WREN);
    }

    ValidatableResponse list(String keeper, String query) {
        return colony.get(keeper, "/care-tasks" + query).statusCode(200);
    }

    ValidatableResponse add(String keeper, Map<String, Object> task) {
        return colony.post(keeper, "/care-tasks", task);
    }

    String added(String keeper, Map<String, Object> task) {
        return add(keeper, task).statusCode(201).extract().path("key");
    }

    ValidatableResponse act(String keeper, String key, String act, Object body) {
        return colony.post(keeper, "/care-tasks/" + key + "/" + act, body);
    }

    ValidatableResponse silence(String key, String scope) {
        return act(WREN, key, "silence", Map.of("scope", scope)).statusCode(200);
    }

    void unknown(String keeper, String key) {
        colony.get(keeper, "/care-tasks/" + key).statusCode(404).body("type", equalTo("/problems/no-such-care-task"));
    }
}
