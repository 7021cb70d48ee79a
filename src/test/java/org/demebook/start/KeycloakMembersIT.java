package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Who belongs to a population is decided in the register and shown in Keycloak's groups. */
class KeycloakMembersIT {
    static KeycloakWorld world;

    @BeforeAll
    static void start() throws Exception {
        world = KeycloakWorld.start();
        world.account("ines");
        world.account("dov");
    }

    @Test
    void a_membership_is_shown_in_the_groups_from_beginning_to_end() {
        var code = world.found("wren");
        world.awaitGroup(code, "coordinator", Set.of("wren"));
        assertThat(world.keycloak.group(code, "member")).isEmpty();

        world.admit("wren", code, "ines", "member").statusCode(200);
        world.awaitGroup(code, "member", Set.of("ines"));

        world.admit("wren", code, "ines", "coordinator").statusCode(200);
        world.awaitGroup(code, "coordinator", Set.of("wren", "ines"));
        world.awaitGroup(code, "member", Set.of());

        world.as("wren")
                .delete("/api/v1/populations/" + code + "/members/ines")
                .then()
                .statusCode(204);
        world.awaitGroup(code, "coordinator", Set.of("wren"));
    }

    @Test
    void what_another_hand_changes_in_the_groups_is_changed_back_and_decides_nothing() {
        var code = world.found("wren");
        world.admit("wren", code, "ines", "member").statusCode(200);
        world.awaitGroup(code, "member", Set.of("ines"));

        world.keycloak.takeFromGroup(world.account("ines"), code, "member");
        world.keycloak.putIntoGroup(world.account("dov"), code, "coordinator");
        world.as("dov").get("/api/v1/populations/" + code).then().statusCode(404);
        world.as("ines").get("/api/v1/populations/" + code).then().statusCode(200);

        world.awaitGroup(code, "member", Set.of("ines"));
        world.awaitGroup(code, "coordinator", Set.of("wren"));
    }

    @Test
    void somebody_who_never_came_here_can_be_admitted_by_the_name_that_keycloak_knows() {
        var code = world.found("wren");
        world.account("newcomer");

        world.admit("wren", code, "newcomer", "member").statusCode(200).body("name", equalTo("newcomer"));
        world.awaitGroup(code, "member", Set.of("newcomer"));
        world.as("newcomer").get("/api/v1/populations/" + code).then().statusCode(200);

        world.admit("wren", code, "nobody-at-all", "member")
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-keeper"));
    }

    @Test
    void only_a_coordinator_may_ask_keycloak_for_names() {
        var code = world.found("wren");
        world.admit("wren", code, "ines", "member").statusCode(200);

        for (var name : List.of("dov", "nobody-at-all")) {
            world.admit("ines", code, name, "member").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        }
    }

    @Test
    void an_invitation_is_taken_up_by_whoever_has_signed_in_at_keycloak() {
        var code = world.found("wren");
        String secret = world.as("wren")
                .body(Map.of("population", code))
                .post("/api/v1/invitations")
                .then()
                .statusCode(200)
                .extract()
                .path("secret");

        world.server
                .anonymous()
                .body(Map.of("secret", secret, "name", "someone", "fullName", "S", "password", "eleven blue herons"))
                .post("/api/v1/invitations/acceptances")
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/sign-in-elsewhere"));
        world.as("dov")
                .body(Map.of("secret", secret))
                .post("/api/v1/invitations/joinings")
                .then()
                .statusCode(204);
        world.as("dov").get("/api/v1/populations/" + code).then().statusCode(200);
        world.awaitGroup(code, "member", Set.of("dov"));
    }

    @Test
    void a_name_that_passes_to_another_account_does_not_bring_its_memberships_along() {
        var code = world.found("wren");
        var first = world.account("tarkington");
        world.admit("wren", code, "tarkington", "member").statusCode(200);
        world.awaitGroup(code, "member", Set.of("tarkington"));

        world.keycloak.rename(first, "tarkington-senior");
        var second = world.keycloak.addUser("tarkington");
        var token = world.freshToken("tarkington", "demebook-program");

        assertThat(second).isNotEqualTo(first);
        world.withToken(token).get("/api/v1/populations/" + code).then().statusCode(404);
        world.awaitGroup(code, "member", Set.of("tarkington-senior"));
        world.admit("wren", code, "tarkington", "coordinator").statusCode(200);
        world.withToken(token).get("/api/v1/populations/" + code).then().statusCode(200);
        world.awaitGroup(code, "coordinator", Set.of("wren", "tarkington"));
        world.awaitGroup(code, "member", Set.of("tarkington-senior"));
    }

    @Test
    void a_username_longer_than_names_here_is_shortened_and_still_tells_two_keepers_apart() {
        var code = world.found("wren");
        var begin = "the.keeper.of.the.northern.cays.and.reefs.";
        for (var name : List.of(begin + "of.marrowfin", begin + "of.sandy.point")) {
            String secret = world.as("wren")
                    .body(Map.of("population", code))
                    .post("/api/v1/invitations")
                    .path("secret");
            world.as(name)
                    .body(Map.of("secret", secret))
                    .post("/api/v1/invitations/joinings")
                    .then()
                    .statusCode(204);
        }

        List<String> names = world.as("wren")
                .get("/api/v1/populations/" + code + "/members")
                .then()
                .statusCode(200)
                .extract()
                .path("findAll { it.role == 'member' }.name");
        assertThat(names).hasSize(2).doesNotHaveDuplicates().allMatch(name -> name.length() == 40);
        assertThat(names).allMatch(name -> name.startsWith(begin.substring(0, 31)));
        for (var name : names) {
            world.admit("wren", code, name, "coordinator").statusCode(200);
        }
        world.awaitGroup(code, "coordinator", Set.of("wren", begin + "of.marrowfin", begin + "of.sandy.point"));
    }

    @Test
    void a_keycloak_that_says_nothing_holds_nobody_up_and_is_made_up_with_afterwards() throws Exception {
        var code = world.found("wren");
        world.admit("wren", code, "ines", "member").statusCode(200);
        world.awaitGroup(code, "member", Set.of("ines"));
        world.token("ines");

        world.keycloak.freeze();
        try {
            long begin = System.nanoTime();
            world.as("ines").get("/api/v1/populations/" + code).then().statusCode(200);
            world.as("ines")
                    .delete("/api/v1/populations/" + code + "/members/ines")
                    .then()
                    .statusCode(204);
            assertThat(Duration.ofNanos(System.nanoTime() - begin)).isLessThan(Duration.ofSeconds(2));
        } finally {
            world.keycloak.thaw();
        }
        world.awaitGroup(code, "member", Set.of());
    }

    @Test
    void a_keycloak_that_is_away_is_told_to_the_log_once_and_so_is_its_return() {
        KeycloakWorld.await(
                () -> KeycloakWorld.log().contains("groups are kept again"), () -> "its return is not in the log");

        assertThat(KeycloakWorld.log().split(KeycloakWorld.CANNOT_KEEP, -1)).hasSize(2);
        assertThat(world.keycloak.hasGroup("EARLY", "member")).isTrue();
    }
}
