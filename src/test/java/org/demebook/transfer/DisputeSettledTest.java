package org.demebook.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.transfer.Departures.Departure;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** How a dispute ends, and where the animal is then. Wren and dov coordinate. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DisputeSettledTest {
    @Inject
    Departures departures;

    static Colony colony;
    static Handover handover;
    static Disputed disputed;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        colony.post(WREN, "/members", Map.of("name", DOV, "role", "coordinator"))
                .statusCode(200);
        handover = new Handover(colony);
        disputed = new Disputed(colony);
    }

    @Test
    void a_report_that_is_taken_back_leaves_the_animal_where_it_is() {
        var animal = disputed.soldToInes();
        var id = disputed.reported(animal);
        disputed.end(WREN, id, "withdrawal")
                .statusCode(200)
                .body("state", equalTo("withdrawn"))
                .body("reason", equalTo("we looked again"))
                .body("endedAt", notNullValue());
        isWith(INES, animal);
        disputed.get(INES, id).body("state", equalTo("withdrawn"));
        // and can be made again
        disputed.reported(animal);
    }

    @Test
    void conceded_it_is_where_it_was_reported_and_whose_it_was() {
        var animal = disputed.soldToInes();
        var id = disputed.reported(animal);
        disputed.end(INES, id, "concession").statusCode(200).body("state", equalTo("conceded"));
        isWith(WREN, animal);
        colony.get(INES, "/animals/" + animal).body("$", not(hasKey("held")));
        // it is hers to give again
        handover.accepted(WREN, animal, "sale", INES);
        isWith(INES, animal);
    }

    @Test
    void conceded_while_it_is_handed_out_its_transfer_is_withdrawn_and_the_code_void() {
        var animal = disputed.soldToInes();
        var handedOut = handover.handOut(INES, animal).extract();
        var id = disputed.reported(animal);
        disputed.end(INES, id, "concession").statusCode(200);
        isWith(WREN, animal);
        handover.get(INES, handedOut.path("transfer.id"))
                .body("state", equalTo("withdrawn"))
                .body("$", not(hasKey("dispute")));
        as(DOV).body(Map.of("code", handedOut.path("claimCode"), "collection", handover.collection(DOV)))
                .post("/api/v1/claims")
                .then()
                .statusCode(404)
                .body("type", equalTo("/problems/claim-code-not-valid"));
    }

    @Test
    void conceded_while_it_is_offered_the_offer_is_at_its_end() {
        var animal = disputed.soldToInes();
        var standing = handover.offered(INES, animal, DOV);
        disputed.end(INES, disputed.reported(animal), "concession").statusCode(200);
        handover.answer(DOV, standing, "acceptance").statusCode(409).body("type", equalTo("/problems/transfer-ended"));

        handover.accepted(WREN, animal, "gift", INES);
        var runOut = handover.offered(INES, animal, DOV);
        Handover.runOut(runOut);
        disputed.end(INES, disputed.reported(animal), "concession").statusCode(200);
        handover.get(DOV, runOut).body("state", equalTo("expired"));
        isWith(WREN, animal);
    }

    @Test
    void a_coordinator_on_neither_side_decides_for_who_reported_it() {
        var animal = disputed.soldToInes();
        handover.handOut(INES, animal).statusCode(201);
        var id = disputed.reported(animal);
        disputed.settle(DOV, id, "upheld")
                .statusCode(200)
                .body("state", equalTo("upheld"))
                .body("reason", equalTo("the vet read the transponder there"));
        isWith(WREN, animal);
        disputed.get(INES, id).body("state", equalTo("upheld")).body("reason", containsString("vet"));
    }

    @Test
    void or_for_who_has_it_by_the_register() {
        var animal = disputed.soldToInes();
        var id = disputed.reported(animal);
        disputed.settle(DOV, id, "dismissed").statusCode(200).body("state", equalTo("dismissed"));
        isWith(INES, animal);
        handover.offer(INES, animal, "sale", DOV).statusCode(201);
    }

    @Test
    void nobody_decides_their_own_case_and_a_decision_has_a_reason() {
        var id = disputed.reported(disputed.soldToInes());
        disputed.settle(WREN, id, "upheld")
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"))
                .body("detail", containsString("side"));
        disputed.settle(INES, id, "dismissed").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        colony.post(DOV, "/disputes/" + id + "/settlement", Map.of("outcome", "upheld"))
                .statusCode(422)
                .body("findings[0].field", equalTo("reason"));
    }

    @Test
    void each_side_does_its_own_part_only() {
        var animal = disputed.soldOn(DOV, "2025-09-02");
        var id = disputed.reported(animal);
        for (var keeper : List.of(INES, DOV)) {
            disputed.end(keeper, id, "withdrawal").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
        // ines sold it on: it is not hers to concede
        for (var keeper : List.of(WREN, INES)) {
            disputed.end(keeper, id, "concession").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
        disputed.end(DOV, id, "concession").statusCode(200);
        isWith(WREN, animal);
    }

    @Test
    void the_same_end_twice_is_one_end_and_another_is_refused_with_what_happened() {
        var animal = disputed.soldToInes();
        var id = disputed.reported(animal);
        var first = disputed.end(INES, id, "concession").extract().asString();
        assertThat(disputed.end(INES, id, "concession")
                        .statusCode(200)
                        .extract()
                        .asString())
                .isEqualTo(first);
        disputed.end(WREN, id, "withdrawal")
                .statusCode(409)
                .body("type", equalTo("/problems/dispute-ended"))
                .body("detail", containsString("was conceded"));
        disputed.settle(DOV, id, "dismissed").statusCode(409).body("type", equalTo("/problems/dispute-ended"));
        isWith(WREN, animal);
    }

    // ── loans ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_owner_has_a_lent_animal_back_when_the_borrower_concedes() {
        var animal = colony.male(WREN);
        handover.accepted(WREN, animal, "breeding-loan", INES);
        disputed.end(INES, disputed.reported(animal), "concession").statusCode(200);
        isWith(WREN, animal);
        colony.get(INES, "/animals/" + animal).body("$", not(hasKey("held")));
    }

    @Test
    void a_borrower_who_still_has_it_is_its_holder_and_not_its_owner() {
        var animal = colony.male(WREN);
        handover.accepted(WREN, animal, "breeding-loan", INES);
        handover.accepted(INES, animal, "loan-return", WREN);
        disputed.end(WREN, disputed.reported(INES, animal), "concession").statusCode(200);
        colony.get(INES, "/animals/" + animal)
                .body("held.collection", equalTo(handover.collection(INES)))
                .body("held.owner", equalTo(handover.collection(WREN)));
    }

    @Test
    void a_borrower_does_not_concede_what_is_lent() {
        var animal = disputed.soldToInes();
        handover.accepted(INES, animal, "breeding-loan", DOV);
        var id = disputed.reported(animal);
        disputed.end(DOV, id, "concession").statusCode(403).body("detail", containsString("owner"));
        disputed.end(INES, id, "concession").statusCode(200);
        isWith(WREN, animal);
        colony.get(DOV, "/animals/" + animal).body("$", not(hasKey("held")));
    }

    // ── what others know of it ───────────────────────────────────────────────────────────────────────────────────────

    @Test
    void who_has_it_back_is_not_told_when_it_was_handed_over_between_others() {
        var animal = disputed.soldOn(DOV, "2025-09-02");
        colony.put(DOV, animal, "/death", Map.of("on", "2025-08-20")).statusCode(200);
        var rules = "findings.findAll { it.rule == 'event-after-death' }.message";
        colony.get(DOV, "/animals/" + animal + "/findings").body(rules, hasItem(containsString("2025-09-02")));
        disputed.end(DOV, disputed.reported(animal), "concession").statusCode(200);
        colony.get(WREN, "/animals/" + animal + "/findings").statusCode(200).body(rules, empty());
    }

    @Test
    void it_had_left_where_it_was_by_the_register_when_it_was_seen_elsewhere() {
        var animal = disputed.soldToInes();
        disputed.end(INES, disputed.reported(animal), "concession").statusCode(200);
        var population =
                UUID.fromString(ask("select population_id from demebook.population where code = ?", colony.code)
                        .get(0));
        var id =
                UUID.fromString(colony.get(WREN, "/animals/" + animal).extract().<String>path("id"));
        assertThat(departures.of(population, List.of(id)))
                .contains(new Departure(id, UUID.fromString(handover.collection(INES)), LocalDate.parse("2025-09-05")));
    }

    private static void isWith(String keeper, String animal) {
        colony.get(keeper, "/animals/" + animal)
                .body("held.collection", equalTo(handover.collection(keeper)))
                .body("held.owner", nullValue());
    }
}
