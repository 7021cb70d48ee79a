package org.demebook.leaving;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.crossing.Handed;
import org.demebook.federation.Upland;
import org.demebook.keeper.RegionStory;
import org.demebook.photo.CameraPhoto;
import org.demebook.programme.ProgrammeStory;
import org.demebook.programme.Seasons;

/** A keeper who writes words wherever words can be written, and leaves. */
public final class LeaverStory {
    final Colony colony;
    final String name;
    final List<String> words = new ArrayList<>();

    private int pictures;

    String dam;
    String sire;
    String young;
    String lent;
    String sold;

    LeaverStory(Colony colony) {
        this.colony = colony;
        this.name = "tamsin" + UUID.randomUUID().toString().substring(0, 13).replace("-", "");
        words.add(name);
        Colony.token(name);
        colony.post(WREN, "/members", Map.of("name", name, "role", "member")).statusCode(200);
        colony.post(name, "/collections", Map.of("label", word())).statusCode(201);
        colony.share(name, "open-pedigree");
    }

    /** For the test that replays the journal: everything, one shared collection, and the end. */
    public static void tell(Colony colony) {
        var story = new LeaverStory(colony);
        story.writeEverything();
        var shared = story.sharedWith(INES);
        colony.register(story.name, with(animal("male", "2021"), "collection", shared, "notes", "of the household"));
        story.terms(shared, "the household's room");
        story.leave().statusCode(204);
    }

    io.restassured.response.ValidatableResponse leave() {
        return colony.post(name, "/erasure", Map.of("name", name));
    }

    /** A text that is found nowhere else. */
    String word() {
        var word = "wordq" + UUID.randomUUID().toString().replace("-", "") + "x";
        words.add(word);
        return word;
    }

    String sharedWith(String other) {
        return colony.post(name, "/collections", Map.of("label", "the two of us", "sharedWith", List.of(other)))
                .statusCode(201)
                .extract()
                .path("id");
    }

    void writeEverything() {
        animals();
        breeding();
        diary();
        consent();
        transfers();
        crossings();
        plan();
        papers();
    }

    private void animals() {
        dam = registered("female", "2020-06-01", Map.of());
        sire = registered("male", "2020-06-01", Map.of());
        young = registered("female", "2023-07-01", Map.of("dam", dam, "sire", Map.of("kind", "known", "animal", sire)));
        var mark = word();
        colony.post(name, "/animals/" + dam + "/identifiers", Map.of("kind", "mark", "value", mark))
                .statusCode(200);
        as(name).header("If-Match", colony.etag(name, dam))
                .delete(colony.path("/animals/" + dam + "/identifiers/mark/" + mark))
                .then()
                .statusCode(200);
        colony.put(name, sire, "/description", Map.of("born", "2020-06-02", "origin", "unknown", "notes", word()))
                .statusCode(200);
        var dead = registered("female", "2019", Map.of());
        colony.put(name, dead, "/death", Map.of("on", "2025-01-03", "cause", word()))
                .statusCode(200);
        photograph("/animals/" + young + "/photos?label=" + word());
        var twin = colony.female(INES);
        colony.post(
                        name,
                        "/animals/" + registered("female", "2020-06-01", Map.of()) + "/same-animal-claims",
                        Map.of("other", twin, "evidence", word()))
                .statusCode(201);
        var late = animal("male", "2025-06-29");
        late.putAll(Map.of("dam", dead, "leave", List.of(Map.of("rule", "dam-died-before-birth", "reason", word()))));
        colony.register(name, late);
        colony.put(name, young, "/breeding-hold", Map.of("reason", word())).statusCode(200);
        terms(RegionStory.collection(colony, name), word());
    }

    private void terms(String collection, String notes) {
        as(name).body(Map.of("littersAtMost", 2, "notes", notes))
                .put(colony.path("/collections/" + collection + "/pairing-terms"))
                .then()
                .statusCode(200);
    }

    private String registered(String sex, String born, Map<String, Object> more) {
        var animal = animal(sex, born);
        animal.putAll(Map.of("ownReference", word(), "marks", List.of(word()), "notes", word()));
        animal.put("transponders", List.of("9810%011d".formatted(new Random().nextLong(100_000_000_000L))));
        animal.putAll(more);
        return colony.register(name, animal);
    }

    private void photograph(String where) {
        as(name).contentType("image/jpeg")
                .body(CameraPhoto.plainJpeg(40, 30 + pictures++))
                .post(colony.path(where))
                .then()
                .statusCode(201);
    }

    private void breeding() {
        String meeting = colony.post(
                        name,
                        "/introductions",
                        Map.of("female", dam, "male", sire, "fromOn", "2026-01-05", "notes", word()))
                .statusCode(201)
                .extract()
                .path("introduction.id");
        correct("/introductions/" + meeting, Map.of("fromOn", "2026-01-06", "notes", word()));
        colony.post(name, "/introductions/" + meeting + "/end", Map.of("untilOn", "2026-02-20"))
                .statusCode(200);
        String never = colony.post(
                        name,
                        "/introductions",
                        Map.of("female", young, "male", sire, "fromOn", "2026-01-05", "notes", word()))
                .statusCode(201)
                .extract()
                .path("introduction.id");
        colony.post(name, "/introductions/" + never + "/withdrawal", Map.of("reason", word()))
                .statusCode(200);
        var sheds = new ArrayList<String>();
        for (var day : List.of("2026-03-14", "2026-02-01")) {
            sheds.add(colony.post(name, "/animals/" + dam + "/breeding-signs", shed(day))
                    .statusCode(201)
                    .extract()
                    .path("sign.id"));
        }
        correct("/breeding-signs/" + sheds.get(0), shed("2026-03-15"));
        colony.post(name, "/breeding-signs/" + sheds.get(1) + "/withdrawal", Map.of("reason", word()))
                .statusCode(200);
        var litter = new HashMap<String, Object>(Map.of("dam", dam, "born", "2025-06-29", "notes", word()));
        litter.put("sire", Map.of("kind", "known", "animal", sire));
        litter.putAll(Map.of("liveBorn", 1, "stillborn", 0, "unfertilised", 4, "ovaFound", 5));
        litter.put("young", List.of(Map.of("sex", "male", "ownReference", word(), "notes", word())));
        String id =
                colony.post(name, "/litters", litter).statusCode(201).extract().path("litter.id");
        photograph("/litters/" + id + "/photos?moment=after-separation&label=" + word());
    }

    private Map<String, Object> shed(String day) {
        return Map.of("kind", "post-ovulation-shed", "happenedOn", day, "howKnown", "seen", "notes", word());
    }

    private void correct(String what, Map<String, Object> body) {
        as(name).header("If-Match", as(name).get(colony.path(what)).header("ETag"))
                .body(body)
                .put(colony.path(what))
                .then()
                .statusCode(200);
    }

    private void diary() {
        var meal = record(Map.of("kind", "meal", "on", "2026-03-03", "outcome", "taken", "prey", word()));
        correct(
                "/care-records/" + meal,
                Map.of("kind", "meal", "on", "2026-03-03", "outcome", "refused", "prey", word()));
        record(Map.of("kind", "move", "on", "2026-03-06", "place", word()));
        var note = record(Map.of("kind", "health-note", "on", "2026-03-07", "text", word()));
        colony.post(name, "/care-records/" + note + "/end", Map.of("on", "2026-04-01"))
                .statusCode(200);
        var test = new HashMap<String, Object>(Map.of("kind", "test", "sampledOn", "2026-03-08", "agent", word()));
        test.putAll(Map.of("method", word(), "sample", word(), "laboratoryReference", word(), "result", "negative"));
        record(test);
        var today = LocalDate.now(ZoneOffset.UTC).toString();
        var keys = new ArrayList<String>();
        for (int i = 0; i < 2; i++) {
            keys.add(colony.post(name, "/care-tasks", Map.of("what", word(), "dueOn", today, "animal", dam))
                    .statusCode(201)
                    .extract()
                    .path("key"));
        }
        colony.post(name, "/care-tasks/" + keys.get(0) + "/completion", Map.of())
                .statusCode(200);
    }

    private String record(Map<String, Object> record) {
        return colony.post(name, "/animals/" + dam + "/care-records", record)
                .statusCode(201)
                .extract()
                .path("record.id");
    }

    private void consent() {
        for (int i = 0; i < 2; i++) {
            var grant = new HashMap<String, Object>(Map.of("recipient", Map.of("kind", "keeper", "name", INES)));
            grant.put("fieldGroups", List.of("marks-and-photos", "custody"));
            grant.putAll(Map.of("purposes", List.of("pedigree-view"), "actions", List.of("read")));
            grant.putAll(Map.of("animals", List.of(dam, young), "conditions", word()));
            String id = colony.post(name, "/grants", grant)
                    .statusCode(201)
                    .extract()
                    .path("id");
            if (i == 0) {
                colony.post(name, "/grants/" + id + "/withdrawal", "{}").statusCode(200);
            }
        }
        as(name).body(Map.of("waived", true))
                .put(colony.path("/count-waiver"))
                .then()
                .statusCode(200);
        as(name).body(Map.of()).post("/api/v1/calendar").then().statusCode(200);
    }

    private void transfers() {
        var given = registered("female", "2021-06-01", Map.of());
        end(INES, offered(name, given, "sale", INES), "refusal", Map.of("reason", "no room"));
        end(name, offered(name, given, "sale", INES), "withdrawal", Map.of("reason", word()));
        String handedOut = colony.post(
                        name,
                        "/transfers",
                        Map.of("animal", given, "kind", "sale", "withClaimCode", true, "note", word()))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        end(name, handedOut, "withdrawal", Map.of("reason", word()));
        end(INES, offered(name, given, "sale", INES), "acceptance", Map.of());
        sold = given;
        String dispute = colony.post(
                        name,
                        "/animals/" + sold + "/disputes",
                        Map.of("seenOn", LocalDate.now(ZoneOffset.UTC).toString(), "note", word()))
                .statusCode(201)
                .extract()
                .path("id");
        colony.post(name, "/disputes/" + dispute + "/withdrawal", Map.of("reason", word()))
                .statusCode(200);
        end(name, offered(INES, colony.female(INES), "gift", name), "refusal", Map.of("reason", word()));
        lent = registered("male", "2021-06-01", Map.of());
        end(INES, offered(name, lent, "breeding-loan", INES), "acceptance", Map.of());
    }

    private void crossings() {
        var upland = Upland.besides(colony);
        var given = registered("female", "2021-06-01", Map.of());
        String id = null;
        for (var how : List.of("withdrawal", "arrival")) {
            var offer = new HashMap<String, Object>(Map.of("animal", given, "kind", "sale", "node", upland.seat()));
            offer.putAll(Map.of("to", word(), "note", word(), "withName", true, "withNotes", true));
            id = colony.post(name, "/crossings", offer)
                    .statusCode(201)
                    .extract()
                    .path("id");
            if (how.equals("withdrawal")) {
                colony.post(name, "/crossings/" + id + "/withdrawal", Map.of("reason", word()))
                        .statusCode(200);
            }
        }
        upland.fetch();
        upland.participant.accept(UUID.fromString(id));
        upland.exchange();

        var animal = upland.animal();
        var came = upland.offer(
                animal,
                Handed.json(name, colony.code, upland.seat(), 1_001, animal)
                        .put("note", word())
                        .put("notes", word()));
        upland.give();
        colony.post(
                        name,
                        "/crossings/" + came + "/acceptance",
                        Map.of("collection", RegionStory.collection(colony, name)))
                .statusCode(200);
        upland.exchange();
    }

    String offered(String from, String animal, String kind, String to) {
        var note = from.equals(name) ? word() : "as agreed";
        return colony.post(from, "/transfers", Map.of("animal", animal, "kind", kind, "to", to, "note", note))
                .statusCode(201)
                .extract()
                .path("transfer.id");
    }

    void end(String keeper, String transfer, String how, Map<String, Object> body) {
        colony.post(keeper, "/transfers/" + transfer + "/" + how, body).statusCode(200);
    }

    private void plan() {
        var partners = Map.of("dam", colony.female(WREN), "sire", sire);
        var plan = Seasons.of(colony)
                .issued(Map.of(
                        "pairOn",
                        LocalDate.now(ZoneOffset.UTC).plusMonths(6).toString(),
                        "littersAtMost",
                        1,
                        "together",
                        List.of(partners)));
        var litter = ProgrammeStory.onlyLitter(colony, plan);
        ProgrammeStory.answer(colony, name, plan, litter, "later", "rests", word());
        ProgrammeStory.answer(colony, name, plan, litter, "decline", "no-reason", word());
    }

    private void papers() {
        for (int i = 0; i < 2; i++) {
            String id = colony.post(
                            name, "/animals/" + dam + "/handover-sheets", Map.of("kind", "sale", "showName", true))
                    .statusCode(201)
                    .extract()
                    .path("id");
            if (i == 0) {
                colony.post(name, "/handover-sheets/" + id + "/withdrawal", Map.of("reason", word()))
                        .statusCode(200);
            }
        }
        var location = as(name).contentType("text/csv")
                .body("id,sex,born\r\n" + word() + ",not a sex " + word() + ",2021\r\n")
                .post(colony.path("/imports"))
                .then()
                .statusCode(202)
                .extract()
                .header("Location");
        while (as(name).get(location).path("state").equals("running")) {
            Thread.onSpinWait();
        }
    }

    static Map<String, Object> with(Map<String, Object> body, String field, Object value, String other, Object more) {
        var changed = new HashMap<>(body);
        changed.put(field, value);
        changed.put(other, more);
        return changed;
    }
}
