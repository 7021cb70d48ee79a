package org.demebook.transfer;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Breeding loans: the holder changes, the owner stays. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LoanTest {
    static Colony colony;
    static Handover handover;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        handover = new Handover(colony);
    }

    @Test
    void on_a_breeding_loan_the_holder_changes_and_the_owner_stays() {
        var animal = colony.male(WREN);
        handover.accepted(WREN, animal, "breeding-loan", INES);

        colony.get(INES, "/animals/" + animal)
                .body("held.collection", equalTo(handover.collection(INES)))
                .body("held.owner", equalTo(handover.collection(WREN)));
        // the owner still sees it
        colony.get(WREN, "/animals/" + animal).body("held", notNullValue());
    }

    @Test
    void a_loan_goes_back_into_the_collection_that_lent_it() {
        var animal = colony.male(WREN);
        handover.accepted(WREN, animal, "breeding-loan", INES);
        String back = handover.offer(INES, animal, "loan-return", WREN)
                .statusCode(201)
                .extract()
                .path("transfer.id");
        String another = colony.post(WREN, "/collections", Map.of("label", "second"))
                .statusCode(201)
                .extract()
                .path("id");
        handover.answer(WREN, back, "acceptance", Map.of("collection", another))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
        handover.answer(WREN, back, "acceptance").statusCode(200);

        colony.get(WREN, "/animals/" + animal)
                .body("held.collection", equalTo(handover.collection(WREN)))
                .body("held.owner", nullValue());
        colony.get(INES, "/animals/" + animal).body("held", nullValue());
    }

    @Test
    void a_borrower_neither_sells_nor_lends() {
        var animal = colony.male(INES);
        handover.accepted(INES, animal, "breeding-loan", DOV);
        for (var kind : new String[] {"sale", "gift", "exchange", "breeding-loan"}) {
            handover.offer(DOV, animal, kind, WREN).statusCode(422).body("type", equalTo("/problems/on-loan"));
        }
        colony.post(DOV, "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", true))
                .statusCode(422)
                .body("type", equalTo("/problems/on-loan"));
        // nor does the owner give away what is not in their hands
        handover.offer(INES, animal, "sale", WREN).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void a_loan_is_returned_to_a_keeper_of_the_owner_only() {
        var animal = colony.male(INES);
        handover.accepted(INES, animal, "breeding-loan", DOV);
        handover.offer(DOV, animal, "loan-return", WREN)
                .statusCode(422)
                .body("type", equalTo("/problems/on-loan"))
                .body("detail", containsString(WREN));
        handover.offer(DOV, animal, "loan-return", INES).statusCode(201);
    }

    @Test
    void what_is_not_on_loan_is_not_returned() {
        handover.offer(INES, colony.male(INES), "loan-return", DOV)
                .statusCode(422)
                .body("type", equalTo("/problems/not-on-loan"));
    }

    @Test
    void young_born_on_a_loan_are_with_the_borrower() {
        var dam = colony.female(INES);
        handover.accepted(INES, dam, "breeding-loan", DOV);
        var litter = Map.of(
                "dam", dam, "born", "2026-06-29", "liveBorn", 1, "stillborn", 0, "unfertilised", 0, "ovaFound", 1);
        colony.post(INES, "/litters", litter).statusCode(403).body("type", equalTo("/problems/not-your-animal"));
        colony.post(DOV, "/litters", litter)
                .statusCode(201)
                .body("young[0].held.collection", equalTo(handover.collection(DOV)));
    }
}
