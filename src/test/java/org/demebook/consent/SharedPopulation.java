package org.demebook.consent;

import static org.demebook.Colony.as;

import java.util.Map;
import java.util.Set;
import org.demebook.Colony;
import org.demebook.peering.AdmittedPeer;

/** Populations of their own that this node shares with one that never answers: for what administrators are asked. */
final class SharedPopulation {
    private static final Set<String> OPERATIONS = Set.of(
            "getFederation", "giveSeat", "listAlarms", "setNodeAside", "followNodeAgain", "nameHeir", "adoptAnimals");

    private SharedPopulation() {}

    /** Makes what the operation is about, where it is about a shared population, or one to be shared. */
    static void of(Operation operation, Map<String, String> named) {
        if (operation.id().equals("sharePopulation")) {
            named.put("population", Colony.foundPrivate().code);
        }
        if (OPERATIONS.contains(operation.id())) {
            var colony = Colony.foundPrivate();
            var upland = AdmittedPeer.nodeId();
            post(colony, "", Map.of(), 201);
            post(colony, "/seats", Map.of("node", upland, "code", "UP"), 200);
            named.put("population", colony.code);
            named.put("node", upland);
        }
    }

    private static void post(Colony colony, String below, Object body, int status) {
        as("administrator")
                .body(body)
                .post(colony.path("/federation" + below))
                .then()
                .statusCode(status);
    }
}
