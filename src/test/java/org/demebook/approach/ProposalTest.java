package org.demebook.approach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What may be proposed, how often, and that of answers given at once one counts. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ProposalTest {
    private Approached world;

    @BeforeEach
    void settle() {
        world = new Approached();
    }

    @Test
    void a_partner_is_named_as_it_is_proposed_now_for_that_animal_of_ones_own() {
        var pseudonym = world.pseudonym(13, world.own.number(24));
        var of23 = world.pseudonyms(23).get(0);
        for (var wrong : List.of("AAAAAAAAAA", of23, world.own.number(24), "dov")) {
            world.propose(WREN, 13, wrong)
                    .statusCode(422)
                    .body("type", equalTo("/problems/no-such-partner"))
                    .body("detail", containsString("ask again"));
        }
        world.propose(WREN, 24, pseudonym).statusCode(404);
        world.grants.withdraw(DOV, world.grantsOfDov);
        world.propose(WREN, 13, pseudonym).statusCode(409).body("type", equalTo("/problems/too-few-contribute"));
        world.colony.get(WREN, "/approaches").body("items", hasSize(0));
    }

    @Test
    void whoever_asks_lets_the_animal_be_computed_with_too() {
        var pseudonym = world.pseudonym(13, world.own.number(24));
        List<String> given = world.colony.get(WREN, "/grants").extract().path("items.id");
        given.forEach(grant -> world.colony.post(WREN, "/grants/" + grant + "/withdrawal", "{}"));
        world.propose(WREN, 13, pseudonym)
                .statusCode(409)
                .body("type", equalTo("/problems/animal-not-computed-with"))
                .body("detail", containsString("compute-only"));
    }

    @Test
    void two_for_an_animal_and_five_for_a_household_in_thirty_days_whatever_becomes_of_them() {
        var first = world.proposeTo(24);
        var pseudonym = world.pseudonym(13, world.own.number(24));
        world.propose(WREN, 13, pseudonym).statusCode(409).body("type", equalTo("/problems/approached-already"));
        world.answer(WREN, first, "withdrawal").statusCode(200);
        var second = world.proposeTo(14);
        world.answer(INES, second, "refusal").statusCode(200);
        var today = LocalDate.now(ZoneOffset.UTC);
        world.propose(WREN, 13, world.pseudonym(13, world.own.number(6)))
                .statusCode(409)
                .body("type", equalTo("/problems/too-many-approaches"))
                .body("detail", containsString("for " + world.own.number(13)))
                .body("detail", containsString(today.plusDays(30).toString()));
        Approached.earlier(first, 29);
        world.propose(WREN, 13, pseudonym).statusCode(409);
        Approached.earlier(first, 1);
        world.proposeTo(6);
    }

    @Test
    void a_household_has_one_budget_for_all_its_collections_and_animals() {
        var made = new ArrayList<String>();
        for (int i = 0; i < 5; i++) {
            made.add(proposeForANewFemale().statusCode(201).extract().path("id"));
        }
        proposeForANewFemale()
                .statusCode(409)
                .body("type", equalTo("/problems/too-many-approaches"))
                .body("detail", containsString("by your household"));
        Approached.earlier(made.get(0), 30);
        proposeForANewFemale().statusCode(201);
        // and the list is told page by page
        var page = world.colony.get(WREN, "/approaches?limit=4").body("items", hasSize(4));
        world.colony
                .get(WREN, "/approaches?limit=4&after=" + page.extract().path("next"))
                .body("items", hasSize(2))
                .body("items[1].id", equalTo(made.get(0)));
    }

    private ValidatableResponse proposeForANewFemale() {
        var number = world.colony.female(WREN);
        List<String> partners = world.colony
                .get(WREN, "/animals/" + number + "/unnamed-partners")
                .statusCode(200)
                .extract()
                .path("partners");
        return world.colony.post(WREN, "/approaches", Map.of("animal", number, "partner", partners.get(0)));
    }

    @Test
    void an_animal_on_loan_is_not_proposed_and_does_not_ask() {
        lend(DOV, 22, INES);
        lend(DOV, 20, WREN);
        assertThat(world.pseudonyms(13)).hasSize(3);
        world.propose(WREN, 20, world.pseudonyms(20).get(0)).statusCode(422).body("type", equalTo("/problems/on-loan"));
    }

    private void lend(String from, int animal, String to) {
        String transfer = world.colony
                .post(from, "/transfers", Map.of("animal", world.own.number(animal), "kind", "breeding-loan", "to", to))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        world.colony.post(to, "/transfers/" + transfer + "/acceptance", "{}").statusCode(200);
    }

    /** Whoever comes first: both sides read the same in the end, and there are grants of both or of neither. */
    @Test
    void of_an_agreement_and_a_withdrawal_at_once_one_comes_first_and_the_outcome_is_whole() throws Exception {
        for (int round = 0; round < 3; round++) {
            var id = world.proposeTo(24);
            var answers = atOnce(
                    () -> world.answer(DOV, id, "agreement").extract().statusCode(),
                    () -> world.answer(WREN, id, "withdrawal").extract().statusCode());
            assertThat(answers.get(1)).isEqualTo(200);
            assertThat(answers.get(0)).isIn(200, 409);
            var state = answers.get(0) == 200 ? "ended" : "withdrawn";
            world.look(WREN, id).body("state", equalTo(state));
            world.look(DOV, id).body("state", equalTo(state));
            assertThat(world.handGivenGrants(DOV)).doesNotContain("live");
            assertThat(world.handGivenGrants(WREN)).doesNotContain("live");
            Approached.earlier(id, 40);
        }
    }

    @Test
    void of_an_agreement_and_a_refusal_at_once_one_counts_and_two_agreements_are_one() throws Exception {
        var id = world.proposeTo(24);
        var answers = atOnce(
                () -> world.answer(DOV, id, "agreement").extract().statusCode(),
                () -> world.answer(DOV, id, "refusal").extract().statusCode());
        assertThat(answers).containsExactlyInAnyOrder(200, 409);
        var other = world.proposeTo(6);
        assertThat(atOnce(
                        () -> world.answer(OYELARAN, other, "agreement")
                                .extract()
                                .statusCode(),
                        () -> world.answer(OYELARAN, other, "agreement")
                                .extract()
                                .statusCode()))
                .containsExactly(200, 200);
        assertThat(world.handGivenGrants(OYELARAN)).containsExactly("live");
    }

    private static List<Integer> atOnce(Callable<Integer> one, Callable<Integer> other) throws Exception {
        var two = Executors.newFixedThreadPool(2);
        try {
            var answers = new ArrayList<Integer>();
            for (var answer : two.invokeAll(List.of(one, other))) {
                answers.add(answer.get());
            }
            return answers;
        } finally {
            two.shutdownNow();
        }
    }
}
