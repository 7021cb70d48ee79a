package org.demebook.telling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.crossing.Handed;
import org.demebook.federation.Upland;
import org.demebook.notation.StudbookNumber;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.SameAnimalClaim;
import org.demebook.protocol.SameAnimalClaim.State;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SireShare;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Keepers of two nodes agree that two animals are one; the other node runs the real protocol beside the server under test. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SameAnimalsElsewhereTest {
    private static final String CLAIMS = "/federation/same-animal-claims";

    private Colony colony;
    private Upland upland;
    private int serials;

    @BeforeEach
    void found() {
        colony = Colony.found();
        upland = Upland.besides(colony);
    }

    // ── the other node ───────────────────────────────────────────────────────────────────────────────────────────────

    private String number(int serial) {
        return new StudbookNumber(colony.code, upland.seat(), serial).toString();
    }

    /** What it tells everybody of an animal that everybody may read of, or compute with. */
    private AnimalId tells(String sex, String born, Optional<AnimalId> sire, int serial, boolean read) {
        var id = new AnimalId(UUID.randomUUID(), upland.id());
        var detail = read ? shown(serial) : JsonNodeFactory.instance.objectNode();
        var told = new AncestryTold(
                id,
                Optional.ofNullable(born),
                Optional.empty(),
                sire.map(one -> List.of(new SireShare(one, 1_000_000))).orElse(List.of()),
                sire.isEmpty(),
                detail);
        var nothing = JsonNodeFactory.instance.objectNode();
        upland.participant.write(List.of(
                Saying.toAll(new AnimalEntered(id)),
                Saying.toAll(told),
                Saying.toAll(new HoldingTold(id, sex, true, "somebody", nothing))));
        return id;
    }

    private ObjectNode shown(int serial) {
        var detail = JsonNodeFactory.instance.objectNode().put("number", number(serial));
        var granted = detail.putArray("granted");
        for (var purpose : List.of("pedigree-view", "pairing-computation")) {
            granted.add(purpose + " identity read").add(purpose + " parentage read");
        }
        return detail;
    }

    private SameAnimalClaim heardThere(String claim) {
        upland.fetch();
        return upland.participant.sameAnimalClaims().stream()
                .filter(one -> one.id().toString().equals(claim))
                .findFirst()
                .orElseThrow();
    }

    private void confirmsThere(String claim) {
        upland.participant.confirmSame(heardThere(claim));
        upland.give();
    }

    private String claimsThere(AnimalId animal, String ours) {
        var claim = upland.participant.claimSame(animal, upland.called(ours));
        upland.give();
        return claim.toString();
    }

    // ── this node ────────────────────────────────────────────────────────────────────────────────────────────────────

    private String founder(String sex) {
        var founder = animal(sex, null);
        founder.put("origin", "wild-caught");
        return colony.register(WREN, founder);
    }

    private ValidatableResponse claim(String keeper, String animal, Object other) {
        return colony.post(keeper, CLAIMS, Map.of("animal", animal, "other", other.toString()));
    }

    private String claimed(String animal, Object other) {
        return claim(WREN, animal, other).statusCode(201).extract().path("id");
    }

    private ValidatableResponse answer(String keeper, String claim, String answer) {
        return colony.post(keeper, CLAIMS + "/" + claim + "/" + answer, Map.of());
    }

    private void assertKinship(String one, String other, float kinship, int living) {
        colony.get(WREN, "/animals/" + one + "/kinship/" + other)
                .statusCode(200)
                .body("kinship", equalTo(kinship));
        colony.get(WREN, "/gene-pool").body("living", equalTo(living));
    }

    // ── agreed, and taken back ───────────────────────────────────────────────────────────────────────────────────────

    // young here of a sire, young there of a founder: strangers; half siblings' kinship of ⅛ if the two are one. By
    // hand
    @Test
    void claimed_here_and_confirmed_there_figures_count_one_animal_until_it_is_taken_back() {
        var sire = founder("male");
        var young = colony.young(WREN, "female", "2020-06-29", founder("female"), sire);
        var there = tells("male", null, Optional.empty(), 3, true);
        tells("male", "2019/2020", Optional.of(there), 4, true);
        upland.give();
        assertKinship(young, number(4), 0f, 5);

        var id = claimed(sire, number(3));
        colony.get(WREN, CLAIMS)
                .body("", hasSize(1))
                .body("[0].animal", equalTo(sire))
                .body("[0].animalBetweenNodes", equalTo(upland.called(sire).toString()))
                .body("[0].other", equalTo(number(3)))
                .body("[0].otherBetweenNodes", equalTo(there.toString()))
                .body("[0].node", equalTo(upland.seat()))
                .body("[0].claimedHere", equalTo(true))
                .body("[0].state", equalTo("claimed"));
        assertKinship(young, number(4), 0f, 5);
        colony.get(WREN, "/animals/" + young + "/kinship/" + number(4)).body("ifClaimsHold", equalTo(.125f));

        assertThat(heardThere(id))
                .returns(upland.called(sire), SameAnimalClaim::animal)
                .returns(there, SameAnimalClaim::other)
                .returns(State.CLAIMED, SameAnimalClaim::state);
        confirmsThere(id);
        colony.get(WREN, CLAIMS).body("[0].state", equalTo("confirmed"));
        assertKinship(young, number(4), .125f, 4);
        colony.get(WREN, "/animals/" + young + "/kinship/" + number(4)).body("ifClaimsHold", nullValue());

        answer(WREN, id, "reversal").statusCode(200).body("state", equalTo("reversed"));
        answer(WREN, id, "reversal").statusCode(200).body("state", equalTo("reversed"));
        assertKinship(young, number(4), 0f, 5);
        assertThat(heardThere(id).state()).isEqualTo(State.REVERSED);
        answer(WREN, id, "confirmation").statusCode(409).body("type", equalTo("/problems/claim-already-answered"));
    }

    @Test
    void claimed_there_it_is_confirmed_by_whoever_holds_the_animal_here_and_taken_back_by_either_side() {
        var sire = founder("male");
        var young = colony.young(WREN, "female", "2020-06-29", founder("female"), sire);
        var there = tells("male", null, Optional.empty(), 3, true);
        tells("male", "2019/2020", Optional.of(there), 4, true);
        claimed(sire, upland.entered()); // so that it has a name between nodes
        var id = claimsThere(there, sire);
        for (var other : List.of(DOV, INES)) {
            colony.get(other, CLAIMS).body("", hasSize(0));
            answer(other, id, "confirmation").statusCode(404).body("type", equalTo("/problems/no-such-claim"));
            answer(other, id, "reversal").statusCode(404);
        }
        // to leave it is all that the other side needs to do
        answer(WREN, id, "reversal").statusCode(403).body("detail", containsString("leave it"));
        answer(WREN, id, "confirmation")
                .statusCode(200)
                .body("state", equalTo("confirmed"))
                .body("claimedHere", equalTo(false))
                .body("other", equalTo(number(3)));
        answer(WREN, id, "confirmation").statusCode(200);
        assertKinship(young, number(4), .125f, 4);
        assertThat(heardThere(id).state()).isEqualTo(State.CONFIRMED);

        upland.participant.reverseSame(UUID.fromString(id));
        upland.give();
        colony.get(WREN, CLAIMS).body("find { it.id == '%s' }.state".formatted(id), equalTo("reversed"));
        assertKinship(young, number(4), 0f, 5);

        var again = claimsThere(there, sire);
        answer(WREN, again, "confirmation").statusCode(200);
        answer(WREN, again, "reversal").statusCode(200).body("state", equalTo("reversed"));
        assertKinship(young, number(4), 0f, 5);
    }

    @Test
    void one_key_is_one_claim_and_an_open_claim_is_not_made_twice() {
        var mine = colony.female(WREN);
        var other = upland.entered().toString();
        var key = UUID.randomUUID().toString();
        var ids = List.of(key, key, UUID.randomUUID().toString()).stream()
                .map(one -> as(WREN, one)
                        .body(Map.of("animal", mine, "other", other))
                        .post(colony.path(CLAIMS))
                        .then()
                        .statusCode(201)
                        .extract()
                        .<String>path("id"))
                .toList();
        assertThat(ids).containsOnly(ids.get(0));
        upland.fetch();
        assertThat(upland.participant.sameAnimalClaims()).hasSize(1);
    }

    @Test
    void who_said_so_stands_in_the_journal_of_this_node_and_not_in_that_of_others() {
        var id = claimed(colony.female(WREN), upland.entered());
        answer(WREN, id, "reversal").statusCode(200);
        assertThat(ask(
                        "select e.type || ' ' || k.name from demebook.journal_entry e join demebook.journal_head h"
                                + " using (population_id) join demebook.keeper k on k.id = e.actor_id"
                                + " where h.code = ? and e.type like 'same-animal-%-elsewhere' order by e.seq",
                        colony.code))
                .containsExactly("same-animal-claimed-elsewhere " + WREN, "same-animal-reversed-elsewhere " + WREN);
    }

    // ── who, and which ───────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void only_who_holds_an_animal_that_this_node_registered_claims_for_it() {
        var there = upland.entered();
        claim(DOV, colony.female(WREN), there).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
        var came = upland.animal();
        var offer = upland.offer(came, Handed.json(WREN, colony.code, upland.seat(), ++serials, came));
        upland.give();
        colony.post(WREN, "/crossings/" + offer + "/acceptance", Map.of()).statusCode(200);
        upland.exchange();
        claim(WREN, number(serials), there)
                .statusCode(422)
                .body("type", equalTo("/problems/claim-not-possible"))
                .body("detail", containsString("was registered on node " + upland.seat()));
    }

    @Test
    void an_animal_elsewhere_is_named_by_the_number_that_is_shown_else_by_its_name_between_nodes() {
        var hidden = tells("female", null, Optional.empty(), 5, false);
        upland.give();
        var mine = colony.female(WREN);
        var absent = claim(WREN, mine, number(6)).statusCode(404).extract().asString();
        assertThat(claim(WREN, mine, number(5)).statusCode(404).extract().asString())
                .isEqualTo(absent.replace(number(6), number(5)));
        claim(WREN, mine, hidden)
                .statusCode(201)
                .body("other", nullValue())
                .body("otherBetweenNodes", equalTo(hidden.toString()));
        claim(WREN, mine, new AnimalId(UUID.randomUUID(), upland.id()))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-animal"));
        claim(WREN, mine, UUID.randomUUID() + "@upland").body("type", equalTo("/problems/mistyped-number"));
        claim(WREN, mine, "MC-U-1-X").body("type", equalTo("/problems/mistyped-number"));
    }

    @Test
    void between_two_records_of_this_node_it_is_claimed_where_they_are() {
        var mine = colony.female(WREN);
        var own = colony.female(WREN);
        claim(WREN, mine, own).statusCode(422).body("detail", containsString("same-animal-claims"));
        claimed(own, upland.entered());
        claim(WREN, mine, upland.called(own))
                .statusCode(422)
                .body("detail", containsString("a name that this node gave"));
        // an animal that its keeper hides is not there, whatever it is called
        colony.share(DOV, "private");
        var hidden = colony.female(DOV);
        var absent = new StudbookNumber(colony.code, "H", 900_001).toString();
        assertThat(claim(WREN, mine, hidden)
                        .statusCode(404)
                        .extract()
                        .asString()
                        .replace(hidden, "N"))
                .isEqualTo(claim(WREN, mine, absent).extract().asString().replace(absent, "N"));
    }

    @Test
    void who_gave_the_animal_to_another_node_since_has_the_say_of_it_still() {
        var mine = colony.female(WREN);
        var id = claimed(mine, upland.entered());
        var sale = Map.of("animal", mine, "kind", "sale", "node", upland.seat(), "to", "mara");
        String crossing =
                colony.post(WREN, "/crossings", sale).statusCode(201).extract().path("id");
        upland.fetch();
        upland.participant.accept(UUID.fromString(crossing));
        upland.exchange();
        colony.get(WREN, "/animals/" + mine).statusCode(404);
        colony.get(WREN, CLAIMS).body("[0].animal", equalTo(mine)).body("[0].state", equalTo("claimed"));
        answer(DOV, id, "reversal").statusCode(404);
        answer(WREN, id, "reversal").statusCode(200).body("state", equalTo("reversed"));
    }

    @Test
    void where_nothing_is_shared_there_is_no_such_claim() {
        var alone = Colony.found();
        alone.get(WREN, CLAIMS).statusCode(200).body("", hasSize(0));
        alone.post(
                        WREN,
                        CLAIMS,
                        Map.of(
                                "animal",
                                alone.female(WREN),
                                "other",
                                upland.entered().toString()))
                .statusCode(404)
                .body("type", equalTo("/problems/not-shared"));
    }

    @Test
    void a_node_that_gives_its_claim_the_id_of_another_is_not_confirmed_in_its_place() {
        var mine = colony.female(WREN);
        claimed(mine, upland.entered());
        var id = claimsThere(upland.animal(), mine);
        var third = Upland.besides(colony);
        var copied = new SameAnimalClaimed(UUID.fromString(id), third.animal(), third.called(mine));
        third.participant.write(List.of(Saying.toAll(copied)));
        third.give();
        answer(WREN, id, "confirmation")
                .statusCode(422)
                .body("detail", containsString("gave their claims the same id"))
                .body("detail", containsString(third.seat()));
        third.fetch();
        assertThat(third.participant.told().sameAs()).isEmpty();
    }

    // ── what speaks against it ───────────────────────────────────────────────────────────────────────────────────────

    private ValidatableResponse refused(String animal, Object other) {
        return claim(WREN, animal, other).statusCode(422).body("type", equalTo("/problems/claim-not-possible"));
    }

    @Test
    void sex_birth_parents_and_descent_speak_against_it_as_far_as_they_are_shown() {
        var sire = founder("male");
        var young = colony.young(WREN, "male", "2020-06-29", founder("female"), sire);
        tells("female", null, Optional.empty(), 3, true);
        tells("male", "2015", Optional.empty(), 4, true);
        var father = tells("male", null, Optional.empty(), 5, true);
        tells("male", "2020", Optional.of(father), 6, true);
        claimed(sire, upland.entered());
        tells("male", "2020", Optional.of(upland.called(sire)), 7, true);
        var hidden = tells("male", "2020", Optional.of(upland.called(sire)), 8, false);
        tells("female", "2020", Optional.empty(), 9, false);
        upland.give();
        refused(young, number(3)).body("detail", containsString("is male, %s is female".formatted(number(3))));
        refused(young, number(4))
                .body("detail", containsString("was born on 2020-06-29, %s on 2015".formatted(number(4))));
        refused(young, number(6))
                .body("detail", containsString("their sires are %s and %s".formatted(sire, number(5))));
        refused(sire, number(7)).body("detail", containsString("one descends from the other"));
        refused(sire, hidden).body("detail", containsString("not all of it is shown to you"));
    }

    @Test
    void of_what_the_asker_may_not_read_neither_sex_nor_year_is_told_by_a_refusal() {
        var there = tells("female", "1999", Optional.empty(), 3, false);
        upland.give();
        claimed(colony.male(WREN), there);
    }

    @Test
    void what_is_agreed_is_not_claimed_again_and_what_the_other_side_claims_is_to_be_confirmed() {
        var mine = colony.female(WREN);
        var there = upland.entered();
        confirmsThere(claimed(mine, there));
        refused(mine, there).body("detail", containsString("are one animal already"));
        refused(colony.female(WREN), there)
                .body("detail", containsString("Say first that the two records here are one"));

        var theirs = upland.animal();
        var id = claimsThere(theirs, mine);
        refused(mine, theirs).body("detail", containsString(id + "/confirmation"));
        // nobody confirms their own
        var own = claimed(mine, upland.entered());
        answer(WREN, own, "confirmation")
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"))
                .body("detail", not(containsString(mine)));
    }
}
