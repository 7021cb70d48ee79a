package org.demebook.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;

import io.quarkus.arc.All;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.demebook.Colony;
import org.demebook.approach.ApproachStory;
import org.demebook.breeding.BreedingStory;
import org.demebook.care.CareStory;
import org.demebook.census.CountStory;
import org.demebook.consent.ConsentStory;
import org.demebook.crossing.CrossingStory;
import org.demebook.diary.DiaryStory;
import org.demebook.federation.FederationStory;
import org.demebook.handover.SheetStory;
import org.demebook.incubation.IncubationStory;
import org.demebook.keeper.RegionStory;
import org.demebook.leaving.LeaverStory;
import org.demebook.litter.LitterStory;
import org.demebook.planning.PlanningStory;
import org.demebook.programme.ProgrammeStory;
import org.demebook.registry.FindingStory;
import org.demebook.start.TestServer;
import org.demebook.telling.SameAnimalStory;
import org.demebook.transfer.DisputeStory;
import org.junit.jupiter.api.Test;

/**
 * State is what a replay of the journal gives: a population in which one of everything happened is taken out of the
 * database, built again from the bytes of its journal, and compared row by row, column by column.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ReplayTest {
    /**
     * Tables that are no state: pictures, the words of sheets and what plans were computed with by their digest, how an import
     * went, who looked at what, and which pseudonyms were told. And the federated journals: they are not what this node's own journal tells
     * but journals themselves, of this node and of others, which are kept as they were signed; what was lost of them comes back from peers;
     * nor which of their entries stand told, and under which pseudonyms.
     */
    private static final List<String> NO_STATE = List.of(
            "photo_content",
            "handover_sheet_words",
            "journal_words",
            "season_input",
            "import_run",
            "disclosure",
            "unnamed_partners",
            "federated_store",
            "federated_journal",
            "federated_entry",
            "federated_unchecked",
            "federation_alarm",
            "telling",
            "custodian");

    private static final Duration QUIET = Duration.ofSeconds(3);
    private static final Duration PATIENCE = Duration.ofMinutes(1);

    private static final String TABLES_OF_POPULATIONS = """
        select t.relname
        from pg_class t
        join pg_namespace n on n.oid = t.relnamespace and n.nspname = 'demebook'
        join pg_index i on i.indrelid = t.oid and i.indisprimary
        join pg_attribute a on a.attrelid = t.oid and a.attnum = i.indkey[0] and a.attname = 'population_id'
        where t.relkind = 'r'
        order by t.relname
        """;

    @Inject
    Journal journal;

    @Inject
    @All
    List<FactBook> books;

    @Test
    void a_population_replayed_from_its_journal_is_the_same_in_every_row() throws IOException {
        var colony = Colony.found();
        tell(colony);
        var populationId =
                UUID.fromString(ask("select population_id from demebook.population where code = ?", colony.code)
                        .get(0));
        assertThat(ask("select distinct type from demebook.journal_entry where population_id = ?", populationId))
                .as("the story tells every fact that any room knows")
                .containsAll(knownTypes());
        awaitQuiet(populationId);
        var before = rows(populationId);
        var entries = journal.entries(populationId, 0, 10_000);

        empty(populationId);
        assertThat(rows(populationId).values()).allMatch(List::isEmpty);
        journal.replay(populationId, colony.code, entries);

        var after = rows(populationId);
        assertThat(after.keySet()).isEqualTo(before.keySet());
        before.forEach((table, rows) -> assertThat(after.get(table)).as(table).isEqualTo(rows));
        assertThat(before.values().stream().mapToInt(List::size).sum()).isGreaterThan(60);
        // and life goes on
        colony.female(WREN);
    }

    /** What the server does by itself for other nodes, about once a second, is done. */
    private static void awaitQuiet(UUID populationId) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        var head = "";
        var present = head(populationId);
        while (!head.equals(present)) {
            assertThat(System.nanoTime()).as("the server goes on by itself").isLessThan(end);
            head = present;
            try {
                Thread.sleep(QUIET.toMillis());
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
            present = head(populationId);
        }
    }

    private static String head(UUID populationId) {
        return ask("select seq::text from demebook.journal_head where population_id = ?", populationId)
                .get(0);
    }

    private TreeSet<String> knownTypes() {
        return books.stream()
                .flatMap(book -> book.facts().stream())
                .map(Fact::typeOf)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static TreeMap<String, List<String>> rows(UUID populationId) {
        var rows = new TreeMap<String, List<String>>();
        for (var table : ask(TABLES_OF_POPULATIONS)) {
            if (!NO_STATE.contains(table)) {
                rows.put(
                        table,
                        ask(
                                "select to_json(t)::text from demebook.%s t where population_id = ? order by 1"
                                        .formatted(table),
                                populationId));
            }
        }
        assertThat(rows).containsKeys("animal", "litter", "transfer", "journal_entry");
        return rows;
    }

    /** All in one statement, at whose end foreign keys are looked at: the tables refer to each other in circles. */
    private static void empty(UUID populationId) {
        var deletions = ask(TABLES_OF_POPULATIONS).stream()
                .filter(table -> !List.of("photo_content", "handover_sheet_words", "journal_words")
                        .contains(table))
                .map(table -> "gone_%1$s as (delete from demebook.%1$s where population_id = '%2$s')"
                        .formatted(table, populationId))
                .collect(Collectors.joining(", "));
        change("with " + deletions + " update demebook.journal_head set seq = seq where false");
    }

    // ── the story: one of everything ─────────────────────────────────────────────────────────────────────────────────

    private static void tell(Colony colony) throws IOException {
        keepersComeAndGo(colony);
        animalsAreRegisteredAndCorrected(colony);
        recordsAreMergedAndSeparated(colony);
        littersAreBorn(colony);
        DiaryStory.tell(colony);
        LitterStory.tell(colony);
        animalsChangeHands(colony);
        DisputeStory.tell(colony);
        BreedingStory.tell(colony);
        IncubationStory.tell(colony);
        SheetStory.tell(colony);
        FindingStory.tell(colony);
        CareStory.tell(colony);
        RegionStory.tell(colony);
        PlanningStory.tell(colony);
        ConsentStory.tell(colony);
        CountStory.tell(colony);
        ApproachStory.tell(colony);
        ProgrammeStory.tell(colony);
        FederationStory.tell(colony);
        CrossingStory.tell(colony);
        SameAnimalStory.tell(colony);
        LeaverStory.tell(colony);
        colony.post(INES, "/collections", Map.of("label", "household", "sharedWith", List.of(DOV)))
                .statusCode(201);
    }

    private static void keepersComeAndGo(Colony colony) {
        as(DOV).delete(colony.path("/members/" + DOV)).then().statusCode(204);
        colony.post(WREN, "/members", Map.of("name", DOV, "role", "member")).statusCode(200);
        colony.post(WREN, "/members", Map.of("name", DOV, "role", "coordinator"))
                .statusCode(200);
        as(WREN).header("If-Match", as(WREN).get(colony.path("")).header("ETag"))
                .body(Map.of(
                        "code", colony.code,
                        "name", "Marrowfin Cay",
                        "taxon", "insular dwarf Boa",
                        "locality", "Marrowfin Cay, both islets",
                        "birthMode", "live-bearing"))
                .put(colony.path(""))
                .then()
                .statusCode(200);
    }

    private static void animalsAreRegisteredAndCorrected(Colony colony) throws IOException {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var other = colony.male(WREN);
        var young = animal("unknown", "2023-07");
        young.putAll(Map.of(
                "dam",
                dam,
                "sire",
                either(sire, other),
                "origin",
                "captive-bred",
                "sourceCode",
                "C",
                "ownReference",
                "K1",
                "transponders",
                List.of("981000000000999"),
                "marks",
                List.of("broken stripe"),
                "notes",
                "from a shed"));
        var number = colony.register(WREN, young);
        var died = animal("male", "../2019-05-01");
        died.putAll(Map.of("died", "2024", "notes", ""));
        colony.register(WREN, died);
        var fatherless = animal("female", "2024-06-29");
        fatherless.putAll(
                Map.of("dam", dam, "sire", Map.of("kind", "none", "fusion", "central", "secondDivision", 0.25)));
        colony.register(WREN, fatherless);

        colony.put(WREN, number, "/parentage", Map.of("dam", dam, "sire", Map.of("kind", "known", "animal", sire)))
                .statusCode(200);
        colony.put(WREN, number, "/parentage", Map.of("dam", dam, "sire", either(other, sire)))
                .statusCode(200);
        colony.put(WREN, number, "/sex", Map.of("sex", "female")).statusCode(200);
        colony.put(WREN, number, "/death", Map.of("on", "2025-01-03", "cause", "found dead"))
                .statusCode(200);
        as(WREN).header("If-Match", colony.etag(WREN, number))
                .delete(colony.path("/animals/" + number + "/death"))
                .then()
                .statusCode(200);
        colony.put(
                        WREN,
                        number,
                        "/description",
                        Map.of("born", "2023-07-04", "origin", "unknown", "malformed", true, "notes", "calm"))
                .statusCode(200);
        var mark = Map.of("kind", "mark", "value", "white chin");
        colony.post(WREN, "/animals/" + number + "/identifiers", mark).statusCode(200);
        as(WREN).header("If-Match", colony.etag(WREN, number))
                .delete(colony.path("/animals/" + number + "/identifiers/mark/white chin"))
                .then()
                .statusCode(200);
        colony.post(WREN, "/animals/" + number + "/identifiers", mark).statusCode(200);
        as(WREN).contentType("image/png")
                .body(picture())
                .post(colony.path("/animals/" + number + "/photos?label=head&takenOn=2025-03-01"))
                .then()
                .statusCode(201);
    }

    private static Map<String, Object> either(String sire, String other) {
        return Map.of(
                "kind",
                "candidates",
                "candidates",
                List.of(Map.of("animal", sire, "probability", 0.6), Map.of("animal", other, "probability", 0.125)),
                "wholeLitter",
                true);
    }

    private static byte[] picture() throws IOException {
        var bytes = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(32, 24, BufferedImage.TYPE_INT_RGB), "png", bytes);
        return bytes.toByteArray();
    }

    private static void recordsAreMergedAndSeparated(Colony colony) {
        var older = colony.female(WREN);
        for (var reversed : new boolean[] {true, false}) {
            var younger = colony.female(INES);
            String claim = colony.post(INES, "/animals/" + younger + "/same-animal-claims", Map.of("other", older))
                    .statusCode(201)
                    .extract()
                    .path("id");
            colony.post(WREN, "/same-animal-claims/" + claim + "/confirmation", "{}")
                    .statusCode(200);
            if (reversed) {
                colony.post(WREN, "/same-animal-claims/" + claim + "/reversal", "{}")
                        .statusCode(200);
            }
        }
    }

    private static void littersAreBorn(Colony colony) {
        var litter = new HashMap<String, Object>(Map.of(
                "dam", colony.female(WREN),
                "sire", either(colony.male(WREN), colony.male(WREN)),
                "born", "2025-06-29",
                "liveBorn", 3,
                "stillborn", 1,
                "unfertilised", 2,
                "ovaFound", 6,
                "malformedLive", 1,
                "young", List.of(Map.of("sex", "male", "ownReference", "L1", "notes", " "))));
        String id =
                colony.post(WREN, "/litters", litter).statusCode(201).extract().path("litter.id");
        as(WREN).header("If-Match", as(WREN).get(colony.path("/litters/" + id)).header("ETag"))
                .body(Map.of("liveBorn", 4, "stillborn", 1, "unfertilised", 2, "ovaFound", 7))
                .put(colony.path("/litters/" + id + "/outcome"))
                .then()
                .statusCode(200);
        litter.put("dam", colony.female(WREN));
        litter.putAll(Map.of("sire", Map.of("kind", "none"), "notes", "", "young", List.of()));
        colony.post(WREN, "/litters", litter).statusCode(201);
    }

    private static void animalsChangeHands(Colony colony) {
        var animal = colony.female(WREN);
        // one animal again and again: each end makes room for the next
        answer(colony, DOV, offer(colony, WREN, animal, "sale", DOV), "refusal");
        answer(colony, WREN, offer(colony, WREN, animal, "exchange", DOV), "withdrawal");
        var runOut = UUID.fromString(offer(colony, WREN, animal, "gift", DOV));
        change("update demebook.transfer set expires_at = expires_at - interval '1 year' where id = ?", runOut);
        answer(colony, DOV, offer(colony, WREN, animal, "breeding-loan", DOV), "acceptance");
        change("update demebook.transfer set expires_at = expires_at + interval '1 year' where id = ?", runOut);
        answer(colony, WREN, offer(colony, DOV, animal, "loan-return", WREN), "acceptance");
        answer(colony, DOV, offer(colony, WREN, animal, "sale", DOV), "acceptance");
        offer(colony, DOV, animal, "sale", INES);

        var handedOut = colony.female(WREN);
        answer(colony, WREN, handOut(colony, handedOut), "withdrawal");
        handOut(colony, handedOut);
        String id = handOut(colony, colony.female(WREN));
        var until =
                Map.of("expiresOn", LocalDate.now(ZoneOffset.UTC).plusDays(30).toString());
        String code = colony.post(WREN, "/transfers/" + id + "/claim-code", until)
                .statusCode(200)
                .extract()
                .path("claimCode");
        as(DOV).body(Map.of(
                        "code",
                        code,
                        "collection",
                        colony.get(DOV, "/collections").extract().path("[0].id")))
                .post("/api/v1/claims")
                .then()
                .statusCode(200);
    }

    private static String offer(Colony colony, String from, String animal, String kind, String to) {
        return colony.post(
                        from,
                        "/transfers",
                        Map.of("animal", animal, "kind", kind, "to", to, "handedOverOn", "2026-03-29", "note", " "))
                .statusCode(201)
                .extract()
                .path("transfer.id");
    }

    private static String handOut(Colony colony, String animal) {
        return colony.post(WREN, "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", true))
                .statusCode(201)
                .extract()
                .path("transfer.id");
    }

    private static void answer(Colony colony, String keeper, String id, String answer) {
        var body = answer.equals("acceptance")
                ? Map.of(
                        "collection",
                        colony.get(keeper, "/collections").extract().path("[0].id"))
                : Map.of("reason", "");
        colony.post(keeper, "/transfers/" + id + "/" + answer, body).statusCode(200);
    }
}
