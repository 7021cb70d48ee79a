package org.demebook.planning;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.as;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.consent.Granting;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;

/** What keepers write down and coordinators decide, in short, for tests of who may be paired. */
final class Keeping {
    static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    private Keeping() {}

    /** Writes a test down; returns the id of the record. */
    static String test(Colony colony, String keeper, String animal, String agent, String result, LocalDate sampledOn) {
        return colony.post(
                        keeper,
                        "/animals/" + animal + "/care-records",
                        Map.of(
                                "kind",
                                "test",
                                "agent",
                                agent,
                                "result",
                                result,
                                "method",
                                "RT-PCR",
                                "sampledOn",
                                sampledOn.toString()))
                .statusCode(201)
                .extract()
                .path("record.id");
    }

    /** Changes figures of the profile that are about breeding. */
    static void breeding(Colony colony, Consumer<Map<String, Object>> change) {
        Map<String, Object> described =
                as(Colony.WREN).get(colony.path("")).jsonPath().getMap("");
        described.keySet().retainAll(List.of("code", "name", "taxon", "locality", "birthMode", "profile"));
        var profile = new HashMap<>(part(described, "profile"));
        var breeding = new HashMap<>(part(profile, "breeding"));
        change.accept(breeding);
        profile.put("breeding", breeding);
        described.put("profile", profile);
        as(Colony.WREN)
                .header("If-Match", as(Colony.WREN).get(colony.path("")).getHeader("ETag"))
                .body(described)
                .put(colony.path(""))
                .then()
                .statusCode(200);
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> part(Map<String, Object> of, String name) {
        return (Map<String, Object>) of.get(name);
    }

    /** The answer to the bytes. */
    static String partners(Colony colony, String keeper, String number) {
        return colony.get(keeper, "/pairings?for=" + number)
                .statusCode(200)
                .extract()
                .asString();
    }

    static String collection(Colony colony, String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }

    /** What a keeper is now, for doors that a test calls itself. */
    static Standing standing(Colony colony, String keeper) {
        var populationId =
                UUID.fromString(ask("select population_id::text from demebook.journal_head where code = ?", colony.code)
                        .get(0));
        var head = ask("select seq::text from demebook.journal_head where population_id = ?", populationId)
                .get(0);
        return Backstage.asks(new Standing(
                populationId,
                colony.code,
                Granting.keeper(keeper),
                keeper.equals(Colony.WREN) ? Role.COORDINATOR : Role.MEMBER,
                Long.parseLong(head)));
    }
}
