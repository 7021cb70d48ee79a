package org.demebook.consent;

import static org.assertj.core.api.Assertions.fail;
import static org.demebook.consent.CanaryWorld.COORDINATOR;
import static org.demebook.consent.CanaryWorld.KEEPERS;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.photo.CameraPhoto;

/**
 * What somebody sends who writes about what is not theirs: every operation of the contract that writes, on things in which
 * the asker has no part, and, where the thing is a new one of their own, with somebody else's animal named in it.
 */
final class CanaryWrites {
    private static final String NO_NODE = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
    private static final byte[] PICTURE = CameraPhoto.plainJpeg(40, 30);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String SOME_TAG = "\"1\"";

    /** A studbook number that fits its check character, of an animal that does not exist. */
    final String absent;

    private final CanaryWorld world;
    private final String asker;

    /** The animal of somebody else. */
    private final String foreign;

    /** A living female of the asker's own; the foreign one where they have none. */
    private final String own;

    /**
     * @param type of the body
     * @param body text or bytes; empty where there is none
     */
    record Write(String verb, String address, String type, Object body, boolean tagged) {
        String sent() {
            return body instanceof String text ? text : "";
        }

        /** The same about an animal that does not exist. */
        Write about(String absent, String number) {
            return new Write(
                    verb,
                    address.replace(number, absent),
                    type,
                    body instanceof String text ? text.replace(number, absent) : body,
                    tagged);
        }
    }

    CanaryWrites(CanaryWorld world, String asker, String foreign) {
        this.world = world;
        this.asker = asker;
        this.foreign = foreign;
        absent = new StudbookNumber(world.colony.code, "H", 900_001).toString();
        own = world.animals.values().stream()
                .filter(animal ->
                        animal.parties().equals(Set.of(asker)) && animal.sex().equals("female"))
                .map(CanaryWorld.Animal::number)
                .findFirst()
                .orElse(foreign);
    }

    List<Write> of(String verb, String path, boolean hasBody) {
        var writes = new ArrayList<Write>();
        for (var address : addresses(path)) {
            var type = "application/json";
            List<?> bodies = List.of("");
            if (path.endsWith("/photos")) {
                type = "image/jpeg";
                bodies = List.of(PICTURE);
                address += path.contains("litters") ? "?moment=before-separation&label=" + said() : "?label=" + said();
            } else if (path.endsWith("/imports") || path.endsWith("/import-checks")) {
                type = "text/csv";
                bodies = List.of(sheet());
            } else if (hasBody) {
                bodies = bodies(verb, path).stream().map(CanaryWrites::json).toList();
            }
            for (var body : bodies) {
                writes.add(new Write(verb, address, type, body, verb.equals("PUT") || verb.equals("DELETE")));
            }
        }
        return writes;
    }

    // ── where it is sent ─────────────────────────────────────────────────────────────────────────────────────────────

    private List<String> addresses(String path) {
        var addresses = List.of(path.replace("{population}", world.colony.code));
        while (addresses.get(0).contains("{")) {
            var first = addresses.get(0);
            var parameter = first.substring(first.indexOf('{') + 1, first.indexOf('}'));
            var filled = new ArrayList<String>();
            for (var address : addresses) {
                values(path, parameter).forEach(value -> filled.add(address.replace("{" + parameter + "}", value)));
            }
            addresses = filled;
        }
        return addresses;
    }

    /** Only what the asker has no say in: what they may do by design is no question of this test. */
    private List<String> values(String path, String parameter) {
        var nothing = UUID.randomUUID().toString();
        var values = new ArrayList<String>();
        switch (parameter) {
            case "number" -> {
                values.add(foreign);
                if (namesAnother(path)) {
                    values.add(own);
                }
            }
            case "kind" -> values.add("transponder");
            case "node" -> values.add(NO_NODE);
            case "value" -> values.add(transponder());
            case "name" -> values.add(asker.equals(COORDINATOR) ? "nobody" : KEEPERS.get(1));
            case "collection" ->
                world.collections.forEach((keeper, collection) -> {
                    if (!keeper.equals(asker)) {
                        values.add(collection);
                    }
                });
            case "id" -> values.addAll(world.ids(CanaryReads.kindOfId(path), asker));
            case "key" -> values.addAll(world.ids("task", asker));
            case "claim" ->
                values.addAll(
                        world.ids(path.contains("/federation/") ? "claim-elsewhere" : "same-animal-claim", asker));
            case "photo" -> values.addAll(world.ids("photo", asker));
            case "litter" ->
                values.addAll(world.ids(path.contains("/season-plans/") ? "season-litter" : parameter, asker));
            case "draft", "plan" -> values.addAll(world.ids(parameter, asker));
            case "animal" -> values.addAll(world.ids("adopted-animal", asker));
            case "record", "grant", "transfer", "crossing", "sheet", "dispute", "silence", "approach" ->
                values.addAll(world.ids(parameter, asker));
            default -> fail("say here what {%s} of %s may be when it is written to", parameter, path);
        }
        if (!parameter.equals("number") && !parameter.equals("value") && !parameter.equals("kind")) {
            values.add(nothing);
        }
        return values;
    }

    /** Whether an own animal is written to, and somebody else's named in the body. */
    private static boolean namesAnother(String path) {
        return path.endsWith("/parentage")
                || path.endsWith("/same-animal-claims")
                || path.endsWith("/breeding-signs")
                || path.endsWith("/care-records");
    }

    // ── what is sent ─────────────────────────────────────────────────────────────────────────────────────────────────

    private String said() {
        return world.words.text("said");
    }

    private String transponder() {
        return world.animals.get(foreign).words().getOrDefault("marks-and-photos", Set.of()).stream()
                .filter(word -> word.startsWith("98100"))
                .findFirst()
                .orElse("981000000000123");
    }

    private String foreignCollection() {
        return world.collections.get(KEEPERS.stream()
                .filter(keeper -> !keeper.equals(asker))
                .findFirst()
                .orElseThrow());
    }

    private String sheet() {
        return String.join(
                "\n",
                "id,studbooknumber,dam,sire,sex,born,died,origin,chip,marks,notes,collection",
                "%s,,%s,%s,f,2023-05-01,,cb,,%s,%s,".formatted(said(), foreign, foreign, said(), said()),
                "%s,,,,f,2023-05-02,,cb,%s,%s,%s,".formatted(said(), transponder(), said(), said()),
                "%s,%s,,,f,2018,2024-01-01,cb,,%s,%s,".formatted(said(), foreign, said(), said()),
                "%s,,,,f,2023-05-03,,cb,,%s,%s,%s".formatted(said(), said(), said(), foreignCollection()),
                "");
    }

    private static Map<String, Object> of(Object... pairs) {
        var body = new LinkedHashMap<String, Object>();
        for (int i = 0; i < pairs.length; i += 2) {
            body.put(pairs[i].toString(), pairs[i + 1]);
        }
        return body;
    }

    private static Map<String, Object> with(Map<String, Object> body, Object... pairs) {
        var more = new LinkedHashMap<>(body);
        more.putAll(of(pairs));
        return more;
    }

    private static String json(Object body) {
        try {
            return JSON.writeValueAsString(body);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private List<Map<String, Object>> bodies(String verb, String path) {
        var below = path.replaceFirst("^/api/v1(/populations/\\{population})?", "");
        var today = LocalDate.now().toString();
        var knownSire = of("kind", "known", "animal", foreign);
        var candidates = of("kind", "candidates", "candidates", List.of(of("animal", foreign, "probability", 0.4)));
        var plain = of("sex", "female", "born", "2023-05-01", "origin", "captive-bred", "notes", said());
        var litter = of("dam", own, "born", "2023-06-01", "liveBorn", 1, "stillborn", 0);
        litter.putAll(of("unfertilised", 0, "ovaFound", 1, "notes", said()));
        var grant = of("recipient", of("kind", "members"), "fieldGroups", List.of("identity"));
        grant.putAll(of("purposes", List.of("pedigree-view"), "actions", List.of("read"), "conditions", said()));
        return switch (below) {
            case "/animals" ->
                List.of(
                        with(plain, "dam", foreign),
                        with(plain, "sire", knownSire),
                        with(plain, "sire", candidates),
                        with(plain, "transponders", List.of(transponder())),
                        with(plain, "marks", List.of(said()), "collection", foreignCollection()));
            case "/animals/{number}/breeding-hold", "/animals/{number}/breeding-hold/lifting" ->
                List.of(of("reason", said()));
            case "/animals/{number}/breeding-signs", "/breeding-signs/{id}" ->
                List.of(of("kind", "copulation", "happenedOn", "2024-01-09", "male", foreign, "notes", said()));
            case "/animals/{number}/care-records" ->
                List.of(
                        of("kind", "health-note", "on", "2024-07-01", "text", said()),
                        of("animal", foreign, "kind", "health-note", "on", "2024-07-01", "text", said()));
            case "/care-records/{record}" -> List.of(of("kind", "health-note", "on", "2024-07-01", "text", said()));
            case "/care-records" ->
                List.of(of(
                        "records",
                        List.of(of("animal", foreign, "kind", "health-note", "on", "2024-07-01", "text", said()))));
            case "/care-records/{record}/end" -> List.of(of("on", today));
            case "/animals/{number}/death" -> List.of(of("on", "2024-08-01", "cause", said()));
            case "/animals/{number}/description" ->
                List.of(of("origin", "unknown", "born", "2018-05-05", "malformed", true, "notes", said()));
            case "/animals/{number}/findings/leaving" -> List.of(of("rule", "dam-young", "reason", said()));
            case "/animals/{number}/disputes" ->
                List.of(
                        of("seenOn", "2025-09-05", "note", said()),
                        of("seenOn", "2025-09-05", "note", said(), "collection", foreignCollection()));
            case "/animals/{number}/handover-sheets" -> List.of(of("kind", "sale", "showName", true));
            case "/animals/{number}/identifiers" ->
                List.of(of("kind", "mark", "value", said()), of("kind", "transponder", "value", transponder()));
            case "/animals/{number}/incubations" ->
                List.of(of("startedOn", "2025-03-01", "setPoint", of("value", 31, "unit", "c"), "notes", said()));
            case "/incubations/{id}/readings" -> List.of(of("temperature", of("value", 31, "unit", "c")));
            case "/animals/{number}/locality" -> List.of(of("locality", said(), "certainty", "stated"));
            case "/animals/{number}/parentage" ->
                List.of(of("dam", foreign), of("sire", knownSire), of("sire", candidates));
            case "/animals/{number}/same-animal-claims" -> List.of(of("other", foreign, "evidence", said()));
            case "/federation/same-animal-claims" ->
                List.of(
                        of("animal", own, "other", foreign),
                        of("animal", own, "other", UUID.randomUUID() + "@" + NO_NODE),
                        of("animal", foreign, "other", UUID.randomUUID() + "@" + NO_NODE));
            case "/animals/{number}/sex" -> List.of(of("sex", "male", "on", "2024-01-01"));
            case "/introductions" ->
                List.of(
                        of("female", own, "male", foreign, "fromOn", "2024-01-05", "notes", said()),
                        of("female", foreign, "male", own, "fromOn", "2024-01-05", "notes", said()));
            case "/introductions/{id}" -> List.of(of("fromOn", "2024-01-05", "notes", said()));
            case "/introductions/{id}/end" -> List.of(of("untilOn", "2024-02-05"));
            case "/litters" ->
                List.of(
                        with(litter, "sire", knownSire),
                        with(litter, "sire", candidates),
                        with(litter, "dam", foreign),
                        with(litter, "collection", foreignCollection()));
            case "/litters/{litter}/outcome" ->
                List.of(of("liveBorn", 2, "stillborn", 0, "unfertilised", 0, "ovaFound", 2));
            case "/litters/{litter}/twins" -> List.of(of("numbers", List.of(own, foreign), "kind", "identical"));
            case "/litters/{litter}/twins/withdrawal" -> List.of(of("numbers", List.of(own, foreign)));
            case "/care-tasks" ->
                List.of(
                        of("animal", foreign, "what", said(), "dueOn", today),
                        of("collection", foreignCollection(), "what", said(), "dueOn", today));
            case "/care-tasks/completions" -> List.of(of("keys", List.copyOf(world.ids("task", asker))));
            case "/care-tasks/{key}/completion" -> List.of(of("on", today));
            case "/care-tasks/{key}/postponement" -> List.of(of("to", today));
            case "/care-tasks/{key}/silence" -> List.of(of("scope", "kind"));
            case "/collections" -> List.of(of("label", said(), "sharedWith", List.of("nobody-of-this-name")));
            case "/collections/{collection}/region" ->
                List.of(of("region", said()), of("region", world.regions.get(COORDINATOR)));
            case "/collections/{collection}/pairing-terms" ->
                List.of(of("littersAtMost", 1, "notes", said()), of("exchangeWith", List.of(said())));
            case "/regions/distances" ->
                List.of(of("pairs", List.of(of("one", said(), "other", said(), "kilometres", 420, "border", true))));
            case "/regions" -> List.of(of("names", List.of(said(), said())));
            // never by the own name: somebody who is gone asks nothing more in this round
            case "/erasure" -> List.of(of("name", said()));
            case "/season-drafts", "/season-plans", "/season-plans/{plan}/litters/{litter}/answer" ->
                new CanarySeason(world).sent(below, asker, foreign, said());
            case "/approaches" ->
                List.of(
                        of("animal", own, "partner", "ABCDEFGHJK", "words", said()),
                        of("animal", foreign, "partner", "ABCDEFGHJK", "words", said()));
            case "/collections/{collection}/sharing" -> List.of(of("choice", "open-pedigree"));
            case "/count-releases" -> List.of(of("countedOn", "2019-01-01"));
            case "/count-rules" -> List.of(of("fewestKeepers", 3, "percent", 20));
            case "/count-waiver" -> List.of(of("waived", false));
            case "/disputes/{dispute}/settlement" -> List.of(of("outcome", "upheld", "reason", said()));
            case "/grants" ->
                List.of(
                        with(grant, "animals", List.of(foreign)),
                        with(grant, "collection", foreignCollection(), "animals", List.of(foreign)));
            case "/grants/preview" ->
                List.of(
                        of("grant", with(grant, "animals", List.of(foreign))),
                        of("choice", "open-pedigree", "collection", foreignCollection()));
            case "/handover-sheets/{sheet}/print" -> List.of(of("claimCode", "ABCD-EFGH-JKMN-PQRS"));
            case "/transfers" ->
                List.of(
                        of("animal", foreign, "kind", "sale", "to", KEEPERS.get(1), "note", said()),
                        of("animal", foreign, "kind", "sale", "withClaimCode", true, "note", said()));
            case "/crossings" ->
                List.of(of(
                        "animal",
                        foreign,
                        "kind",
                        "sale",
                        "node",
                        "U",
                        "to",
                        "mara",
                        "note",
                        said(),
                        "withNotes",
                        true));
            case "/adopted-animals/{animal}/placement" ->
                List.of(of("to", KEEPERS.get(1)), of("to", KEEPERS.get(1), "number", foreign));
            case "/crossings/{crossing}/acceptance" -> List.of(of(), of("collection", foreignCollection()));
            case "/crossings/{crossing}/refusal" -> List.of(of());
            case "/transfers/{transfer}/acceptance" -> List.of(of(), of("collection", foreignCollection()));
            case "/transfers/{transfer}/claim-code" -> List.of(of());
            case "/members" -> List.of(of("name", KEEPERS.get(2), "role", "member"));
            case "" -> List.of(population());
            case "/populations" -> List.of(population());
            case "/claims" -> List.of(of("code", "ABCD-EFGH-JKMN-PQRS", "collection", foreignCollection()));
            case "/invitations" -> List.of(of("population", world.colony.code, "role", "member"));
            case "/invitations/acceptances" ->
                List.of(of("secret", said(), "name", "fern", "fullName", said(), "password", said()));
            case "/invitations/joinings" -> List.of(of("secret", said()));
            case "/peers" -> List.of(of("address", "https://127.0.0.1:1", "fingerprint", NO_NODE, "name", said()));
            case "/federation/seats" -> List.of(of("node", NO_NODE, "code", "U"));
            case "/federation/heirs" -> List.of(of("gone", NO_NODE, "heir", NO_NODE));
            case "/federation/adoptions" -> List.of(of("gone", NO_NODE));
            case "/federated-populations" ->
                List.of(of("population", UUID.randomUUID().toString(), "founder", NO_NODE));
            case "/tokens" -> List.of(of("name", "nobody-of-this-name", "password", said()));
            default -> {
                if (below.endsWith("/withdrawal") || below.endsWith("/refusal") || below.endsWith("/concession")) {
                    yield List.of(of("reason", said()));
                }
                yield fail("say here what is sent to %s %s", verb, path);
            }
        };
    }

    /** With a word where the population's name is; the code is taken. */
    private Map<String, Object> population() {
        var population = of("code", world.colony.code, "name", "Marrowfin Cay", "taxon", "insular dwarf Boa");
        population.putAll(of("locality", "Marrowfin Cay", "birthMode", "egg-laying"));
        return population;
    }

    /** The tag of an own animal where that is written to. */
    String tag(Write write) {
        if (own.equals(foreign) || !write.address().contains("/animals/" + own + "/")) {
            return SOME_TAG;
        }
        var tag = Colony.as(asker).get(world.colony.path("/animals/" + own)).header("ETag");
        return tag == null ? SOME_TAG : tag;
    }
}
