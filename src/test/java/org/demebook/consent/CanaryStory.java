package org.demebook.consent;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.consent.CanaryWorld.KEEPERS;
import static org.demebook.consent.CanaryWorld.created;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.demebook.Colony;
import org.demebook.ancestry.ToldInTests.Telling;
import org.demebook.crossing.Handed;
import org.demebook.federation.Gone;
import org.demebook.federation.Upland;
import org.demebook.keeper.RegionStory;
import org.demebook.notation.Sex;
import org.demebook.photo.CameraPhoto;

/** What three keepers write down in a population of the canary: at least one thing of every kind that can be asked for. */
final class CanaryStory {
    private static final byte[] PICTURE = CameraPhoto.plainJpeg(40, 30);

    private final CanaryWorld world;
    private final CanaryWords words;
    private final Colony colony;

    CanaryStory(CanaryWorld world) {
        this.world = world;
        words = world.words;
        colony = world.colony;
    }

    void write() {
        stateRegions();
        hearOfElsewhere();
        for (var keeper : KEEPERS) {
            var next = KEEPERS.get((KEEPERS.indexOf(keeper) + 1) % KEEPERS.size());
            var dam = register(keeper, "female", List.of());
            var sire = register(keeper, "male", List.of());
            register(keeper, "female", List.of(dam, sire));
            die(keeper, register(keeper, "female", List.of(dam, sire)));
            breed(keeper, dam, sire);
            care(keeper, dam);
            look(keeper, dam);
            hold(keeper, sire);
            sheet(keeper, dam);
            sell(keeper, next);
            offer(keeper, next);
            lend(keeper, next);
            handOut(keeper);
            calendar(keeper);
            importInVain(keeper);
        }
        elsewhere();
        claimOneAnimal(WREN, DOV);
        new CanaryApproaches(world).write(register(INES, "male", List.of()));
        new CanarySeason(world).write(this);
        incubate();
    }

    /** Another node told of animals: of those that may be computed with nobody reads a thing. */
    private void hearOfElsewhere() {
        var elsewhere = new Telling(world.colony.code);
        var hidden = elsewhere.skeleton(Sex.MALE, null, null);
        var between = elsewhere.skeleton(Sex.FEMALE, elsewhere.skeleton(Sex.FEMALE, null, null), hidden);
        elsewhere.shown(900, Sex.MALE, LocalDate.of(2015, 5, 1), between, hidden);
        elsewhere.tell();
        for (var secret : List.of(
                elsewhere.number(hidden),
                elsewhere.number(between),
                hidden.toString(),
                between.toString(),
                elsewhere.keeper.toString())) {
            world.words.told(secret);
        }
    }

    private void stateRegions() {
        KEEPERS.forEach(keeper -> {
            world.collections.put(keeper, RegionStory.collection(colony, keeper));
            world.regions.put(keeper, words.text("region"));
        });
        created(RegionStory.fix(colony, world.regions.values().toArray(String[]::new)), "");
        // who fixed them wrote them
        world.addressFor(CanaryWorld.COORDINATOR, colony.path("/my-archive"), world.regions.values().stream());
        var names = List.copyOf(world.regions.values());
        created(RegionStory.apart(colony, names.get(0), names.get(1), 310), "");
        for (var keeper : KEEPERS) {
            created(RegionStory.state(colony, keeper, world.collections.get(keeper), world.regions.get(keeper)), "");
            // what regions there are says nothing of who is where: every member reads their names
            world.addressFor(keeper, colony.path("/regions"), world.regions.values().stream());
            world.addressFor(keeper, colony.path("/regions/distances"), world.regions.values().stream());
            // what is noted of the terms is for who acts for the collection, whatever is granted
            var terms = Map.of("littersAtMost", 3, "farthestKilometres", 150, "notes", words.text("ref", keeper));
            created(
                    Colony.as(keeper)
                            .body(terms)
                            .put(colony.path("/collections/" + world.collections.get(keeper) + "/pairing-terms"))
                            .then(),
                    "");
        }
    }

    // ── animals ──────────────────────────────────────────────────────────────────────────────────────────────────────

    String register(String keeper, String sex, List<String> parents) {
        return register(keeper, sex, parents, words.transponder(), List.of());
    }

    private String register(String keeper, String sex, List<String> parents, String transponder, List<?> leave) {
        var mark = words.text("mark");
        var notes = words.text("note");
        var locality = words.text("loc");
        var body = Colony.animal(sex, parents.isEmpty() ? "2018-05-05" : "2021-06-01");
        body.put("transponders", List.of(transponder));
        body.put("marks", List.of(mark));
        body.put("notes", notes);
        // a keeper's own reference is theirs alone, whatever is granted and whoever has the animal later
        body.put("ownReference", words.text("ref", keeper));
        // not of founders: what is of a doubtful locality, or descends from it, is on hold and proposed to nobody
        boolean isDoubtful = !parents.isEmpty();
        if (isDoubtful) {
            body.put("locality", Map.of("locality", locality, "certainty", "doubtful"));
        }
        body.put("leave", leave);
        if (!parents.isEmpty()) {
            body.put("dam", parents.get(0));
            body.put("sire", Map.of("kind", "known", "animal", parents.get(1)));
        }
        var number = colony.register(keeper, body);
        var animal = new CanaryWorld.Animal(number, sex, keeper, parents);
        animal.say("marks-and-photos", transponder);
        animal.say("marks-and-photos", mark);
        animal.say("notes", notes);
        if (isDoubtful) {
            animal.say("identity", locality);
        }
        animal.livesIn(world.regions.get(keeper));
        world.animals.put(number, animal);
        return number;
    }

    private void die(String keeper, String number) {
        var cause = words.text("own");
        created(colony.put(keeper, number, "/death", Map.of("on", "2024-02-03", "cause", cause)), "");
        world.animals.get(number).say("health", cause);
    }

    // ── breeding ─────────────────────────────────────────────────────────────────────────────────────────────────────

    private void breed(String keeper, String dam, String sire) {
        var introduction = Map.of(
                "female",
                dam,
                "male",
                sire,
                "fromOn",
                "2024-01-05",
                "untilOn",
                "2024-02-20",
                "notes",
                words.text("own", keeper));
        world.thing(
                "introduction",
                created(colony.post(keeper, "/introductions", introduction), "introduction.id"),
                keeper);
        var sign = Map.of(
                "kind",
                "post-ovulation-shed",
                "happenedOn",
                "2024-03-14",
                "howKnown",
                "seen",
                "notes",
                words.text("own", keeper));
        world.thing(
                "breeding-sign",
                created(colony.post(keeper, "/animals/" + dam + "/breeding-signs", sign), "sign.id"),
                keeper);

        var mark = words.text("mark");
        var notes = words.text("note");
        var litter = new HashMap<String, Object>();
        litter.put("dam", dam);
        litter.put("born", "2024-06-29");
        litter.put("sire", Map.of("kind", "known", "animal", sire));
        litter.putAll(Map.of("liveBorn", 1, "ovaFound", 5, "unfertilised", 4, "stillborn", 0));
        litter.putAll(Map.of("malformedLive", 0, "malformedStillborn", 0, "notes", words.text("own", keeper)));
        litter.put(
                "young",
                List.of(Map.of("ownReference", words.text("ref", keeper), "marks", List.of(mark), "notes", notes)));
        var born = colony.post(keeper, "/litters", litter);
        var id = created(born, "litter.id");
        world.thing("litter", id, keeper);
        var young =
                new CanaryWorld.Animal(born.extract().path("litter.young[0]"), "unknown", keeper, List.of(dam, sire));
        young.say("marks-and-photos", mark);
        young.say("notes", notes);
        young.livesIn(world.regions.get(keeper));
        world.animals.put(young.number(), young);
        photograph(
                keeper,
                "litter-photo",
                "/litters/" + id + "/photos?moment=before-separation&label=" + words.text("own", keeper));
    }

    private void hold(String keeper, String number) {
        // why an animal is not to breed is read by who holds it and by coordinators
        var reason = words.text("own", keeper, CanaryWorld.COORDINATOR);
        created(
                Colony.as(keeper)
                        .body(Map.of("reason", reason))
                        .put(colony.path("/animals/" + number + "/breeding-hold"))
                        .then(),
                "");
    }

    /** Only eggs are incubated; so the last that is written is what the population is. */
    private void incubate() {
        var population = new LinkedHashMap<String, Object>(Map.of("code", colony.code, "name", "Marrowfin Cay"));
        population.putAll(Map.of("taxon", "insular dwarf Boa", "locality", "Marrowfin Cay", "birthMode", "egg-laying"));
        var etag = Colony.as(WREN).get(colony.path("")).header("ETag");
        created(
                Colony.as(WREN)
                        .header("If-Match", etag)
                        .body(population)
                        .put(colony.path(""))
                        .then(),
                "");
        for (var keeper : KEEPERS) {
            var dam = world.animals.values().stream()
                    .filter(animal ->
                            animal.parties().contains(keeper) && animal.sides().isEmpty())
                    .findFirst()
                    .orElseThrow();
            var incubation = Map.of(
                    "startedOn",
                    "2025-03-01",
                    "setPoint",
                    Map.of("value", 31.5, "unit", "c"),
                    "notes",
                    words.text("own", keeper));
            world.thing(
                    "incubation",
                    created(colony.post(keeper, "/animals/" + dam.number() + "/incubations", incubation), "id"),
                    keeper);
        }
    }

    // ── care ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    private void care(String keeper, String dam) {
        var note = Map.of("kind", "health-note", "on", "2024-07-01", "text", words.text("own", keeper));
        world.thing(
                "record", created(colony.post(keeper, "/animals/" + dam + "/care-records", note), "record.id"), keeper);
        for (var kind : List.of("task", "silenced-task")) {
            var due = LocalDate.now().plusDays(3).toString();
            var task = Map.of("what", words.text("own", keeper), "dueOn", due, "animal", dam);
            world.thing(kind, created(colony.post(keeper, "/care-tasks", task), "key"), keeper);
        }
        var silenced = world.ids("silenced-task").stream()
                .filter(key ->
                        Colony.as(keeper).get(colony.path("/care-tasks/" + key)).statusCode() == 200)
                .findFirst()
                .orElseThrow();
        created(colony.post(keeper, "/care-tasks/" + silenced + "/silence", Map.of("scope", "task")), "");
        world.thing("silence", colony.get(keeper, "/care-silences").extract().path("[0].id"), keeper);
    }

    private void look(String keeper, String dam) {
        var label = words.text("own");
        world.animals.get(dam).say("marks-and-photos", label);
        photograph(keeper, "photo", "/animals/" + dam + "/photos?label=" + label);
    }

    private void photograph(String keeper, String kind, String where) {
        var photo = Colony.as(keeper).contentType("image/jpeg").body(PICTURE).post(colony.path(where));
        world.thing(kind, created(photo.then(), "id"), keeper);
    }

    private void calendar(String keeper) {
        String address = Colony.as(keeper).post("/api/v1/calendar").path("address");
        // whoever has the link of a calendar reads it as its keeper does; it is secret and given away by nobody else
        world.eyes(address, keeper);
        var secret = address.substring(address.lastIndexOf('/') + 1).replace(".ics", "");
        world.thing("secret", words.told(secret, keeper), keeper);
    }

    /** A sheet with a day that is none: nothing is registered, and its report is its keeper's. */
    private void importInVain(String keeper) {
        var sheet = "id,sex,born,notes\n%s,f,on a %s,%s\n"
                .formatted(words.text("ref", keeper), words.text("own", keeper), words.text("note", keeper));
        var started = Colony.as(keeper).contentType("text/csv").body(sheet).post(colony.path("/imports"));
        world.thing("import", created(started.then(), "id"), keeper);
    }

    // ── hands ────────────────────────────────────────────────────────────────────────────────────────────────────────

    private void sheet(String keeper, String dam) {
        var issued = colony.post(keeper, "/animals/" + dam + "/handover-sheets", Map.of("kind", "sale"));
        world.thing("sheet", created(issued, "id"), keeper);
        String code = issued.extract().path("code");
        world.thing("code", words.told(code, keeper), keeper);
        // the paper is for whoever has it: its code leads to the number of the animal and of its parents (here unknown)
        world.address("/sheets/" + code, dam);
    }

    private String transfer(String from, String number, String kind, String to) {
        var body = new HashMap<String, Object>(Map.of("animal", number, "kind", kind));
        if (to == null) {
            body.put("withClaimCode", true);
            body.put("note", words.text("own", from));
        } else {
            body.put("to", to);
            // what is written to an offer is for its two sides
            body.put("note", words.text("own", from, to));
            world.animals.get(number).sides().addAll(List.of(from, to));
        }
        var offered = colony.post(from, "/transfers", body);
        var id = created(offered, "transfer.id");
        world.thing("transfer", id, to == null ? new String[] {from} : new String[] {from, to});
        if (to == null) {
            words.told(offered.extract().path("claimCode"), from);
        }
        return id;
    }

    private void offer(String from, String to) {
        transfer(from, register(from, "female", List.of()), "gift", to);
    }

    private void handOut(String from) {
        transfer(from, register(from, "female", List.of()), "sale", null);
    }

    /** What is written to somebody on another node, and from there, is for its side here. */
    private void elsewhere() {
        var upland = Upland.besides(colony);
        int serial = 1;
        for (var keeper : KEEPERS) {
            var body = new HashMap<String, Object>(Map.of("kind", "gift", "node", upland.seat()));
            body.put("animal", register(keeper, "female", List.of()));
            body.put("to", words.text("own", keeper));
            body.put("note", words.text("own", keeper));
            body.putAll(Map.of("withNotes", true, "withName", true));
            world.thing("crossing", created(colony.post(keeper, "/crossings", body), "id"), keeper);

            var animal = upland.animal();
            var record = Handed.json(keeper, colony.code, upland.seat(), serial++, animal);
            record.put("note", words.text("own", keeper)).put("notes", words.text("own", keeper));
            world.thing("crossing", upland.offer(animal, record).toString(), keeper);

            var twice = register(keeper, "female", List.of());
            var claim = Map.of("animal", twice, "other", upland.entered().toString());
            world.thing(
                    "claim-elsewhere",
                    created(colony.post(keeper, "/federation/same-animal-claims", claim), "id"),
                    keeper);
            var between = upland.called(twice);
            world.thing(
                    "claim-elsewhere",
                    upland.participant.claimSame(upland.animal(), between).toString(),
                    keeper);
        }
        upland.exchange();
        // what a node that is gone had, and nobody told of, waits for a coordinator
        var gone = Upland.besides(colony);
        gone.animal();
        gone.give();
        for (var animal : Gone.adopt(colony, gone, upland)) {
            world.thing("adopted-animal", animal, CanaryWorld.COORDINATOR);
        }
    }

    /** An animal of two: each of them sees it, and both have to grant it. */
    private void lend(String from, String to) {
        var number = register(from, "female", List.of());
        var id = transfer(from, number, "breeding-loan", to);
        created(colony.post(to, "/transfers/" + id + "/acceptance", Map.of()), "");
        world.animals.get(number).parties().add(to);
        world.animals.get(number).livesIn(world.regions.get(to));
    }

    /** Sold, and reported by the seller to be in the seller's rack all the same. */
    private void sell(String from, String to) {
        var number = register(from, "female", List.of());
        var id = transfer(from, number, "sale", to);
        created(colony.post(to, "/transfers/" + id + "/acceptance", Map.of("handedOverOn", "2025-09-01")), "");
        var animal = world.animals.get(number);
        animal.parties().clear();
        animal.parties().add(to);
        // what somebody wrote is theirs to take out, word for word, also of what they have no more
        world.addressFor(from, colony.path("/my-archive"), animal.everyWord());
        animal.livesIn(world.regions.get(to));
        // the notes of one owner are not shown to the next
        animal.words().remove("notes").forEach(notes -> words.told(notes));
        // a dispute is read by its sides and by coordinators, who settle it; none is told who the other is
        animal.namers().addAll(List.of(from, to, CanaryWorld.COORDINATOR));
        var report = Map.of("seenOn", "2025-09-05", "note", words.text("own", from, to, CanaryWorld.COORDINATOR));
        world.thing(
                "dispute",
                created(colony.post(from, "/animals/" + number + "/disputes", report), "id"),
                from,
                to,
                CanaryWorld.COORDINATOR);
    }

    /** Two records with one transponder: whoever reads it may learn that it is taken, and claims by the number on paper. */
    private void claimOneAnimal(String one, String other) {
        var transponder = words.transponder();
        var first = register(one, "female", List.of(), transponder, List.of());
        var leave = List.of(Map.of("rule", "transponder-taken", "reason", words.text("own", other)));
        var second = register(other, "female", List.of(), transponder, leave);
        var body = Map.of("other", first, "evidence", words.text("own", one, other));
        world.thing(
                "same-animal-claim",
                created(colony.post(other, "/animals/" + second + "/same-animal-claims", body), "id"),
                one,
                other);
        // both keepers read the claim with both numbers
        for (var number : List.of(first, second)) {
            world.animals.get(number).namers().addAll(new TreeSet<>(List.of(one, other)));
        }
    }
}
