package org.demebook.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import org.demebook.Colony;
import org.demebook.federation.Upland;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Transfer;
import org.demebook.protocol.Whereabouts;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Between this node and an upland node that runs the real protocol beside it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CrossingTest {
    private static final AtomicLong SERIALS = new AtomicLong(100);

    @jakarta.inject.Inject
    org.demebook.transfer.Departures departures;

    static Colony colony;
    static Upland upland;

    @BeforeEach
    void found() {
        if (upland == null) {
            colony = Colony.found();
            upland = Upland.besides(colony);
        }
    }

    // ── this node gives ──────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_goes_to_a_keeper_on_another_node_exactly_once() {
        var dam = colony.female(WREN);
        var young = colony.young(WREN, "female", "2025-06-29", dam, colony.male(WREN));
        var id = offered(WREN, young);
        get(WREN, id)
                .body("state", equalTo("offered"))
                .body("given", equalTo(true))
                .body("node", equalTo(Upland.CODE))
                .body("to", equalTo("mara"))
                .body("reach.fetched", equalTo(false))
                .body("animal.number", equalTo(young));
        var between = upland.called(young);

        upland.fetch();
        assertThat(upland.transfer(uuid(id)).state()).isEqualTo(Transfer.State.OFFERED);
        var record = HandedRecord.read(upland.participant.record(uuid(id)).orElseThrow());
        assertThat(record.addressee()).isEqualTo("mara");
        assertThat(record.giver()).isNull();
        assertThat(record.number().toString()).isEqualTo(young);
        assertThat(Forebears.of(record))
                .extracting(CrossingView.ToldForebear::line, CrossingView.ToldForebear::number)
                .contains(org.assertj.core.groups.Tuple.tuple("dam", dam));

        upland.participant.accept(uuid(id));
        upland.give();
        eventually(WREN, id, "on-its-way");
        assertThat(upland.whereabouts(between)).isInstanceOf(Whereabouts.InTransit.class);
        assertThat(custody(young)).isEqualTo("null/null/" + id);

        upland.exchange();
        get(WREN, id).body("state", equalTo("arrived")).body("endedAt", notNullValue());
        assertThat(upland.whereabouts(between)).isEqualTo(new Whereabouts.Held(upland.id(), false));
        // B1: who sold it sees it in the crossing as it was told, and nothing of what follows
        get(WREN, id).body("animal.number", equalTo(young)).body("animal.dam", equalTo(dam));
        colony.get(WREN, "/animals/" + young).statusCode(404);
    }

    @Test
    void the_other_node_is_told_that_it_has_the_offer_once_it_cosigned_it() {
        var id = offered(WREN, colony.female(WREN));
        upland.fetch();
        upland.give();
        get(WREN, id).body("reach.fetched", equalTo(true));
    }

    @Test
    void marks_transponders_notes_and_the_giver_s_name_go_along_as_the_giver_ticks() {
        var animal = animal("female", "2024-06-29");
        animal.putAll(Map.of(
                "marks",
                List.of("broken stripe"),
                "transponders",
                List.of("981000000100001"),
                "notes",
                "bites",
                "ownReference",
                "K7"));
        var number = colony.register(WREN, animal);
        var body = offer(number);
        body.putAll(Map.of("withMarks", false, "withNotes", true, "withName", true));
        String id = post(WREN, body).statusCode(201).extract().path("id");
        upland.fetch();
        var json = upland.participant.record(uuid(id)).orElseThrow();
        var record = HandedRecord.read(json);
        assertThat(record.giver()).isEqualTo(WREN);
        assertThat(record.notes()).isEqualTo("bites");
        assertThat(record.marks()).isEmpty();
        assertThat(record.transponders()).containsExactly("981000000100001");
        assertThat(json.toString()).doesNotContain("K7", "broken stripe");
    }

    @Test
    void of_ancestors_the_other_node_is_told_what_their_keepers_grant_it_for_transfers() {
        var own = Colony.foundPrivate();
        var beyond = Upland.besides(own);
        var grandDam = own.female(DOV);
        share(own, DOV, WREN);
        var dam = own.young(WREN, "female", "2022-06-01", grandDam, own.male(WREN));
        var young = own.young(WREN, "female", "2025-06-29", dam, own.male(WREN));
        String id = own.post(WREN, "/crossings", offer(young))
                .statusCode(201)
                .extract()
                .path("id");
        beyond.fetch();
        var told = Forebears.of(
                HandedRecord.read(beyond.participant.record(uuid(id)).orElseThrow()));
        // its own parents, by number: the offer tells them; of the dam nothing was granted to the node
        assertThat(told).extracting(CrossingView.ToldForebear::line).containsExactlyInAnyOrder("dam", "sire");
        assertThat(told).allSatisfy(parent -> assertThat(parent.born()).isNull());
        own.post(WREN, "/crossings/" + id + "/withdrawal", Map.of()).statusCode(200);

        grantToNode(own, WREN);
        id = own.post(WREN, "/crossings", offer(young))
                .statusCode(201)
                .extract()
                .path("id");
        beyond.fetch();
        told = Forebears.of(
                HandedRecord.read(beyond.participant.record(uuid(id)).orElseThrow()));
        assertThat(told).extracting(CrossingView.ToldForebear::line).contains("dam", "sire", "dam-dam");
        assertThat(told)
                .filteredOn(forebear -> forebear.line().equals("dam-dam"))
                .allSatisfy(forebear -> assertThat(forebear.born()).isNull());
        assertThat(told)
                .filteredOn(forebear -> forebear.line().equals("dam"))
                .allSatisfy(forebear -> assertThat(forebear.born()).isEqualTo(2022));
    }

    @Test
    void an_offer_is_refused_and_taken_back_and_runs_out_and_the_animal_is_where_it_was() {
        var number = colony.female(WREN);
        var refused = offered(WREN, number);
        upland.fetch();
        upland.participant.reject(uuid(refused));
        upland.exchange();
        get(WREN, refused).body("state", equalTo("refused"));

        var withdrawn = offered(WREN, number);
        upland.exchange();
        answer(WREN, withdrawn, "withdrawal", Map.of("reason", "she sheds"))
                .statusCode(200)
                .body("state", equalTo("withdrawn"))
                .body("reason", equalTo("she sheds"));
        answer(WREN, withdrawn, "withdrawal", Map.of()).statusCode(200);
        upland.exchange();
        assertThat(upland.transfer(uuid(withdrawn)).state()).isEqualTo(Transfer.State.WITHDRAWN);
        // what was told with it is erased there
        assertThat(upland.participant.record(uuid(withdrawn))).isEmpty();
        assertThat(upland.participant.record(uuid(refused))).isEmpty();
        assertThat(custody(number)).endsWith("/null/null");
        colony.post(WREN, "/transfers", Map.of("animal", number, "kind", "sale", "to", INES))
                .statusCode(201);
    }

    @Test
    void what_was_released_is_not_taken_back() {
        var number = colony.female(WREN);
        var id = offered(WREN, number);
        upland.fetch();
        upland.participant.accept(uuid(id));
        upland.give();
        eventually(WREN, id, "on-its-way");
        answer(WREN, id, "withdrawal", Map.of())
                .statusCode(409)
                .body("type", equalTo("/problems/already-released"))
                .body("detail", containsString("ask mara to offer it back"));
        post(WREN, offer(number)).statusCode(409).body("type", equalTo("/problems/animal-elsewhere"));
    }

    @Test
    void an_animal_is_on_offer_to_one_alone() {
        var number = colony.female(WREN);
        var id = offered(WREN, number);
        post(WREN, offer(number))
                .statusCode(409)
                .body("type", equalTo("/problems/already-in-transfer"))
                .body("detail", containsString(id));
        colony.post(WREN, "/transfers", Map.of("animal", number, "kind", "sale", "to", INES))
                .statusCode(409)
                .body("type", equalTo("/problems/already-in-transfer"));

        var other = colony.female(WREN);
        colony.post(WREN, "/transfers", Map.of("animal", other, "kind", "sale", "to", INES))
                .statusCode(201);
        post(WREN, offer(other)).statusCode(409).body("type", equalTo("/problems/already-in-transfer"));
    }

    @Test
    void a_death_a_merge_and_a_dispute_take_the_offer_back() {
        var dead = colony.female(WREN);
        var id = offered(WREN, dead);
        colony.put(WREN, dead, "/death", Map.of("on", "2026-03-01")).statusCode(200);
        get(WREN, id).body("state", equalTo("withdrawn")).body("reason", containsString("died on 2026-03-01"));
        upland.exchange();
        assertThat(upland.transfer(uuid(id)).state()).isEqualTo(Transfer.State.WITHDRAWN);

        var one = colony.female(WREN);
        var same = colony.female(WREN);
        id = offered(WREN, one);
        colony.post(WREN, "/animals/" + one + "/same-animal-claims", Map.of("other", same))
                .statusCode(201)
                .body("state", equalTo("confirmed"));
        get(WREN, id).body("state", equalTo("withdrawn"));

        var disputed = colony.female(WREN);
        colony.post(WREN, "/transfers", Map.of("animal", disputed, "kind", "sale", "to", INES));
        String sale = colony.get(INES, "/transfers?state=offered").extract().path("items[0].id");
        colony.post(INES, "/transfers/" + sale + "/acceptance", Map.of()).statusCode(200);
        id = offered(INES, disputed);
        colony.post(WREN, "/animals/" + disputed + "/disputes", Map.of("seenOn", "2026-09-05"))
                .statusCode(201);
        get(INES, id).body("state", equalTo("withdrawn"));
        post(INES, offer(disputed)).statusCode(409).body("type", equalTo("/problems/animal-in-dispute"));
    }

    @Test
    void a_loan_a_node_without_a_seat_and_this_node_itself_are_refused_with_what_to_do() {
        var number = colony.female(WREN);
        var loan = offer(number);
        loan.put("kind", "breeding-loan");
        post(WREN, loan)
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("A loan stays on one node"));
        var nowhere = offer(number);
        nowhere.put("node", "Z");
        post(WREN, nowhere)
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-node"))
                .body("detail", containsString("these do: U"));
        var here = offer(number);
        here.put("node", "H");
        post(WREN, here).statusCode(422).body("detail", containsString("fellow member"));

        var alone = Colony.found();
        alone.post(WREN, "/crossings", offer(alone.female(WREN)))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-node"))
                .body("detail", containsString("on this node alone"));
    }

    @Test
    void somebody_else_s_crossing_is_not_there() {
        var id = offered(WREN, colony.female(WREN));
        get(INES, id).statusCode(404).body("type", equalTo("/problems/no-such-crossing"));
        answer(INES, id, "withdrawal", Map.of()).statusCode(404);
        answer(INES, id, "acceptance", Map.of()).statusCode(404);
        answer(WREN, id, "acceptance", Map.of()).statusCode(403);
        assertThat(colony.get(INES, "/crossings").extract().<List<String>>path("items.id"))
                .doesNotContain(id);
    }

    @Test
    void nobody_leaves_while_an_animal_is_between_two_nodes() {
        var own = Colony.found();
        Upland.besides(own);
        own.post(INES, "/crossings", offer(own.female(INES))).statusCode(201);
        own.post(INES, "/erasure", Map.of("name", INES))
                .statusCode(409)
                .body("detail", containsString("withdraw that first"));
    }

    // ── this node receives ───────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_offer_from_another_node_is_seen_accepted_and_arrives_with_its_number_and_marks() {
        var animal = upland.animal();
        var serial = SERIALS.addAndGet(2);
        var id = offeredTo(INES, animal, serial);
        var number = number(serial);
        upland.give();
        colony.get(INES, "/crossings?state=offered").body("items.id", org.hamcrest.Matchers.hasItem(id));
        get(INES, id)
                .body("given", equalTo(false))
                .body("from", equalTo("mara"))
                .body("to", equalTo(INES))
                .body("note", equalTo("eats well"))
                .body("told.number", equalTo(number))
                .body("told.forebears", hasSize(1))
                .body("told.forebears[0].line", equalTo("dam"))
                .body("told.forebears[0].born", equalTo(2019))
                .body("animal", nullValue());
        get(WREN, id).statusCode(404);

        answer(INES, id, "acceptance", Map.of()).statusCode(200).body("state", equalTo("accepted"));
        answer(INES, id, "acceptance", Map.of()).statusCode(200);
        answer(INES, id, "refusal", Map.of()).statusCode(409).body("type", equalTo("/problems/crossing-ended"));
        upland.exchange();
        get(INES, id).body("state", equalTo("arrived")).body("animal.number", equalTo(number));
        colony.get(INES, "/animals/" + number)
                .statusCode(200)
                .body("sex", equalTo("female"))
                .body("born", equalTo("2025-06-29"))
                .body("origin", equalTo("captive-bred"))
                .body("locality.locality", equalTo("Marrowfin Cay"))
                .body("held.notes", equalTo("shy"))
                .body("held.identifiers.value", contains("split saddle", "981000000%06d".formatted(serial)))
                .body("held.collection", notNullValue());
        assertThat(upland.whereabouts(animal))
                .isInstanceOfSatisfying(
                        Whereabouts.Held.class, held -> assertThat(held.node()).isNotEqualTo(upland.id()));
        assertThat(upland.called(number)).isEqualTo(animal);
        // and it can be sold on
        colony.post(INES, "/transfers", Map.of("animal", number, "kind", "sale", "to", WREN))
                .statusCode(201);
    }

    @Test
    void what_the_giver_s_node_takes_back_goes_out_of_this_register_too() {
        var serial = SERIALS.addAndGet(2);
        var animal = upland.animal();
        var record = Handed.json(INES, colony.code, Upland.CODE, serial, animal).put("note", "bought in a pub");
        var id = upland.offer(animal, record).toString();
        var told = upland.size();
        upland.give();
        answer(INES, id, "acceptance", Map.of()).statusCode(200);
        upland.exchange();
        get(INES, id).body("note", equalTo("bought in a pub"));
        assertThat(kept("bought in a pub")).isPositive();

        upland.withdraw(told);
        upland.exchange();
        get(INES, id)
                .body("state", equalTo("arrived"))
                .body("note", nullValue())
                .body("$", not(hasKey("told")));
        assertThat(kept("bought in a pub")).isZero();
        // the animal stays, with what she took over
        colony.get(INES, "/animals/" + number(serial)).statusCode(200).body("held.notes", equalTo("shy"));
        // and the receipt is there
        assertThat(upland.participant.missingReceipts()).isEmpty();
    }

    private static int kept(String words) {
        return Integer.parseInt(ask(
                        "select (select count(*) from demebook.journal_words where words like ?) + (select count(*) from"
                                + " demebook.crossing where record like ?)",
                        "%" + words + "%",
                        "%" + words + "%")
                .get(0));
    }

    @Test
    void a_male_that_went_to_another_node_has_left_his_collection() {
        var male = colony.male(WREN);
        var body = offer(male);
        body.put("handedOverOn", "2026-03-29");
        String id = post(WREN, body).statusCode(201).extract().path("id");
        upland.fetch();
        upland.participant.accept(uuid(id));
        upland.exchange();
        var population = upland.population;
        var animal = uuid(ask("select id::text from demebook.animal where number = ?", male)
                .get(0));
        assertThat(departures.of(population, List.of(animal)))
                .extracting(departure -> departure.on().toString())
                .containsExactly("2026-03-29");
    }

    @Test
    void a_refused_offer_leaves_nothing_of_what_was_told() {
        var serial = SERIALS.addAndGet(2);
        var id = offeredTo(INES, upland.animal(), serial);
        upland.give();
        answer(INES, id, "refusal", Map.of())
                .statusCode(200)
                .body("state", equalTo("refused"))
                .body("$", not(hasKey("told")));
        upland.exchange();
        assertThat(upland.transfer(uuid(id)).state()).isIn(Transfer.State.REJECTED, Transfer.State.WITHDRAWN);
        colony.get(INES, "/animals/" + number(serial)).statusCode(404);
    }

    @Test
    void an_offer_that_its_giver_takes_back_is_over() {
        var id = offeredTo(INES, upland.animal(), SERIALS.addAndGet(2));
        upland.give();
        upland.participant.withdraw(uuid(id));
        upland.give();
        get(INES, id).body("state", equalTo("withdrawn"));
        answer(INES, id, "acceptance", Map.of()).statusCode(409);
    }

    @Test
    void an_offer_to_nobody_and_one_with_a_foreign_number_have_no_consequence() {
        var nobody = offeredTo("nobody-of-that-name", upland.animal(), SERIALS.addAndGet(2));
        var snatched = upland.animal();
        var foreign = Handed.to(INES, colony.code, "H", 1, snatched).json();
        var stolen = upland.offer(snatched, foreign).toString();
        var nonsense = foreign.deepCopy();
        nonsense.put("sex", "perhaps");
        var unreadable = upland.offer(upland.animal(), nonsense).toString();
        upland.give();
        for (var id : List.of(nobody, stolen, unreadable)) {
            get(INES, id).statusCode(404);
        }
        assertThat(colony.get(INES, "/crossings").extract().<List<String>>path("items.id"))
                .doesNotContain(nobody, stolen, unreadable);
    }

    @Test
    void an_animal_that_comes_back_stands_under_its_old_record() {
        var number = colony.female(WREN);
        var id = offered(WREN, number);
        upland.fetch();
        upland.participant.accept(uuid(id));
        upland.exchange();
        get(WREN, id).body("state", equalTo("arrived"));
        var between = upland.called(number);
        var rowBefore = ask("select id::text from demebook.animal where number = ?", number);

        var serial = Long.parseLong(number.split("-")[2]);
        var back = upland.offer(
                        between,
                        Handed.to(INES, colony.code, "H", serial, between).json())
                .toString();
        upland.give();
        answer(INES, back, "acceptance", Map.of()).statusCode(200);
        upland.exchange();
        get(INES, back).body("state", equalTo("arrived"));
        assertThat(ask("select id::text from demebook.animal where number = ?", number))
                .isEqualTo(rowBefore);
        colony.get(INES, "/animals/" + number)
                .statusCode(200)
                .body("held.identifiers.value", org.hamcrest.Matchers.hasItem("split saddle"));
        // whoever gave it away does not dispute it any more than anybody else
        post(INES, offer(number)).statusCode(201);
    }

    // ── a register that was restored from a backup ───────────────────────────────────────────────────────────────────

    @Test
    void an_offer_that_the_restored_register_of_the_giver_lacks_is_found_again_in_its_journal() {
        var number = colony.female(WREN);
        var id = offered(WREN, number);
        upland.fetch();
        change("delete from demebook.crossing where id = ?", uuid(id));
        get(WREN, id).statusCode(404);

        upland.participant.accept(uuid(id));
        upland.exchange();
        get(WREN, id)
                .statusCode(200)
                .body("state", equalTo("arrived"))
                .body("to", equalTo("mara"))
                .body("animal.number", equalTo(number));
        colony.get(WREN, "/animals/" + number).statusCode(404);
    }

    @Test
    void an_acceptance_that_the_restored_register_of_the_receiver_lacks_is_found_again_in_its_journal() {
        var serial = SERIALS.addAndGet(2);
        var id = offeredTo(INES, upland.animal(), serial);
        upland.give();
        answer(INES, id, "acceptance", Map.of()).statusCode(200);
        change("delete from demebook.crossing where id = ?", uuid(id));
        get(INES, id).statusCode(404);

        upland.exchange();
        get(INES, id).statusCode(200).body("state", equalTo("arrived"));
        colony.get(INES, "/animals/" + number(serial)).statusCode(200).body("held.collection", notNullValue());
    }

    // ── short forms ──────────────────────────────────────────────────────────────────────────────────────────────────

    private static Map<String, Object> offer(String number) {
        return new HashMap<>(Map.of("animal", number, "kind", "sale", "node", Upland.CODE, "to", "mara"));
    }

    private static ValidatableResponse post(String keeper, Map<String, Object> body) {
        return colony.post(keeper, "/crossings", body);
    }

    private static String offered(String keeper, String number) {
        return post(keeper, offer(number)).statusCode(201).extract().path("id");
    }

    private static String offeredTo(String keeper, AnimalId animal, long serial) {
        return upland.offer(
                        animal,
                        Handed.to(keeper, colony.code, Upland.CODE, serial, animal)
                                .json(),
                        Duration.ofDays(14))
                .toString();
    }

    private static String number(long serial) {
        return new org.demebook.notation.StudbookNumber(colony.code, Upland.CODE, serial).toString();
    }

    private static ValidatableResponse get(String keeper, String id) {
        return colony.get(keeper, "/crossings/" + id);
    }

    private static ValidatableResponse answer(String keeper, String id, String answer, Map<String, ?> body) {
        return colony.post(keeper, "/crossings/" + id + "/" + answer, body);
    }

    /** The node does what follows by itself, within a second or so. */
    private static void eventually(String keeper, String id, String state) {
        for (int i = 0; i < 50; i++) {
            if (get(keeper, id).extract().path("state").equals(state)) {
                return;
            }
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        get(keeper, id).body("state", equalTo(state));
    }

    private static UUID uuid(String id) {
        return UUID.fromString(id);
    }

    private static String custody(String number) {
        return ask(
                        "select coalesce(collection_id::text, 'null') || '/' || coalesce(transfer_id::text, 'null') || '/' ||"
                                + " coalesce(crossing_id::text, 'null') from demebook.animal where number = ?",
                        number)
                .get(0);
    }

    private static void share(Colony own, String giver, String to) {
        grant(own, giver, Map.of("kind", "keeper", "name", to), "pedigree-view");
    }

    private static void grantToNode(Colony own, String giver) {
        grant(own, giver, Map.of("kind", "node", "node", Upland.CODE), "transfer");
    }

    private static void grant(Colony own, String giver, Map<String, String> recipient, String purpose) {
        String collection = own.get(giver, "/collections").extract().path("[0].id");
        as(giver)
                .body(Map.of(
                        "collection", collection,
                        "recipient", recipient,
                        "fieldGroups", List.of("identity", "parentage"),
                        "purposes", List.of(purpose),
                        "actions", List.of("read")))
                .post(own.path("/grants"))
                .then()
                .statusCode(201);
    }
}
