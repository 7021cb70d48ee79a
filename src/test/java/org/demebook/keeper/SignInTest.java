package org.demebook.keeper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SignInTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void an_invitation_opens_one_account_and_no_second() {
        var secret = invite(WREN, Map.of("population", colony.code));
        accept(secret, "tarkington", "eleven blue herons")
                .statusCode(200)
                .body("token_type", equalTo("Bearer"))
                .body("name", equalTo("tarkington"));
        accept(secret, "somebody-else", "eleven blue herons")
                .statusCode(404)
                .body("type", equalTo("/problems/invitation-not-valid"));

        var token = Colony.signIn("Tarkington", "eleven blue herons");
        anonymous()
                .auth()
                .preemptive()
                .oauth2(token)
                .get("/api/v1/populations")
                .then()
                .statusCode(200)
                .body("code", hasItem(colony.code));
    }

    @Test
    void name_and_password_are_refused_alike_when_either_is_wrong() {
        Colony.token(INES);
        for (var name : new String[] {INES, "nobody-of-that-name"}) {
            anonymous()
                    .body(Map.of("name", name, "password", "not the one"))
                    .post("/api/v1/tokens")
                    .then()
                    .statusCode(401)
                    .body("type", equalTo("/problems/wrong-sign-in"));
        }
    }

    @Test
    void a_weak_password_and_a_taken_name_are_refused() {
        Colony.token(INES);
        accept(invite("administrator", Map.of()), "fresh-keeper", "short")
                .statusCode(422)
                .body("type", equalTo("/problems/weak-password"));
        accept(invite("administrator", Map.of()), INES, "eleven blue herons")
                .statusCode(409)
                .body("type", equalTo("/problems/name-taken"));
    }

    @Test
    void a_token_that_was_tampered_with_is_refused() {
        var token = Colony.token(WREN);
        var forged = token.substring(0, token.length() - 6) + "AAAAAA";
        anonymous()
                .auth()
                .preemptive()
                .oauth2(forged)
                .get("/api/v1/populations")
                .then()
                .statusCode(401)
                .body("type", equalTo("/problems/not-signed-in"));
    }

    @Test
    void only_a_coordinator_invites_admits_and_lists_members() {
        as(INES).body(Map.of("population", colony.code))
                .post("/api/v1/invitations")
                .then()
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
        colony.post(INES, "/members", Map.of("name", OUTSIDER, "role", "member"))
                .statusCode(403);
        colony.get(INES, "/members").statusCode(403);
        colony.get(WREN, "/members").statusCode(200).body("name", hasItem(INES));
        as(INES).body(Map.of()).post("/api/v1/invitations").then().statusCode(403);
    }

    @Test
    void a_secret_is_shown_once_even_to_the_one_who_asked() {
        var key = UUID.randomUUID().toString();
        as("administrator", key)
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(200);
        as("administrator", key)
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/shown-once"));
    }

    @Test
    void a_keeper_who_is_signed_in_joins_by_invitation() {
        var own = Colony.found();
        var secret = invite(WREN, Map.of("population", own.code));
        own.get(OUTSIDER, "/animals").statusCode(404);
        as(OUTSIDER)
                .body(Map.of("secret", secret))
                .post("/api/v1/invitations/joinings")
                .then()
                .statusCode(204);
        own.get(OUTSIDER, "/animals").statusCode(200);

        as(WREN).delete(own.path("/members/" + OUTSIDER)).then().statusCode(204);
        own.get(OUTSIDER, "/animals").statusCode(404);
    }

    @Test
    void a_population_is_never_left_without_a_coordinator() {
        var own = Colony.found();
        as(WREN).delete(own.path("/members/" + WREN))
                .then()
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
        own.post(WREN, "/members", Map.of("name", INES, "role", "coordinator")).statusCode(200);
        as(INES).delete(own.path("/members/" + WREN)).then().statusCode(204);
    }

    @Test
    void guessing_from_one_address_is_slowed_down() {
        int refused = 0;
        int status = 0;
        while (status != 429 && refused < 50) {
            status = anonymous("10.200.0.1")
                    .header("Idempotency-Key", UUID.randomUUID().toString())
                    .body(Map.of(
                            "secret",
                            "guess-" + refused,
                            "name",
                            "guesser",
                            "fullName",
                            "G",
                            "password",
                            "eleven blue herons"))
                    .post("/api/v1/invitations/acceptances")
                    .statusCode();
            refused++;
        }
        assertThat(status).isEqualTo(429);
        assertThat(refused).isEqualTo(11);
    }

    private static String invite(String by, Map<String, String> invitation) {
        return as(by).body(invitation)
                .post("/api/v1/invitations")
                .then()
                .statusCode(200)
                .extract()
                .path("secret");
    }

    private static ValidatableResponse accept(String secret, String name, String password) {
        return anonymous()
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .body(Map.of("secret", secret, "name", name, "fullName", "Keeper " + name, "password", password))
                .post("/api/v1/invitations/acceptances")
                .then();
    }
}
