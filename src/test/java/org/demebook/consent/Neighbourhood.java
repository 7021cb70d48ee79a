package org.demebook.consent;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.demebook.consent.FieldGroup.BREEDING_RESULTS;
import static org.demebook.consent.FieldGroup.CUSTODY;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.MARKS_AND_PHOTOS;
import static org.demebook.consent.FieldGroup.NOTES;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.hamcrest.Matchers.lessThan;

import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.demebook.Colony;
import org.demebook.programme.Seasons;
import org.jspecify.annotations.Nullable;

/**
 * Dov's snakes, one of everything that he writes down of them, and an animal of each of two others that descends from his:
 * what he changes in secret is looked for in what they are answered.
 */
final class Neighbourhood {
    private static int transponders;

    final Colony colony = Colony.foundPrivate();
    private final Random random;
    private final List<String> sires = new ArrayList<>();
    private int sireOfYoung = 1;
    private boolean sireOfDamIsKnown = true;
    private final List<String> kept = new ArrayList<>();
    private final Map<String, Map<String, Object>> descriptions = new HashMap<>();
    private final Map<String, String> own = new HashMap<>();
    private final String dam;
    private final String young;
    private final String dead;
    private final Map<String, String> ids = new HashMap<>();
    private int changes;

    /** @param fieldGroup what it belongs to; null for what is its writer's alone, whatever is granted */
    record Change(String name, @Nullable FieldGroup fieldGroup, Runnable make) {}

    Neighbourhood(Random random) {
        this.random = random;
        var grandDam = register("female", "2014-05-03", null, null);
        sires.add(register("male", "2014-05-04", null, null));
        dam = register("female", "2018-05-03", grandDam, sires.get(0));
        sires.add(register("male", "2018-05-05", null, null));
        young = register("female", "2022-06-01", dam, sires.get(1));
        dead = register("male", "2022-06-01", dam, sires.get(1));
        colony.put(DOV, dead, "/death", Map.of("on", "2025-01-03")).statusCode(200);
        var open = give(List.of(FieldGroup.IDENTITY), List.of(Purpose.PEDIGREE_VIEW), List.of(Action.READ));
        for (var keeper : List.of(INES, WREN)) {
            var bought = animal("female", "2022-06-03");
            bought.put("dam", dam);
            bought.put("sire", Map.of("kind", "known", "animal", sires.get(0)));
            own.put(keeper, colony.register(keeper, bought));
        }
        withdraw(open);
        plan();
        writeDown();
    }

    /** Of wren's animal and a male of dov's, from a time when dov let her plan with him. */
    private void plan() {
        var open = give(
                List.of(FieldGroup.IDENTITY, FieldGroup.PARENTAGE),
                List.of(Purpose.PEDIGREE_VIEW, Purpose.PAIRING_COMPUTATION),
                List.of(Action.READ));
        var seasons = Seasons.of(colony);
        var pair = Map.of("dam", own.get(WREN), "sire", sires.get(1));
        ids.put(
                "plan",
                seasons.issued(Map.of("pairOn", Planned.pairOn(), "littersAtMost", 1, "together", List.of(pair))));
        withdraw(open);
    }

    private String register(String sex, String born, @Nullable String dam, @Nullable String sire) {
        var animal = animal(sex, born);
        if (dam != null) {
            animal.put("dam", dam);
            animal.put("sire", Map.of("kind", "known", "animal", sire));
        }
        animal.put("collection", colony.get(DOV, "/collections").extract().path("[0].id"));
        var number = colony.register(DOV, animal);
        descriptions.put(number, new HashMap<>(Map.of("born", born, "origin", "unknown")));
        kept.add(number);
        return number;
    }

    private void writeDown() {
        note("litter", litter(), "litter.id");
        note("sign", sign(), "sign.id");
        note("record", diary(), "record.id");
        note("task", task(), "key");
        note("introduction", introduction("2024-01-05"), "introduction.id");
        note("photo", photo(), "id");
        note("sheet", colony.post(DOV, "/animals/" + young + "/handover-sheets", Map.of("kind", "sale")), "id");
        var offer = Map.of("animal", sires.get(1), "kind", "sale", "to", WREN);
        note("transfer", colony.post(DOV, "/transfers", offer), "transfer.id");
        colony.post(DOV, "/transfers/" + ids.get("transfer") + "/withdrawal", Map.of("reason", "changed my mind"))
                .statusCode(200);
    }

    private void note(String kind, ValidatableResponse answer, String path) {
        ids.put(kind, answer.statusCode(lessThan(300)).extract().path(path).toString());
    }

    // ── grants ───────────────────────────────────────────────────────────────────────────────────────────────────────

    /** To members. */
    String give(List<FieldGroup> fieldGroups, List<Purpose> purposes, List<Action> actions) {
        return colony.post(
                        DOV,
                        "/grants",
                        Map.of(
                                "recipient", Map.of("kind", "members"),
                                "fieldGroups", Things.words(fieldGroups),
                                "purposes", Things.words(purposes),
                                "actions", Things.words(actions)))
                .statusCode(201)
                .extract()
                .path("id");
    }

    void withdraw(String grant) {
        colony.post(DOV, "/grants/" + grant + "/withdrawal", "{}").statusCode(200);
    }

    // ── what dov changes ─────────────────────────────────────────────────────────────────────────────────────────────

    List<Change> changes() {
        return List.of(
                new Change("notes", NOTES, () -> describe("notes", "note " + ++changes)),
                new Change("malformed", HEALTH, () -> describe("malformed", flip("malformed"))),
                new Change("source code", CUSTODY, () -> describe("sourceCode", changes++ % 2 == 0 ? "C" : "F")),
                new Change("born", IDENTITY, () -> describe("born", "2022-06-0" + (1 + changes++ % 3))),
                new Change("mark", MARKS_AND_PHOTOS, () -> identify("mark", "mark " + ++changes)),
                new Change(
                        "transponder",
                        MARKS_AND_PHOTOS,
                        () -> identify("transponder", "98121%010d".formatted(++transponders))),
                new Change("photograph", MARKS_AND_PHOTOS, () -> photo().statusCode(201)),
                new Change("own reference", null, () -> identify("own-reference", "rack " + ++changes)),
                new Change("cause of death", HEALTH, this::causeOfDeath),
                new Change("parentage", PARENTAGE, this::parentage),
                new Change("another animal", IDENTITY, () -> register("female", "2018-06-03", null, null)),
                new Change("locality", IDENTITY, this::locality),
                new Change("breeding hold", IDENTITY, this::hold),
                new Change("collection", null, () -> colony.post(
                                DOV, "/collections", Map.of("label", "rack " + ++changes, "sharedWith", List.of()))
                        .statusCode(201)),
                new Change("test", HEALTH, this::test),
                new Change("pairing terms", null, this::terms),
                new Change("diary note", null, () -> diary().statusCode(201)),
                new Change("breeding sign", null, () -> sign().statusCode(201)),
                new Change("task", null, () -> task().statusCode(201)),
                new Change("introduction", null, () -> introduction(LocalDate.of(2024, 3, 1)
                                .plusDays(2L * ++changes)
                                .toString())
                        .statusCode(201)),
                new Change("litter outcome", BREEDING_RESULTS, this::outcome));
    }

    /** In an animal that others may see; not the dead one, whose description holds nothing else. */
    private void describe(String field, Object value) {
        var description = descriptions.get(young);
        description.put(field, value);
        colony.put(DOV, young, "/description", description).statusCode(200);
    }

    private boolean flip(String field) {
        return !Boolean.TRUE.equals(descriptions.get(young).get(field));
    }

    private void identify(String kind, String value) {
        colony.post(
                        DOV,
                        "/animals/" + (kind.equals("own-reference") ? young : dam) + "/identifiers",
                        Map.of("kind", kind, "value", value))
                .statusCode(200);
    }

    private ValidatableResponse photo() {
        return as(DOV).contentType("image/png")
                .body(Things.picture())
                .post(colony.path("/animals/" + dam + "/photos"))
                .then();
    }

    private void causeOfDeath() {
        colony.put(DOV, dead, "/death", Map.of("on", "2025-01-03", "cause", "cause " + ++changes))
                .statusCode(200);
    }

    /** Of one that others' animals descend from, or of one that nobody descends from. */
    private void parentage() {
        if (++changes % 2 == 0) {
            colony.put(DOV, dam, "/parentage", ofDam()).statusCode(200);
        } else {
            sireOfYoung = 1 - sireOfYoung; // another one each time, or nothing would change
            var sire = Map.of("kind", "known", "animal", sires.get(sireOfYoung));
            colony.put(DOV, young, "/parentage", Map.of("dam", dam, "sire", sire))
                    .statusCode(200);
        }
    }

    private Map<String, Object> ofDam() {
        var stated = new HashMap<String, Object>();
        if (random.nextBoolean()) {
            stated.put("dam", kept.get(0));
        }
        sireOfDamIsKnown = !sireOfDamIsKnown;
        stated.put(
                "sire", sireOfDamIsKnown ? Map.of("kind", "known", "animal", sires.get(0)) : Map.of("kind", "unknown"));
        return stated;
    }

    private void locality() {
        colony.put(DOV, young, "/locality", Map.of("locality", "Tern Skerry " + ++changes, "certainty", "stated"))
                .statusCode(200);
    }

    private void hold() {
        colony.put(DOV, young, "/breeding-hold", Map.of("reason", "thin, " + ++changes))
                .statusCode(200);
    }

    /** In turn one that keeps him from being paired, and one that does not. */
    private void test() {
        var on = LocalDate.now(ZoneOffset.UTC).minusDays(100 - ++changes % 100);
        var result = changes % 2 == 0 ? "negative" : "positive";
        colony.post(
                        DOV,
                        "/animals/" + sires.get(1) + "/care-records",
                        Map.of("kind", "test", "sampledOn", on.toString(), "agent", "nidovirus", "result", result))
                .statusCode(201);
    }

    private void terms() {
        var collection = colony.get(DOV, "/collections").extract().<String>path("[0].id");
        as(DOV).body(Map.of("littersAtMost", ++changes % 1000, "mayCrossBorders", false, "notes", "rack " + changes))
                .put(colony.path("/collections/" + collection + "/pairing-terms"))
                .then()
                .statusCode(200);
    }

    private ValidatableResponse diary() {
        return colony.post(
                DOV,
                "/animals/" + young + "/care-records",
                Map.of("kind", "health-note", "on", "2024-07-01", "text", "wheezes " + ++changes));
    }

    private ValidatableResponse sign() {
        return colony.post(
                DOV,
                "/animals/" + dam + "/breeding-signs",
                Map.of(
                        "kind",
                        "copulation",
                        "happenedOn",
                        LocalDate.of(2022, 1, 5).plusDays(++changes).toString()));
    }

    private ValidatableResponse task() {
        var due = LocalDate.now(ZoneOffset.UTC).plusDays(1 + ++changes % 20).toString();
        return colony.post(DOV, "/care-tasks", Map.of("animal", dam, "what", "weigh " + changes, "dueOn", due));
    }

    private ValidatableResponse introduction(String day) {
        return colony.post(
                DOV, "/introductions", Map.of("female", dam, "male", sires.get(1), "fromOn", day, "untilOn", day));
    }

    private ValidatableResponse litter() {
        var litter = new HashMap<String, Object>(counts(0));
        litter.putAll(Map.of("dam", dam, "born", "2024-06-29"));
        return colony.post(DOV, "/litters", litter);
    }

    static Map<String, Object> counts(int unfertilised) {
        return Map.of("liveBorn", 1, "stillborn", 0, "unfertilised", unfertilised, "ovaFound", 1 + unfertilised);
    }

    private void outcome() {
        correct(colony.path("/litters/" + ids.get("litter")), ++changes);
    }

    /** One of dov's. */
    static void correct(String address, int unfertilised) {
        as(DOV).header("If-Match", as(DOV).get(address).header("ETag"))
                .body(counts(unfertilised))
                .put(address + "/outcome")
                .then()
                .statusCode(200);
    }

    // ── where it is looked for ───────────────────────────────────────────────────────────────────────────────────────

    /** Every operation that reads, for everything that dov has and the asker's own animal. */
    List<String> addresses(String asker) {
        var addresses = new ArrayList<String>();
        for (var operation : Operation.all()) {
            if (operation.reads() && !operation.path().contains("/photos/{photo}")) {
                addresses.addAll(addresses(operation, asker));
            }
        }
        addresses.add(colony.path("/animals?limit=1"));
        addresses.add(colony.path("/litters?dam=" + dam));
        addresses.add(colony.path("/introductions?animal=" + dam));
        addresses.add(colony.path("/pairings?for=" + own.get(asker)));
        addresses.add(colony.path("/animals/" + dam + "/photos/" + ids.get("photo")));
        return addresses;
    }

    private List<String> addresses(Operation operation, String asker) {
        var filled = new ArrayList<>(List.of(operation.path().replace("{population}", colony.code)));
        for (var parameter : operation.parameters()) {
            var values = values(operation.path(), parameter, asker);
            var next = new ArrayList<String>();
            for (var address : filled) {
                values.forEach(value -> next.add(address.replace("{" + parameter + "}", value)));
            }
            filled = next;
        }
        return filled;
    }

    private List<String> values(String path, String parameter, String asker) {
        return switch (parameter) {
            case "population" -> List.of(colony.code);
            case "number" ->
                path.contains("kinship")
                        ? List.of(own.get(asker))
                        : path.endsWith("{number}")
                                ? List.of(own.get(asker), dam, young, dead)
                                : List.of(own.get(asker), dam, young);
            case "other" -> List.of(dam, young, own.get(asker.equals(INES) ? WREN : INES));
            case "id" ->
                List.of(
                        path.contains("/introductions")
                                ? ids.get("introduction")
                                : path.contains("/breeding-signs") ? ids.get("sign") : Things.none());
            case "key" -> List.of(ids.get("task"));
            case "record", "litter", "sheet", "transfer", "plan" -> List.of(ids.get(parameter));
            case "collection" ->
                colony.get(DOV, "/collections")
                        .extract()
                        .<List<String>>path("id")
                        .subList(0, 1);
            case "countedOn" -> List.of("2024-01-01");
            case "type", "code", "secret" -> List.of("nothing-of-this-name");
            default -> List.of(Things.none());
        };
    }
}
