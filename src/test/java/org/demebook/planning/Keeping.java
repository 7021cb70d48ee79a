package org.demebook.planning;

import static org.demebook.Backstage.ask;
import static org.demebook.Colony.as;

import io.restassured.response.ValidatableResponse;
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
public final class Keeping {
    static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    private Keeping() {}

    /** Writes a test down; returns the id of the record. */
    public static String test(
            Colony colony, String keeper, String animal, String agent, String result, LocalDate sampledOn) {
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
    public static void breeding(Colony colony, Consumer<Map<String, Object>> change) {
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

    public static String collection(Colony colony, String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }

    /** Two regions, 420 kilometres apart, with a border between them. */
    public static Colony inRegions(Colony colony) {
        fixRegions(colony, List.of("North", "South"));
        var pair = Map.of("one", "North", "other", "South", "kilometres", 420, "border", true);
        distances(colony, Colony.WREN, "\"0\"", List.of(pair)).statusCode(200);
        return colony;
    }

    static void fixRegions(Colony colony, List<String> names) {
        as(Colony.WREN)
                .header("If-Match", as(Colony.WREN).get(colony.path("/regions")).getHeader("ETag"))
                .body(Map.of("names", names))
                .put(colony.path("/regions"))
                .then()
                .statusCode(200);
    }

    static ValidatableResponse distances(Colony colony, String keeper, String ifMatch, List<?> pairs) {
        return as(keeper)
                .header("If-Match", ifMatch)
                .body(Map.of("pairs", pairs))
                .put(colony.path("/regions/distances"))
                .then();
    }

    public static void region(Colony colony, String keeper, String region) {
        as(keeper)
                .body(Map.of("region", region))
                .put(colony.path("/collections/" + collection(colony, keeper) + "/region"))
                .then()
                .statusCode(200);
    }

    static String terms(Colony colony, String keeper) {
        return "/collections/" + collection(colony, keeper) + "/pairing-terms";
    }

    public static ValidatableResponse state(Colony colony, String keeper, Map<String, Object> terms) {
        return as(keeper).body(terms).put(colony.path(terms(colony, keeper))).then();
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
