package org.demebook.consent;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;

/** One of everything that this room writes down. */
public final class ConsentStory {
    private ConsentStory() {}

    public static void tell(Colony colony) {
        choose(colony, WREN, "open-pedigree");
        choose(colony, WREN, "compute-only");
        choose(colony, INES, "pairing-with-members");
        var toOne = grant(Map.of("kind", "keeper", "name", INES));
        toOne.putAll(Map.of("animals", List.of(colony.female(WREN), colony.male(WREN)), "conditions", " "));
        String id = give(colony, WREN, toOne);
        colony.post(WREN, "/grants/" + id + "/renewal", "{}").statusCode(200);
        var toNode = grant(Map.of("kind", "node", "node", "K"));
        toNode.put("conditions", "not before the litter is weaned");
        colony.post(WREN, "/grants/" + give(colony, WREN, toNode) + "/withdrawal", "{}")
                .statusCode(200);
    }

    static Map<String, Object> grant(Map<String, Object> recipient) {
        var grant = new HashMap<String, Object>();
        grant.put("recipient", recipient);
        grant.put("fieldGroups", List.of("identity", "parentage"));
        grant.put("purposes", List.of("pedigree-view"));
        grant.put("actions", List.of("read"));
        return grant;
    }

    static String give(Colony colony, String keeper, Map<String, Object> grant) {
        return colony.post(keeper, "/grants", grant).statusCode(201).extract().path("id");
    }

    static String collection(Colony colony, String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }

    static void choose(Colony colony, String keeper, String choice) {
        as(keeper)
                .body(Map.of("choice", choice))
                .put(colony.path("/collections/" + collection(colony, keeper) + "/sharing"))
                .then()
                .statusCode(200);
    }
}
