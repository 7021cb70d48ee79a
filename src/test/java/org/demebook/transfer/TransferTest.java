package org.demebook.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.transfer.Handover.runOut;
import static org.demebook.transfer.Handover.with;
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
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Offers between members, and what becomes of them. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class TransferTest {
    static Colony colony;
    static Handover handover;

    @Inject
    Expiry expiry;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        handover = new Handover(colony);
    }

    @Test
    void an_accepted_offer_moves_the_animal_at_once() {
        var animal = colony.female(WREN);
        String id = colony.post(
                        WREN,
                        "/transfers",
                        Map.of(
                                "animal",
                                animal,
                                "kind",
                                "sale",
                                "to",
                                INES,
                                "handedOverOn",
                                "2026-03-29",
                                "note",
                                "eats well"))
                .statusCode(201)
                .body("transfer.state", equalTo("offered"))
                .body("transfer.given", equalTo(true))
                .body("$", not(hasKey("claimCode")))
                .extract()
                .path("transfer.id");
        colony.get(WREN, "/animals/" + animal).body("held.collection", equalTo(handover.collection(WREN)));

        handover.answer(INES, id, "acceptance")
                .statusCode(200)
                .body("state", equalTo("accepted"))
                .body("handedOverOn", equalTo("2026-03-29"))
                .body("toCollection", equalTo(handover.collection(INES)))
                .body("endedAt", notNullValue());

        colony.get(INES, "/animals/" + animal)
                .body("held.collection", equalTo(handover.collection(INES)))
                .body("held.owner", nullValue());
        colony.get(WREN, "/animals/" + animal).body("$", not(hasKey("held")));
        handover.get(WREN, id).body("state", equalTo("accepted")).body("toCollection", nullValue());
    }

    @Test
    void the_receiver_sees_identity_and_parentage_and_of_the_giver_the_sign_in_name_alone() {
        var dam = colony.female(WREN);
        var young = animal("female", "2024-06-29");
        young.putAll(
                Map.of("dam", dam, "notes", "paid in cash", "ownReference", "box 4", "marks", List.of("split saddle")));
        var number = colony.register(WREN, young);
        var id = handover.offered(WREN, number, INES);

        handover.get(INES, id)
                .statusCode(200)
                .body("given", equalTo(false))
                .body("from", equalTo(WREN))
                .body("animal.number", equalTo(number))
                .body("animal.dam", equalTo(dam))
                .body("$", not(hasKey("fromCollection")))
                .body("animal", not(hasKey("held")));

        // her notes and her reference stay hers also when the animal has moved
        handover.answer(INES, id, "acceptance").statusCode(200);
        colony.get(INES, "/animals/" + number)
                .body("held.notes", nullValue())
                .body("held.identifiers.value", contains("split saddle"));
    }

    @Test
    void the_receiver_says_into_which_collection() {
        var own = Colony.found();
        var hand = new Handover(own);
        String second = own.post(INES, "/collections", Map.of("label", "cellar"))
                .statusCode(201)
                .extract()
                .path("id");
        var animal = own.female(WREN);
        var id = hand.offered(WREN, animal, INES);

        hand.answer(INES, id, "acceptance").statusCode(422).body("type", equalTo("/problems/no-such-collection"));
        hand.answer(INES, id, "acceptance", Map.of("collection", hand.collection(WREN)))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
        hand.answer(INES, id, "acceptance", Map.of("collection", second)).statusCode(200);
        own.get(INES, "/animals/" + animal).body("held.collection", equalTo(second));
        // accepting again into another one is another answer
        hand.answer(INES, id, "acceptance", Map.of("collection", hand.collection(INES)))
                .statusCode(409)
                .body("type", equalTo("/problems/transfer-ended"));
    }

    @Test
    void a_receiver_without_a_collection_is_told_to_open_one() {
        var own = Colony.found();
        Colony.token(OUTSIDER);
        own.post(WREN, "/members", Map.of("name", OUTSIDER, "role", "member")).statusCode(200);
        var id = new Handover(own).offered(WREN, own.female(WREN), OUTSIDER);
        new Handover(own)
                .answer(OUTSIDER, id, "acceptance")
                .statusCode(409)
                .body("type", equalTo("/problems/no-collection"));
    }

    @Test
    void a_refused_or_withdrawn_offer_leaves_the_animal_where_it_is() {
        var animal = colony.female(WREN);
        var refused = handover.offered(WREN, animal, INES);
        handover.answer(INES, refused, "refusal", Map.of("reason", "no room"))
                .statusCode(200)
                .body("state", equalTo("refused"));
        handover.get(WREN, refused).body("reason", equalTo("no room"));

        var withdrawn = handover.offered(WREN, animal, DOV);
        handover.answer(WREN, withdrawn, "withdrawal", Map.of("reason", "keeping her"))
                .statusCode(200)
                .body("state", equalTo("withdrawn"));
        handover.get(DOV, withdrawn).body("state", equalTo("withdrawn")).body("reason", equalTo("keeping her"));
        colony.get(WREN, "/animals/" + animal).body("held.collection", equalTo(handover.collection(WREN)));
    }

    @Test
    void the_same_answer_twice_is_one_answer() {
        var accepted = handover.offered(WREN, colony.female(WREN), INES);
        var first = handover.answer(INES, accepted, "acceptance")
                .statusCode(200)
                .extract()
                .asString();
        assertThat(handover.answer(INES, accepted, "acceptance")
                        .statusCode(200)
                        .extract()
                        .asString())
                .isEqualTo(first);
        var refused = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(INES, refused, "refusal").statusCode(200);
        handover.answer(INES, refused, "refusal").statusCode(200).body("state", equalTo("refused"));
        var withdrawn = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(WREN, withdrawn, "withdrawal").statusCode(200);
        handover.answer(WREN, withdrawn, "withdrawal").statusCode(200).body("state", equalTo("withdrawn"));
    }

    @Test
    void another_answer_after_the_end_is_refused_with_what_happened() {
        var accepted = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(INES, accepted, "acceptance").statusCode(200);
        ended(WREN, accepted, "withdrawal", "accepted");
        ended(INES, accepted, "refusal", "accepted");
        var refused = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(INES, refused, "refusal").statusCode(200);
        ended(INES, refused, "acceptance", "refused");
        ended(WREN, refused, "withdrawal", "refused");
        var withdrawn = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(WREN, withdrawn, "withdrawal").statusCode(200);
        ended(INES, withdrawn, "acceptance", "withdrawn");
        ended(WREN, withdrawn, "claim-code", "withdrawn");
    }

    private static void ended(String keeper, String id, String answer, String what) {
        handover.answer(keeper, id, answer)
                .statusCode(409)
                .body("type", equalTo("/problems/transfer-ended"))
                .body("detail", containsString("was " + what));
    }

    @Test
    void each_side_does_its_own_part_only() {
        var id = handover.offered(WREN, colony.female(WREN), INES);
        for (var answer : List.of("acceptance", "refusal")) {
            handover.answer(WREN, id, answer).statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
        for (var answer : List.of("withdrawal", "claim-code")) {
            handover.answer(INES, id, answer).statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
        handover.answer(WREN, id, "claim-code").statusCode(403).body("detail", containsString("without a claim code"));
    }

    @Test
    void for_anybody_else_there_is_no_such_transfer() {
        var id = handover.offered(WREN, colony.female(WREN), INES);
        handover.get(DOV, id).statusCode(404).body("type", equalTo("/problems/no-such-transfer"));
        for (var answer : List.of("acceptance", "refusal", "withdrawal", "claim-code")) {
            handover.answer(DOV, id, answer).statusCode(404).body("type", equalTo("/problems/no-such-transfer"));
        }
        handover.get(OUTSIDER, id).statusCode(404).body("type", equalTo("/problems/no-such-population"));
        handover.get(WREN, "no-id").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    @Test
    void an_animal_is_in_at_most_one_transfer() {
        var animal = colony.female(WREN);
        var id = handover.offered(WREN, animal, INES);
        handover.offer(WREN, animal, "gift", DOV)
                .statusCode(409)
                .body("type", equalTo("/problems/already-in-transfer"))
                .body("detail", containsString(id));
        // to others there is nothing but somebody else's animal
        handover.offer(DOV, animal, "gift", INES).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void dead_and_merged_animals_do_not_move() {
        var dead = colony.female(WREN);
        var offered = colony.female(WREN);
        var id = handover.offered(WREN, offered, INES);
        for (var animal : List.of(dead, offered)) {
            colony.put(WREN, animal, "/death", Map.of("on", "2026-01-02")).statusCode(200);
        }
        handover.offer(WREN, dead, "sale", INES).statusCode(409).body("type", equalTo("/problems/animal-dead"));
        handover.answer(INES, id, "acceptance").statusCode(409).body("type", equalTo("/problems/animal-dead"));

        var older = colony.female(WREN);
        var younger = colony.female(WREN);
        var pending = handover.offered(WREN, younger, INES);
        colony.post(WREN, "/animals/" + younger + "/same-animal-claims", Map.of("other", older))
                .statusCode(201);
        handover.answer(INES, pending, "acceptance").statusCode(409).body("type", equalTo("/problems/animal-merged"));
        handover.answer(WREN, pending, "withdrawal").statusCode(200);
        handover.offer(WREN, younger, "sale", INES).statusCode(409).body("type", equalTo("/problems/animal-merged"));
        handover.offer(WREN, older, "sale", INES).statusCode(201);
    }

    @Test
    void an_offer_names_one_fellow_member_other_than_the_holder() {
        var animal = colony.female(WREN);
        handover.offer(WREN, animal, "sale", OUTSIDER)
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-keeper"));
        handover.offer(WREN, animal, "sale", WREN)
                .statusCode(422)
                .body("type", equalTo("/problems/transfer-to-yourself"));
        var sale = Map.of("animal", animal, "kind", "sale");
        colony.post(WREN, "/transfers", sale).statusCode(422).body("findings[0].field", equalTo("to"));
        colony.post(WREN, "/transfers", with(with(sale, "to", INES), "withClaimCode", true))
                .statusCode(422)
                .body("findings[0].field", equalTo("to"));
        colony.post(WREN, "/transfers", with(with(sale, "to", INES), "kind", "loan"))
                .statusCode(422)
                .body("detail", containsString("breeding-loan"));
        handover.offer(WREN, "none", "sale", INES).statusCode(422).body("type", equalTo("/problems/mistyped-number"));
    }

    @Test
    void two_keepers_of_one_household_have_nothing_to_transfer() {
        var own = Colony.found();
        String shared = own.post(WREN, "/collections", Map.of("label", "ours", "sharedWith", List.of(DOV)))
                .statusCode(201)
                .extract()
                .path("id");
        var animal = own.register(WREN, with(animal("female", "2020"), "collection", shared));
        new Handover(own)
                .offer(WREN, animal, "gift", DOV)
                .statusCode(422)
                .body("type", equalTo("/problems/transfer-to-yourself"));
        // and either of them gives
        var id = new Handover(own).offered(DOV, animal, INES);
        new Handover(own).answer(WREN, id, "withdrawal").statusCode(200);
    }

    @Test
    void an_offer_stands_for_two_weeks_or_as_long_as_is_said() {
        var today = LocalDate.now(ZoneOffset.UTC);
        var usual = handover.offered(WREN, colony.female(WREN), INES);
        handover.get(WREN, usual).body("expiresAt", containsString(today.plusDays(15) + "T00:00:00Z"));
        var sale = Map.of("animal", colony.female(WREN), "kind", "sale", "to", INES);
        for (var day : List.of(today.minusDays(1), today.plusYears(1).plusDays(1))) {
            colony.post(WREN, "/transfers", with(sale, "expiresOn", day.toString()))
                    .statusCode(422)
                    .body("type", equalTo("/problems/invalid-values"))
                    .body("findings[0].field", equalTo("expiresOn"));
        }
        colony.post(WREN, "/transfers", with(sale, "expiresOn", today.toString()))
                .statusCode(201)
                .body("transfer.expiresAt", containsString(today.plusDays(1) + "T00:00:00Z"));
    }

    @Test
    void the_day_of_the_hand_over_is_past_and_after_the_birth() {
        var animal = colony.female(WREN);
        var sale = Map.of("animal", animal, "kind", "sale", "to", INES);
        var future = LocalDate.now().plusDays(3).toString();
        colony.post(WREN, "/transfers", with(sale, "handedOverOn", future))
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
        colony.post(WREN, "/transfers", with(sale, "handedOverOn", "2020-05-31"))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("2020-06-01"));
        var id = handover.offered(WREN, animal, INES);
        handover.answer(INES, id, "acceptance", Map.of("handedOverOn", future))
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
        handover.answer(INES, id, "acceptance", Map.of("handedOverOn", "2026-03-29"))
                .statusCode(200)
                .body("handedOverOn", equalTo("2026-03-29"));
    }

    @Test
    void an_offer_that_has_run_out_is_refused_and_its_end_is_written_down() {
        var animal = colony.female(WREN);
        var id = handover.offered(WREN, animal, INES);
        runOut(id);
        for (var answer : List.of("acceptance", "refusal")) {
            handover.answer(INES, id, answer)
                    .statusCode(409)
                    .body("type", equalTo("/problems/transfer-ended"))
                    .body("detail", containsString("stood until"));
        }
        handover.answer(WREN, id, "withdrawal").statusCode(409).body("type", equalTo("/problems/transfer-ended"));

        expiry.expireDue();

        handover.get(INES, id).body("state", equalTo("expired")).body("endedAt", notNullValue());
        assertThat(ask(
                        "select count(*) from demebook.journal_entry where type = 'transfer-expired' and convert_from(body, 'UTF8') like ?",
                        "%" + id + "%"))
                .containsExactly("1");
        ended(INES, id, "acceptance", "expired");
    }

    @Test
    void an_offer_that_has_run_out_makes_room_for_the_next() {
        var animal = colony.female(WREN);
        var id = handover.offered(WREN, animal, INES);
        runOut(id);
        var next = handover.offered(WREN, animal, DOV);
        handover.get(WREN, id).body("state", equalTo("expired"));
        handover.get(DOV, next).body("state", equalTo("offered"));
    }

    @Test
    void what_one_gives_and_receives_is_listed_latest_first_by_state_page_by_page() {
        var own = Colony.found();
        var hand = new Handover(own);
        var first = hand.offered(WREN, own.female(WREN), INES);
        var second = hand.offered(INES, own.female(INES), WREN);
        var third = hand.offered(WREN, own.female(WREN), DOV);
        hand.answer(DOV, third, "refusal").statusCode(200);

        String next = own.get(WREN, "/transfers?limit=2")
                .statusCode(200)
                .body("items.id", contains(third, second))
                .body("items.given", contains(true, false))
                .extract()
                .path("next");
        own.get(WREN, "/transfers?limit=2&after=" + next)
                .body("items.id", contains(first))
                .body("next", nullValue());
        own.get(WREN, "/transfers?state=refused").body("items.id", contains(third));
        own.get(INES, "/transfers").body("items", hasSize(2));
        own.get(WREN, "/transfers?state=lost").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        own.get(WREN, "/transfers?after=bm8").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    @Test
    void the_journal_names_nobody() {
        var id = handover.offered(WREN, colony.female(WREN), INES);
        handover.answer(INES, id, "acceptance").statusCode(200);
        var entries = ask(
                "select convert_from(body, 'UTF8') from demebook.journal_entry where convert_from(body, 'UTF8') like ?",
                "%" + UUID.fromString(id) + "%");
        assertThat(entries).hasSize(2).noneMatch(entry -> entry.contains("\"" + WREN) || entry.contains("\"" + INES));
    }
}
