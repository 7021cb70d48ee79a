package org.demebook.federation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.protocol.Whereabouts;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Three nodes, of which one is gone for good: the other two have to name the same heir. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AdoptionTest {
    @Inject
    Federations federations;

    private Colony colony;
    private Upland gone;
    private Upland other;
    private String here;

    @BeforeEach
    void three() {
        colony = Colony.found();
        gone = Upland.besides(colony);
        other = Upland.besides(colony);
        here = federations.nodeId();
    }

    private ValidatableResponse post(String below, Object body) {
        return as("administrator")
                .body(body)
                .post(colony.path("/federation" + below))
                .then();
    }

    @Test
    void animals_of_a_node_that_is_gone_are_held_by_the_heir_that_more_than_half_of_the_others_named() {
        var orphan = gone.animal();
        gone.exchange();
        other.exchange();
        post("/heirs", Map.of("gone", gone.id(), "heir", here))
                .statusCode(200)
                .body("needed", equalTo(2))
                .body("heirs.node", contains(here))
                .body("heirs[0].namedBy", contains(here));
        post("/adoptions", Map.of("gone", gone.id()))
                .statusCode(409)
                .body("type", equalTo("/problems/not-said"))
                .body("detail", containsString("1 of the 2"));
        assertThat(gone.whereabouts(orphan)).isEqualTo(new Whereabouts.Held(gone.id(), false));

        other.giveUp(gone);
        as("administrator")
                .get(colony.path("/federation"))
                .then()
                .statusCode(200)
                .body(
                        "nodes.find { it.node == '%s' }.gone.heirs[0].namedBy".formatted(gone.id()),
                        containsInAnyOrder(here, other.id()))
                .body("nodes.find { it.node == '%s' }.setAside".formatted(gone.id()), equalTo(true))
                .body("nodes.find { it.node == '%s' }.gone".formatted(other.id()), nullValue());
        post("/adoptions", Map.of("gone", gone.id())).statusCode(200).body("animals", contains(orphan.toString()));
        assertThat(gone.whereabouts(orphan)).isEqualTo(new Whereabouts.Held(here, false));
        other.exchange();
        assertThat(other.participant.alarms()).isEmpty();
        post("/adoptions", Map.of("gone", gone.id())).statusCode(200).body("animals", hasSize(0));
    }

    @Test
    void a_node_names_one_heir() {
        post("/heirs", Map.of("gone", gone.id(), "heir", other.id())).statusCode(200);
        post("/heirs", Map.of("gone", gone.id(), "heir", other.id())).statusCode(200);
        post("/heirs", Map.of("gone", gone.id(), "heir", here))
                .statusCode(409)
                .body("type", equalTo("/problems/not-said"))
                .body("detail", containsString("named the heir"));
        post("/adoptions", Map.of("gone", gone.id())).statusCode(409);
        post("/heirs", Map.of("gone", "A".repeat(43), "heir", here)).statusCode(404);
        post("/heirs", Map.of("gone", gone.id(), "heir", "A".repeat(43))).statusCode(409);
    }

    @Test
    void an_administrator_does_it_on_the_page() {
        var orphan = gone.animal();
        gone.exchange();
        other.giveUp(gone);
        var address = "/peers/populations/" + colony.code;
        send("administrator", address + "/heirs", Map.of("gone", gone.id(), "heir", here))
                .statusCode(303);
        Browsing.as("administrator")
                .get(address)
                .then()
                .statusCode(200)
                .body(containsString("2 of 2"))
                .body(containsString("action=\"" + address + "/adoptions"));
        send(WREN, address + "/adoptions", Map.of("gone", gone.id())).statusCode(403);
        send("administrator", address + "/adoptions", Map.of("gone", gone.id())).statusCode(303);
        assertThat(gone.whereabouts(orphan)).isEqualTo(new Whereabouts.Held(here, false));
    }

    private static ValidatableResponse send(String who, String address, Map<String, String> fields) {
        return Browsing.as(who)
                .formParams(fields)
                .contentType("application/x-www-form-urlencoded")
                .post(address + "?once=" + UUID.randomUUID())
                .then();
    }
}
