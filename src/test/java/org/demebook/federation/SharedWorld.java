package org.demebook.federation;

import static org.demebook.Colony.as;

import io.restassured.response.ValidatableResponse;
import io.vertx.core.Vertx;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Map;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.peering.Node;
import org.demebook.peering.Peer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** A population that this server shares with another node, for each test. */
abstract class SharedWorld {
    static final String ADMINISTRATOR = "administrator";

    @Inject
    Vertx vertx;

    @Inject
    Node node;

    @Inject
    Federations federations;

    Colony colony;
    UUID population;
    OtherNode upland;
    Peer harbour;

    @BeforeEach
    void share() throws IOException {
        colony = Colony.found();
        population = UUID.fromString(
                Backstage.ask("select population_id::text from demebook.journal_head where code = ?", colony.code)
                        .get(0));
        upland = new OtherNode(vertx, Files.createTempDirectory("upland").resolve("federation"), "Upland");
        var self = as(ADMINISTRATOR)
                .get("/api/v1/node/identity")
                .then()
                .statusCode(200)
                .extract();
        var identity = node.identity();
        harbour = new Peer(
                identity.nodeId(),
                "Harbour",
                java.net.URI.create(self.path("address")),
                identity.tlsPin(),
                identity.keys(),
                Peer.State.ACTIVE);
        upland.node.admit(harbour);
        as(ADMINISTRATOR)
                .body(Map.of(
                        "address", upland.node.address().toString(),
                        "fingerprint", upland.node.identity.fingerprint(),
                        "name", "Upland"))
                .post("/api/v1/peers")
                .then()
                .statusCode(201);
        post("", Map.of()).statusCode(201);
    }

    @AfterEach
    void close() {
        upland.close();
    }

    /** The other node has a seat and begins its journal. */
    void join() {
        post("/seats", Map.of("node", upland.id(), "code", "U")).statusCode(200);
        upland.follow(population, harbour.nodeId());
        upland.pull(population, harbour);
    }

    ValidatableResponse post(String below, Object body) {
        return as(ADMINISTRATOR)
                .body(body)
                .post(colony.path("/federation" + below))
                .then();
    }

    ValidatableResponse get(String below) {
        return as(ADMINISTRATOR).get(colony.path("/federation" + below)).then();
    }
}
