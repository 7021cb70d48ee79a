package org.demebook.consent;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.Things.PIP;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.programme.Seasons;

/**
 * A population with a plan in force, which wren issued: each of four keepers has a pair in it. Wren and dov coordinate it, and
 * everybody lets wren plan with their animals.
 */
final class Planned {
    private static final List<String> KEEPERS = List.of(WREN, INES, DOV, PIP);

    final Things things = new Things();
    final Colony colony = things.colony;

    /** Of another population, to which the same keepers belong. */
    final String elsewhere;

    final String plan;
    private final Map<String, String> dams = new HashMap<>();

    Planned() {
        colony.post(WREN, "/members", Map.of("name", DOV, "role", "coordinator"))
                .statusCode(200);
        var together = new ArrayList<Map<String, String>>();
        for (var keeper : KEEPERS) {
            var dam = things.female(keeper);
            dams.put(keeper, dam);
            together.add(Map.of("dam", dam, "sire", things.male(keeper)));
            if (!keeper.equals(WREN)) {
                colony.post(
                                keeper,
                                "/grants",
                                Map.of(
                                        "recipient", Map.of("kind", "keeper", "name", WREN),
                                        "fieldGroups", List.of("identity", "parentage"),
                                        "purposes", List.of("pedigree-view", "pairing-computation"),
                                        "actions", List.of("read")))
                        .statusCode(201);
            }
        }
        var asked = asked();
        asked.put("litters", KEEPERS.size());
        asked.put("together", together);
        plan = Seasons.of(colony).issued(asked);
        elsewhere = Seasons.of(planning()).issued(asked());
    }

    private static Map<String, Object> asked() {
        var asked = new HashMap<String, Object>();
        asked.put("pairOn", pairOn());
        return asked;
    }

    static String pairOn() {
        return LocalDate.now(ZoneOffset.UTC).plusMonths(6).toString();
    }

    /** Another population, in which wren has a pair to plan with. */
    static Colony planning() {
        var other = Colony.foundPrivate();
        other.female(WREN);
        other.male(WREN);
        return other;
    }

    /** The litter that the plan proposes for a pair of a keeper's. */
    String litter(String keeper) {
        return colony.get(WREN, "/season-plans/" + plan)
                .statusCode(200)
                .extract()
                .path("litters.find { it.dam == '" + dams.get(keeper) + "' }.id");
    }

    /** A draft of a coordinator's, over. */
    static String draft(Colony colony, String coordinator) {
        String id = colony.post(coordinator, "/season-drafts", asked())
                .statusCode(202)
                .extract()
                .path("id");
        var state = "waiting";
        while (state.equals("waiting") || state.equals("computing")) {
            state = colony.get(coordinator, "/season-drafts/" + id).extract().path("state");
        }
        return id;
    }
}
