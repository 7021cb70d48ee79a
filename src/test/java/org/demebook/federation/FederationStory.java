package org.demebook.federation;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import java.util.Map;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.peering.AdmittedPeer;

/** A population is shared with a node that never answers, which is set aside and followed again; an animal is named between nodes. */
public final class FederationStory {
    private static final String ADMINISTRATOR = "administrator";

    private FederationStory() {}

    public static void tell(Colony colony) {
        post(colony, "", Map.of(), 201);
        name(colony, colony.female(WREN));
        var upland = AdmittedPeer.nodeId();
        post(colony, "/seats", Map.of("node", upland, "code", "U"), 200);
        post(colony, "/nodes/" + upland + "/setting-aside", Map.of(), 200);
        post(colony, "/nodes/" + upland + "/readmission", Map.of(), 200);
        post(colony, "/nodes/" + upland + "/setting-aside", Map.of(), 200);
    }

    private static void name(Colony colony, String number) {
        var federations = Arc.container().instance(Federations.class).get();
        var population = id("select population_id::text from demebook.journal_head where code = ?", colony.code);
        var animal = id("select id::text from demebook.animal where number = ?", number);
        QuarkusTransaction.requiringNew().call(() -> federations.name(population, UUID.randomUUID(), animal));
    }

    private static UUID id(String query, String named) {
        return UUID.fromString(Backstage.ask(query, named).get(0));
    }

    private static void post(Colony colony, String below, Object body, int status) {
        as(ADMINISTRATOR)
                .body(body)
                .post(colony.path("/federation" + below))
                .then()
                .statusCode(status);
    }
}
