package org.demebook.transfer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Backstage.change;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.demebook.transfer.Handover.with;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Animals handed out to somebody who has no account yet, and how they come back into a collection. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ClaimTest {
    private static final String PASSWORD = "eleven blue herons";
    private static final AtomicInteger BUYERS = new AtomicInteger();
    private static final AtomicInteger ADDRESSES = new AtomicInteger(2);

    static Colony colony;
    static Handover handover;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        handover = new Handover(colony);
    }

    @Test
    void an_animal_that_was_handed_out_is_in_no_collection_until_it_is_claimed() {
        var animal = colony.female(WREN);
        handover.handOut(WREN, animal)
                .statusCode(201)
                .body("transfer.state", equalTo("handed-out"))
                .body("transfer.to", nullValue())
                // four groups of Crockford's base 32
                .body("claimCode", matchesPattern("([0-9A-HJKMNP-TV-Z]{4}-){3}[0-9A-HJKMNP-TV-Z]{4}"));
        colony.get(WREN, "/animals/" + animal).body("held.collection", nullValue());
        handover.offer(WREN, animal, "sale", INES)
                .statusCode(409)
                .body("type", equalTo("/problems/already-in-transfer"))
                .body("detail", containsString("handed-out"));
        colony.put(WREN, animal, "/description", Map.of("origin", "unknown"))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void a_buyer_without_an_account_opens_one_joins_and_takes_the_animal_over() {
        var animal = colony.female(WREN);
        var id = new String[1];
        var code = handedOut(animal, id);
        var name = buyer();

        var claimed = claim(anonymous(), account(code.toLowerCase(Locale.ROOT).replace("-", " "), name))
                .statusCode(200)
                .body("population", equalTo(colony.code))
                .body("animal.number", equalTo(animal))
                .body("collection.label", equalTo("My animals"))
                .body("token.token_type", equalTo("Bearer"))
                .body("token.name", equalTo(name));
        String collection = claimed.extract().path("collection.id");
        claimed.body("animal.held.collection", equalTo(collection)).body("animal.held.owner", nullValue());

        String token = claimed.extract().path("token.access_token");
        anonymous()
                .auth()
                .preemptive()
                .oauth2(token)
                .get(colony.path("/animals/" + animal))
                .then()
                .statusCode(200)
                .body("held.collection", equalTo(collection));
        handover.get(WREN, id[0]).body("state", equalTo("claimed")).body("to", equalTo(name));
        colony.get(WREN, "/animals/" + animal).body("held", nullValue());
        colony.get(WREN, "/members").body("find { it.name == '" + name + "' }.role", equalTo("member"));
    }

    @Test
    void a_keeper_of_this_node_joins_with_the_animal() {
        var own = Colony.found();
        var animal = own.female(WREN);
        String code = new Handover(own)
                .handOut(WREN, animal)
                .statusCode(201)
                .extract()
                .path("claimCode");
        own.get(OUTSIDER, "/animals").statusCode(404);

        claim(as(OUTSIDER), Map.of("code", code, "collectionLabel", "Garden house"))
                .statusCode(200)
                .body("token", nullValue())
                .body("collection.label", equalTo("Garden house"));

        own.get(OUTSIDER, "/animals/" + animal).statusCode(200).body("held", notNullValue());
        own.get(OUTSIDER, "/transfers").body("items", hasSize(1)).body("items[0].given", equalTo(false));
    }

    @Test
    void a_member_takes_it_into_a_collection_of_theirs() {
        var own = Colony.found();
        var hand = new Handover(own);
        var first = hand.collection(INES);
        String code = hand.handOut(WREN, own.female(WREN)).extract().path("claimCode");
        claim(as(INES), Map.of("code", code)).statusCode(200).body("collection.id", equalTo(first));

        String second = own.post(INES, "/collections", Map.of("label", "cellar"))
                .extract()
                .path("id");
        String next = hand.handOut(WREN, own.female(WREN)).extract().path("claimCode");
        claim(as(INES), Map.of("code", next)).statusCode(422).body("type", equalTo("/problems/no-such-collection"));
        claim(as(INES), Map.of("code", next, "collection", second))
                .statusCode(200)
                .body("collection.id", equalTo(second));
    }

    @Test
    void a_code_is_good_once() {
        var code = handedOut(colony.female(WREN));
        claim(anonymous(), account(code, buyer())).statusCode(200);
        notValid(account(code, buyer()));
    }

    @Test
    void a_code_that_was_renewed_withdrawn_mistyped_or_is_out_of_date_is_refused_alike() {
        var id = new String[1];
        var first = handedOut(colony.female(WREN), id);
        String second = handover.answer(WREN, id[0], "claim-code")
                .statusCode(200)
                .body("transfer.state", equalTo("handed-out"))
                .extract()
                .path("claimCode");
        var refusal = notValid(account(first, buyer()));
        handover.answer(WREN, id[0], "withdrawal").statusCode(200);
        assertThat(notValid(account(second, buyer()))).isEqualTo(refusal);
        assertThat(notValid(account("0000-0000-0000-0000", buyer()))).isEqualTo(refusal);

        var late = handedOut(colony.female(WREN), id);
        change("update demebook.claim_code set expires_at = now() where transfer_id = ?", UUID.fromString(id[0]));
        assertThat(notValid(account(late, buyer()))).isEqualTo(refusal);
        // the animal stays where it is, and a fresh code brings it in
        handover.get(WREN, id[0]).body("state", equalTo("handed-out"));
        String fresh = handover.answer(WREN, id[0], "claim-code")
                .statusCode(200)
                .extract()
                .path("claimCode");
        claim(anonymous(), account(fresh, buyer())).statusCode(200);
    }

    @Test
    void an_animal_that_was_not_claimed_comes_back_when_it_is_withdrawn() {
        var animal = colony.female(WREN);
        var id = new String[1];
        handedOut(animal, id);
        handover.answer(WREN, id[0], "withdrawal").statusCode(200).body("state", equalTo("withdrawn"));
        colony.get(WREN, "/animals/" + animal).body("held.collection", equalTo(handover.collection(WREN)));
    }

    @Test
    void a_claimed_animal_does_not_come_back() {
        var id = new String[1];
        var code = handedOut(colony.female(WREN), id);
        claim(anonymous(), account(code, buyer())).statusCode(200);
        for (var answer : new String[] {"withdrawal", "claim-code"}) {
            handover.answer(WREN, id[0], answer)
                    .statusCode(409)
                    .body("type", equalTo("/problems/transfer-ended"))
                    .body("detail", containsString("claimed"));
        }
    }

    @Test
    void a_code_stands_for_half_a_year_and_at_most_a_year() {
        var today = LocalDate.now(ZoneOffset.UTC);
        var id = new String[1];
        handedOut(colony.female(WREN), id);
        handover.get(WREN, id[0]).body("expiresAt", containsString(today.plusDays(181) + "T00:00:00Z"));
        handover.answer(
                        WREN,
                        id[0],
                        "claim-code",
                        Map.of("expiresOn", today.plusYears(2).toString()))
                .statusCode(422)
                .body("findings[0].field", equalTo("expiresOn"));
        handover.answer(
                        WREN,
                        id[0],
                        "claim-code",
                        Map.of("expiresOn", today.plusDays(7).toString()))
                .statusCode(200)
                .body("transfer.expiresAt", containsString(today.plusDays(8) + "T00:00:00Z"));
    }

    @Test
    void only_a_change_of_owner_goes_by_claim_code() {
        var animal = colony.female(WREN);
        colony.post(WREN, "/transfers", Map.of("animal", animal, "kind", "breeding-loan", "withClaimCode", true))
                .statusCode(422)
                .body("findings[0].field", equalTo("withClaimCode"));
    }

    @Test
    void what_is_missing_for_an_account_is_told_with_its_fields_and_the_code_stays_good() {
        var code = handedOut(colony.female(WREN));
        claim(anonymous(), Map.of("code", code))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("findings.field", hasItem("fullName"))
                .body("findings", hasSize(3));
        claim(as(INES), with(Map.of("code", code), "password", PASSWORD))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"));
        claim(anonymous(), with(account(code, buyer()), "password", "short"))
                .statusCode(422)
                .body("type", equalTo("/problems/weak-password"));
        Colony.token(INES);
        claim(anonymous(), account(code, INES)).statusCode(409).body("type", equalTo("/problems/name-taken"));
        claim(anonymous(), account(code, buyer())).statusCode(200);
    }

    @Test
    void the_giver_withdraws_and_does_not_claim() {
        var code = handedOut(colony.female(WREN));
        claim(as(WREN), Map.of("code", code)).statusCode(422).body("type", equalTo("/problems/transfer-to-yourself"));
    }

    @Test
    void a_record_that_was_merged_is_not_claimed() {
        var older = colony.female(INES);
        var animal = colony.female(WREN);
        String same = colony.post(WREN, "/animals/" + animal + "/same-animal-claims", Map.of("other", older))
                .statusCode(201)
                .extract()
                .path("id");
        var code = handedOut(animal);
        colony.post(INES, "/same-animal-claims/" + same + "/confirmation", "{}").statusCode(200);
        claim(as(INES), Map.of("code", code)).statusCode(409).body("type", equalTo("/problems/animal-merged"));
    }

    @Test
    void a_token_that_is_not_valid_is_not_taken_for_nobody() {
        var code = handedOut(colony.female(WREN));
        claim(anonymous().auth().preemptive().oauth2("none"), Map.of("code", code))
                .statusCode(401)
                .body("type", equalTo("/problems/not-signed-in"));
    }

    @Test
    void the_code_is_shown_once_and_kept_nowhere() {
        var key = UUID.randomUUID().toString();
        var body = Map.of("animal", colony.female(WREN), "kind", "sale", "withClaimCode", true);
        String code = as(WREN, key)
                .body(body)
                .post(colony.path("/transfers"))
                .then()
                .statusCode(201)
                .extract()
                .path("claimCode");
        as(WREN, key)
                .body(body)
                .post(colony.path("/transfers"))
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/shown-once"));
        var population =
                UUID.fromString(ask("select population_id from demebook.population where code = ?", colony.code)
                        .get(0));
        var hash = ask("select hash from demebook.claim_code where population_id = ?", population);
        assertThat(hash).isNotEmpty().doesNotContain(code);
        for (var secret : new String[] {code, hash.get(hash.size() - 1)}) {
            assertThat(ask(
                            "select seq::text from demebook.journal_entry where population_id = ? and convert_from(body, 'UTF8') like ?",
                            population,
                            "%" + secret + "%"))
                    .isEmpty();
        }
    }

    @Test
    void guessing_codes_from_one_address_is_slowed_down() {
        var address = "10.201.0." + ADDRESSES.incrementAndGet();
        for (int i = 0; i < 10; i++) {
            claim(anonymous(address), account("0000-0000-0000-000" + i, buyer()))
                    .statusCode(404);
        }
        claim(anonymous(address), account(handedOut(colony.female(WREN)), buyer()))
                .statusCode(429)
                .body("type", equalTo("/problems/too-many-requests"));
    }

    private static String notValid(Map<String, Object> claim) {
        // from an address of its own, so that wrong codes do not count against other tests
        return claim(anonymous("10.201.0." + ADDRESSES.incrementAndGet()), claim)
                .statusCode(404)
                .body("type", equalTo("/problems/claim-code-not-valid"))
                .extract()
                .asString();
    }

    private static ValidatableResponse claim(RequestSpecification sender, Map<String, ?> claim) {
        return sender.header("Idempotency-Key", UUID.randomUUID().toString())
                .body(claim)
                .post("/api/v1/claims")
                .then();
    }

    private static Map<String, Object> account(String code, String name) {
        return Map.of("code", code, "name", name, "fullName", "A buyer", "password", PASSWORD);
    }

    private static String buyer() {
        return "buyer-" + BUYERS.incrementAndGet() + "-" + colony.code;
    }

    private static String handedOut(String animal) {
        return handedOut(animal, new String[1]);
    }

    /** The claim code; the transfer's id is put into the array. */
    private static String handedOut(String animal, String[] id) {
        var answer = handover.handOut(WREN, animal).statusCode(201).extract();
        id[0] = answer.path("transfer.id");
        return answer.path("claimCode");
    }
}
