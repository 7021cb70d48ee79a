package org.demebook.approach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Two keepers who know nothing of each other, until both say yes. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ApproachTest {
    private Approached world;
    private LocalDate today;

    @BeforeEach
    void settle() {
        world = new Approached();
        today = LocalDate.now(ZoneOffset.UTC);
    }

    @Test
    void before_both_agree_neither_side_learns_who_the_other_is() {
        var pseudonym = world.pseudonym(13, world.own.number(24));
        var proposed = world.propose(WREN, 13, pseudonym)
                .statusCode(201)
                .body("side", equalTo("asking"))
                .body("state", equalTo("open"))
                .body("yours.animal", equalTo(world.own.number(13)))
                .body("theirs.pseudonym", equalTo(pseudonym))
                .body("theirs.sex", equalTo("male"))
                .body("openUntil", equalTo(today.plusDays(30).toString()))
                .body("$", not(hasKey("pair")))
                .body("$", not(hasKey("agreedUntil")));
        String id = proposed.extract().path("id");
        assertThat(proposed.extract().header("ETag")).isNull();
        var asked = world.look(DOV, id)
                .statusCode(200)
                .body("side", equalTo("asked"))
                .body("state", equalTo("open"))
                .body("yours.animal", equalTo(world.own.number(24)))
                .body("theirs.keySet()", hasSize(2))
                .body("theirs.sex", equalTo("female"))
                .body("words", equalTo("She has bred twice."))
                .body("$", not(hasKey("pair")))
                .extract()
                .asString();
        assertThat(asked).doesNotContain(WREN, world.own.number(13), pseudonym, collection(WREN));
        var asking = world.look(WREN, id).extract().asString();
        assertThat(asking).doesNotContain(DOV, world.own.number(24), collection(DOV));
        // the one list has it, too, and nobody else's
        world.colony.get(DOV, "/approaches?side=asked").body("items.id", equalTo(List.of(id)));
        world.colony.get(DOV, "/approaches?side=asking").body("items", hasSize(0));
        world.colony.get(WREN, "/approaches?side=asking").body("items.id", equalTo(List.of(id)));
        world.colony.get(WREN, "/approaches?side=all").statusCode(400);
    }

    @Test
    void the_side_that_is_asked_has_a_task_until_it_answers() {
        var id = world.proposeTo(24);
        var of = "items.findAll { it.kind == 'approach-answer' }";
        var address = "/care-tasks?limit=200&until=" + today.plusDays(60);
        var told = world.colony
                .get(DOV, address)
                .statusCode(200)
                .body(of + ".key", equalTo(List.of("approach-answer:" + id)))
                .body(of + ".animal", equalTo(List.of(world.own.number(24))))
                .body(of + ".dueOn", equalTo(List.of(today.plusDays(30).toString())))
                .extract()
                .asString();
        assertThat(told).doesNotContain(WREN, world.own.number(13), "bred twice");
        for (var keeper : List.of(WREN, INES, OYELARAN)) {
            world.colony.get(keeper, address).body(of, hasSize(0));
        }
        world.answer(DOV, id, "refusal").statusCode(200);
        world.colony.get(DOV, address).body(of, hasSize(0));
        var other = world.proposeTo(22);
        world.colony.get(DOV, address).body(of, hasSize(1));
        world.answer(WREN, other, "withdrawal").statusCode(200);
        world.colony.get(DOV, address).body(of, hasSize(0));
    }

    @Test
    void to_everybody_else_there_is_no_such_approach() {
        var id = world.proposeTo(24);
        var absent = "00000000-0000-7000-8000-000000000000";
        for (var keeper : List.of(INES, OYELARAN)) {
            world.colony.get(keeper, "/approaches").body("items", hasSize(0));
            assertThat(world.look(keeper, id)
                            .statusCode(404)
                            .body("type", equalTo("/problems/no-such-approach"))
                            .extract()
                            .asString()
                            .replace(id, absent))
                    .isEqualTo(
                            world.look(keeper, absent).statusCode(404).extract().asString());
            for (var answer : List.of("agreement", "refusal", "withdrawal")) {
                world.answer(keeper, id, answer).statusCode(404);
            }
        }
        world.look(WREN, id).body("state", equalTo("open"));
    }

    /** The kinship of 013 and 024 is 1/8: worked out in exact rational arithmetic apart from this code. */
    @Test
    void while_both_agree_each_reads_whose_the_other_animal_is_and_what_the_pair_comes_to() {
        var id = world.proposeTo(24);
        var kept = world.answer(DOV, id, "agreement")
                .statusCode(200)
                .body("state", equalTo("agreed"))
                .body("agreedUntil", equalTo(today.plusMonths(12).toString()))
                .extract()
                .asString();
        // what is kept for a repeated request outlives a withdrawal, so it tells nothing of the other side
        assertThat(kept).doesNotContain(WREN, world.own.number(13), "kinship");
        world.look(WREN, id)
                .statusCode(200)
                .body("state", equalTo("agreed"))
                .body("theirs.animal", equalTo(world.own.number(24)))
                .body("theirs.collection", equalTo("dov's rack"))
                .body("theirs.keepers", equalTo(List.of(DOV)))
                .body("pair.kinship", equalTo(.125f))
                .body("pair.knownAncestry", equalTo(1f))
                .body("pair.convention", equalTo("unrelated"))
                .body("pair.throughAncestorsNotShown", equalTo(true));
        world.look(DOV, id)
                .body("theirs.animal", equalTo(world.own.number(13)))
                .body("theirs.collection", equalTo("wren's rack"))
                .body("theirs.keepers", equalTo(List.of(WREN)))
                .body("pair.kinship", equalTo(.125f));
        // nothing but this pair is opened
        for (var below : List.of("", "/ancestry", "/kinship/" + world.own.number(13))) {
            world.colony.get(WREN, "/animals/" + world.own.number(24) + below).statusCode(404);
        }
        world.colony.get(WREN, "/pairings?for=" + world.own.number(13)).body("pairings", hasSize(0));
        world.colony.get(WREN, "/animals").body("items.number", not(hasItem(world.own.number(24))));
        assertThat(world.pseudonyms(13)).hasSize(4);
    }

    @Test
    void what_an_agreement_shows_is_granted_and_told_to_whom_it_is_shown_of() {
        var id = world.agreement();
        for (var keeper : List.of(WREN, DOV)) {
            assertThat(world.handGivenGrants(keeper)).containsExactly("live");
        }
        world.colony
                .get(DOV, "/grants")
                .body("items.find { it.recipient.name == 'wren' }.animals", equalTo(List.of(world.own.number(24))))
                .body("items.find { it.recipient.name == 'wren' }.fieldGroups", equalTo(List.of("identity", "custody")))
                .body("items.find { it.recipient.name == 'wren' }.givenBy", equalTo(DOV));
        world.colony.get(WREN, "/grants").body("items.find { it.recipient.name == 'dov' }.givenBy", equalTo(WREN));
        world.look(WREN, id).statusCode(200);
        world.colony
                .get(DOV, "/disclosures")
                .body(
                        "items.findAll { it.seenBy.name == 'wren' && it.purpose == 'pairing-computation' }.fieldGroup.toSet()",
                        equalTo(new HashSet<>(List.of("identity", "custody", "parentage"))));
        world.colony.get(WREN, "/disclosures").body("items.findAll { it.fieldGroup == 'custody' }", hasSize(0));
    }

    @Test
    void a_refusal_reads_to_the_side_that_asks_like_silence() {
        var refused = world.proposeTo(24);
        var silent = world.proposeTo(14);
        world.answer(DOV, refused, "refusal").statusCode(200).body("state", equalTo("no-agreement"));
        world.answer(DOV, refused, "refusal").statusCode(200);
        world.answer(DOV, refused, "agreement")
                .statusCode(409)
                .body("type", equalTo("/problems/approach-ended"))
                .body("detail", containsString("You refused it on " + today));
        for (int days : new int[] {0, 30}) {
            Approached.earlier(refused, days);
            Approached.earlier(silent, days);
            world.look(WREN, refused).body("state", equalTo("open"));
            assertThat(alike(refused)).isEqualTo(alike(silent));
        }
        Approached.earlier(refused, 1);
        Approached.earlier(silent, 1);
        world.look(WREN, refused).body("state", equalTo("no-agreement"));
        assertThat(alike(refused)).isEqualTo(alike(silent));
        world.look(INES, silent).body("state", equalTo("no-agreement"));
        world.answer(INES, silent, "agreement").statusCode(409).body("detail", containsString("open until"));
    }

    /** What the asking side reads, but for what tells any two approaches apart. */
    private String alike(String id) {
        var answer = world.look(WREN, id).statusCode(200).extract();
        return answer.asString().replace(id, "id").replace(answer.<String>path("theirs.pseudonym"), "pseudonym");
    }

    @Test
    void a_partner_that_dies_ends_it_for_its_keeper_and_the_other_side_is_not_told_when() {
        var id = world.proposeTo(24);
        var before = world.look(WREN, id).extract().asString();
        world.colony
                .put(DOV, world.own.number(24), "/death", Map.of("on", today.toString()))
                .statusCode(200);
        world.look(DOV, id).body("state", equalTo("ended"));
        world.answer(DOV, id, "agreement").statusCode(409);
        assertThat(world.look(WREN, id).extract().asString()).isEqualTo(before);
        Approached.earlier(id, 31);
        world.look(WREN, id).body("state", equalTo("no-agreement"));
    }

    @Test
    void an_animal_that_asks_and_dies_ends_it_for_both() {
        var id = world.proposeTo(24);
        world.colony
                .put(WREN, world.own.number(13), "/death", Map.of("on", today.toString()))
                .statusCode(200);
        world.look(WREN, id).body("state", equalTo("ended"));
        world.look(DOV, id).body("state", equalTo("withdrawn"));
        world.answer(DOV, id, "agreement").statusCode(409).body("detail", containsString("not there any more"));
        world.answer(WREN, id, "withdrawal").statusCode(409);
    }

    @Test
    void an_animal_that_changes_hands_ends_an_agreement() {
        var id = world.agreement();
        String transfer = world.colony
                .post(DOV, "/transfers", Map.of("animal", world.own.number(24), "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        world.look(WREN, id).body("state", equalTo("agreed"));
        world.colony.post(INES, "/transfers/" + transfer + "/acceptance", "{}").statusCode(200);
        world.look(WREN, id).body("state", equalTo("ended")).body("theirs.keySet()", hasSize(2));
        world.look(DOV, id).body("state", equalTo("ended")).body("$", not(hasKey("pair")));
        world.look(INES, id).statusCode(404);
    }

    /** Scenario: when a keeper withdraws what pairing rests on, proposals that are open end. */
    @Test
    void a_withdrawn_consent_ends_what_is_open_and_what_was_agreed() {
        var agreed = world.agreement();
        var open = world.proposeTo(22);
        world.grants.withdraw(DOV, world.grantsOfDov);
        world.look(DOV, open).body("state", equalTo("ended"));
        world.answer(DOV, open, "agreement").statusCode(409);
        world.look(WREN, open).body("state", equalTo("open"));
        for (var keeper : List.of(WREN, DOV)) {
            world.look(keeper, agreed)
                    .body("state", equalTo("ended"))
                    .body("theirs.keySet()", hasSize(2))
                    .body("$", not(hasKey("pair")));
        }
        assertThat(world.look(WREN, agreed).extract().asString()).doesNotContain(world.own.number(24), "dov");
    }

    @Test
    void either_side_withdraws_an_agreement_and_with_it_the_grants_of_both() {
        for (var keeper : List.of(WREN, DOV)) {
            var id = world.agreement();
            world.answer(keeper, id, "withdrawal").statusCode(200).body("state", equalTo("ended"));
            world.answer(keeper, id, "withdrawal").statusCode(200);
            for (var other : List.of(WREN, DOV)) {
                world.look(other, id).body("state", equalTo("ended")).body("$", not(hasKey("pair")));
                assertThat(world.handGivenGrants(other)).doesNotContain("live").contains("withdrawn");
            }
            Approached.earlier(id, 31);
        }
    }

    @Test
    void an_agreement_ends_with_any_of_its_grants_and_lives_on_in_one_that_is_renewed() {
        var id = world.agreement();
        String grant = world.colony.get(DOV, "/grants").extract().path("items.find { it.recipient.name == 'wren' }.id");
        String renewed = world.colony
                .post(DOV, "/grants/" + grant + "/renewal", "{}")
                .statusCode(200)
                .extract()
                .path("id");
        world.look(WREN, id).body("state", equalTo("agreed"));
        world.colony.post(DOV, "/grants/" + renewed + "/withdrawal", "{}").statusCode(200);
        world.look(WREN, id).body("state", equalTo("ended"));
        world.look(DOV, id).body("state", equalTo("ended"));
    }

    @Test
    void an_agreement_holds_for_twelve_months() {
        var id = world.agreement();
        int days = (int) (today.toEpochDay() - today.minusMonths(12).toEpochDay());
        Approached.earlier(id, days);
        world.look(WREN, id).body("state", equalTo("agreed")).body("agreedUntil", equalTo(today.toString()));
        Approached.earlier(id, 1);
        world.look(WREN, id).body("state", equalTo("ended"));
        world.look(DOV, id).body("state", equalTo("ended"));
    }

    @Test
    void what_is_open_is_withdrawn_by_who_asked_and_answered_by_who_was_asked() {
        var id = world.proposeTo(24);
        world.answer(DOV, id, "withdrawal").statusCode(403).body("detail", containsString("refuse it"));
        world.answer(WREN, id, "agreement").statusCode(403);
        world.answer(WREN, id, "refusal").statusCode(403);
        world.answer(WREN, id, "withdrawal").statusCode(200).body("state", equalTo("withdrawn"));
        world.answer(WREN, id, "withdrawal").statusCode(200);
        world.look(DOV, id).body("state", equalTo("withdrawn"));
        world.answer(DOV, id, "agreement").statusCode(409);
        world.answer(DOV, id, "refusal").statusCode(409);
    }

    @Test
    void any_keeper_who_acts_for_the_collection_answers_and_is_named() {
        Colony.token("tamsin");
        world.colony
                .post(WREN, "/members", Map.of("name", "tamsin", "role", "member"))
                .statusCode(200);
        String shared = world.colony
                .post(OYELARAN, "/collections", Map.of("label", "back room", "sharedWith", List.of("tamsin")))
                .statusCode(201)
                .extract()
                .path("id");
        var male = Colony.animal("male", "2019-07-01");
        male.put("origin", "wild-caught");
        male.put("collection", shared);
        var number = world.colony.register(OYELARAN, male);
        world.grants.computeOnly("tamsin");
        String id = world.propose(WREN, 13, world.pseudonym(13, number))
                .statusCode(201)
                .extract()
                .path("id");
        world.answer("tamsin", id, "agreement").statusCode(200);
        world.answer(OYELARAN, id, "agreement").statusCode(200).body("state", equalTo("agreed"));
        world.look(WREN, id)
                .body("theirs.keepers", equalTo(List.of(OYELARAN, "tamsin")))
                .body("theirs.collection", equalTo("back room"))
                .body("pair.kinship", equalTo(0f));
        world.look(OYELARAN, id).body("theirs.animal", equalTo(world.own.number(13)));
        as(OYELARAN)
                .post(world.colony.path("/approaches/" + id + "/withdrawal"))
                .then()
                .statusCode(200);
        world.look("tamsin", id).body("state", equalTo("ended"));
    }

    private String collection(String keeper) {
        return world.colony.get(keeper, "/collections").extract().path("[0].id");
    }
}
