package org.demebook.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** An animal that is reported in two places, and what holds until that is settled. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DisputeTest {
    static Colony colony;
    static Handover handover;
    static Disputed disputed;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        handover = new Handover(colony);
        disputed = new Disputed(colony);
    }

    // M-103 = 014 × 013
    @Test
    void ines_reports_m103_sold_and_wren_reports_it_in_her_rack() {
        var world = Marrowfin.settled();
        var cay = world.colony;
        var m103 = cay.young(WREN, "female", "2025-06-29", world.number(13), world.number(14));
        new Handover(cay).accepted(WREN, m103, "sale", INES);
        String sold = cay.post(
                        INES,
                        "/transfers",
                        Map.of("animal", m103, "kind", "sale", "withClaimCode", true, "handedOverOn", "2025-09-02"))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        var before = all(cay, "2025-10-01");

        String dispute = cay.post(
                        WREN,
                        "/animals/" + m103 + "/disputes",
                        Map.of("seenOn", "2025-09-05", "note", "she is in tub 7"))
                .statusCode(201)
                .body("animal", equalTo(m103))
                .body("state", equalTo("open"))
                .body("reportedByYou", equalTo(true))
                .extract()
                .path("id");

        cay.get(INES, "/transfers/" + sold).body("state", equalTo("handed-out")).body("dispute", equalTo(dispute));
        cay.get(INES, "/disputes/" + dispute)
                .statusCode(200)
                .body("reportedByYou", equalTo(false))
                .body("seenOn", equalTo("2025-09-05"))
                .body("note", equalTo("she is in tub 7"))
                .body("transfer", equalTo(sold));
        assertThat(all(cay, "2025-10-02")).as("M-103 once").isEqualTo(before);
    }

    /** How many animals a release tells; it names no keeper. */
    private static int all(Colony cay, String countedOn) {
        var release = cay.post(WREN, "/count-releases", Map.of("countedOn", countedOn))
                .statusCode(201)
                .extract();
        assertThat(release.asString()).doesNotContain(WREN, INES);
        return release.path("cells.find { it.sex == 'all' && it.age == 'all' }.count");
    }

    @Test
    void no_side_learns_who_the_other_is() {
        var own = Colony.found();
        var there = new Disputed(own);
        var animal = there.soldOn(DOV, "2025-09-02");
        var id = there.reported(animal);

        // wren coordinates, and is told no more for it: she is a side
        for (var answer : List.of(
                there.get(WREN, id), own.get(WREN, "/disputes"), own.get(WREN, "/animals/" + animal + "/disputes"))) {
            assertThat(answer.statusCode(200).extract().asString())
                    .contains(there.handover.collection(WREN))
                    .doesNotContain("\"transfer\"", "\"sides\"", INES, DOV, "2025-09-02")
                    .doesNotContain(there.handover.collection(DOV), there.handover.collection(INES));
        }
        for (var keeper : List.of(INES, DOV)) {
            assertThat(there.get(keeper, id).statusCode(200).extract().asString())
                    .doesNotContain("\"sides\"", "\"collection\"", WREN)
                    .doesNotContain(there.handover.collection(WREN));
        }
    }

    @Test
    void a_coordinator_on_neither_side_sees_whom_to_ask() {
        var own = Colony.found();
        own.post(WREN, "/members", Map.of("name", DOV, "role", "coordinator")).statusCode(200);
        var there = new Disputed(own);
        var id = there.reported(there.soldToInes());
        there.get(DOV, id)
                .statusCode(200)
                .body("sides.reporters", contains(WREN))
                .body("sides.holders", contains(INES))
                .body("note", containsString("transponder"))
                .body("$", not(hasKey("transfer")))
                .body("$", not(hasKey("collection")));
        own.get(DOV, "/disputes?state=open").body("items.id", contains(id));
        own.get(DOV, "/disputes?state=upheld").body("items", empty());
        own.get(DOV, "/disputes?state=lost").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    @Test
    void who_never_gave_or_received_the_animal_is_answered_as_if_it_had_never_moved() {
        var colony = Colony.found();
        var disputed = new Disputed(colony);
        var moved = disputed.soldToInes();
        var unmoved = colony.female(WREN);
        var id = disputed.reported(moved);
        var about = disputed.report(DOV, moved, "2025-09-05").statusCode(404).extract();
        var absent = disputed.report(DOV, unmoved, "2025-09-05").extract();
        assertThat(about.asString().replace(moved, unmoved)).isEqualTo(absent.asString());
        assertThat((String) about.path("type")).isEqualTo("/problems/no-such-transfer");

        disputed.get(DOV, id).statusCode(404).body("type", equalTo("/problems/no-such-dispute"));
        for (var how : List.of("withdrawal", "concession")) {
            disputed.end(DOV, id, how).statusCode(404).body("type", equalTo("/problems/no-such-dispute"));
        }
        disputed.settle(DOV, id, "upheld").statusCode(404).body("type", equalTo("/problems/no-such-dispute"));
        colony.get(DOV, "/animals/" + moved + "/disputes").statusCode(200).body("$", empty());
        colony.get(DOV, "/disputes").body("items", empty());
        disputed.get(OUTSIDER, id).statusCode(404).body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void an_offer_that_came_to_nothing_makes_nobody_a_side() {
        var animal = colony.female(WREN);
        handover.answer(INES, handover.offered(WREN, animal, INES), "refusal").statusCode(200);
        handover.answer(WREN, handover.offered(WREN, animal, INES), "withdrawal")
                .statusCode(200);
        Handover.runOut(handover.offered(WREN, animal, INES));
        disputed.report(INES, animal, "2025-09-05").statusCode(404).body("type", equalTo("/problems/no-such-transfer"));
    }

    @Test
    void an_animal_in_dispute_is_neither_offered_nor_accepted_until_that_is_settled() {
        var animal = disputed.soldToInes();
        var offered = handover.offered(INES, animal, DOV);
        var id = disputed.reported(animal);

        handover.answer(DOV, offered, "acceptance")
                .statusCode(409)
                .body("type", equalTo("/problems/animal-in-dispute"))
                .body("detail", containsString("coordinator"));
        handover.get(DOV, offered).body("dispute", equalTo(id));
        handover.answer(INES, offered, "withdrawal").statusCode(200);
        handover.offer(INES, animal, "gift", DOV).statusCode(409).body("type", equalTo("/problems/animal-in-dispute"));

        disputed.end(WREN, id, "withdrawal").statusCode(200);
        handover.accepted(INES, animal, "gift", DOV);
    }

    @Test
    void an_animal_in_dispute_is_not_claimed_until_that_is_settled() {
        var animal = disputed.soldToInes();
        String code = handover.handOut(INES, animal).extract().path("claimCode");
        var claim = Map.of("code", code, "collection", handover.collection(DOV));
        var id = disputed.reported(animal);

        as(DOV).body(claim)
                .post("/api/v1/claims")
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/animal-in-dispute"));
        disputed.end(WREN, id, "withdrawal").statusCode(200);
        as(DOV).body(claim).post("/api/v1/claims").then().statusCode(200);
    }

    @Test
    void an_animal_is_in_one_dispute_at_a_time() {
        var animal = disputed.soldOn(DOV, "2025-09-02");
        disputed.reported(animal);
        for (var keeper : List.of(WREN, INES)) {
            disputed.report(keeper, animal, "2025-09-06")
                    .statusCode(409)
                    .body("type", equalTo("/problems/animal-in-dispute"));
        }
    }

    @Test
    void where_the_register_agrees_there_is_nothing_to_dispute() {
        var animal = disputed.soldToInes();
        nothing(INES, animal, "a collection of yours");
        var offered = handover.offered(INES, animal, DOV);
        nothing(DOV, animal, "accept");
        handover.answer(INES, offered, "withdrawal").statusCode(200);
        handover.handOut(INES, animal).statusCode(201);
        nothing(INES, animal, "withdraw");
    }

    private static void nothing(String keeper, String animal, String what) {
        disputed.report(keeper, animal, "2025-09-05")
                .statusCode(409)
                .body("type", equalTo("/problems/nothing-to-dispute"))
                .body("detail", containsString(what));
    }

    @Test
    void the_day_it_was_seen_is_past_after_the_birth_and_after_the_hand_over() {
        var animal = colony.female(WREN);
        String id = colony.post(
                        WREN,
                        "/transfers",
                        Map.of("animal", animal, "kind", "sale", "to", INES, "handedOverOn", "2025-08-30"))
                .extract()
                .path("transfer.id");
        handover.answer(INES, id, "acceptance").statusCode(200);
        disputed.report(WREN, animal, LocalDate.now().plusDays(3).toString())
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
        disputed.report(WREN, animal, "2020-05-31")
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("2020-06-01"));
        disputed.report(WREN, animal, "2025-08-29")
                .statusCode(422)
                .body("findings", hasSize(1))
                .body("findings[0].field", equalTo("seenOn"))
                .body("detail", containsString("2025-08-30"));
        disputed.report(WREN, animal, "2025-08-30").statusCode(201);
    }

    @Test
    void who_gave_an_animal_away_and_offers_it_again_is_told_to_report_it_first() {
        var animal = colony.female(WREN);
        var given = handover.accepted(WREN, animal, "sale", INES);
        handover.offer(WREN, animal, "sale", DOV)
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"))
                .body("detail", containsString(given))
                .body("detail", containsString("/disputes"));
        // who had nothing to do with it is told nothing of where it went
        handover.offer(DOV, animal, "sale", WREN)
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"))
                .body("detail", not(containsString("transfer")));
    }

    @Test
    void its_holder_finds_it_among_the_findings_of_the_animal() {
        var animal = disputed.soldToInes();
        var rules = "findings.findAll { it.rule == 'in-two-places' }.level";
        colony.get(INES, "/animals/" + animal + "/findings").statusCode(200).body(rules, empty());
        var id = disputed.reported(animal);
        colony.get(INES, "/animals/" + animal + "/findings")
                .body(rules, contains("warning"))
                .body("findings.message", hasItem(containsString(id)));
        disputed.end(INES, id, "concession").statusCode(200);
        colony.get(WREN, "/animals/" + animal + "/findings").statusCode(200).body(rules, empty());
    }

    @Test
    void the_journal_names_nobody() {
        var id = disputed.reported(disputed.soldToInes());
        disputed.end(INES, id, "concession").statusCode(200);
        var entries = ask(
                "select convert_from(body, 'UTF8') from demebook.journal_entry where convert_from(body, 'UTF8') like ?",
                "%" + UUID.fromString(id) + "%");
        assertThat(entries).hasSize(2).noneMatch(entry -> entry.contains("\"" + WREN) || entry.contains("\"" + INES));
    }

    @Test
    void what_cannot_be_read_is_told() {
        var animal = disputed.soldToInes();
        colony.post(WREN, "/animals/" + animal + "/disputes", Map.of("note", "here"))
                .statusCode(422)
                .body("findings[0].field", equalTo("seenOn"));
        disputed.report(WREN, "none", "2025-09-05").statusCode(422).body("type", equalTo("/problems/mistyped-number"));
        disputed.get(WREN, "no-id").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        var id = disputed.reported(animal);
        disputed.settle(WREN, id, "halved").statusCode(422).body("detail", containsString("upheld or dismissed"));
        disputed.get(WREN, id).body("endedAt", nullValue());
    }
}
