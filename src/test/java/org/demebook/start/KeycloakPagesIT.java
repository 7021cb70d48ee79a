package org.demebook.start;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import java.net.URI;
import java.util.List;
import java.util.stream.Stream;
import org.demebook.web.Look;
import org.demebook.web.Visitor;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Signing in at a Keycloak, in a real browser: our pages send it there, and it comes back to where it wanted to be. */
class KeycloakPagesIT {
    private static final String KEEPER = "pages-keeper";

    private static KeycloakWorld world;
    private static String today;

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK, Look.PHONE.withoutScript());
    }

    @BeforeAll
    static void a_keeper_with_a_population() throws Exception {
        world = KeycloakWorld.start();
        today = "/populations/" + world.found(KEEPER) + "/today";
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_keeper_signs_in_at_keycloak_and_arrives_where_they_wanted_to_be(Look look) {
        try (var visitor = stranger(look)) {
            signIn(visitor);

            assertThat(visitor.page.locator("details.who summary")).hasText(KEEPER);
            visitor.open("/preferences");
            assertThat(visitor.page.locator("details.who summary")).hasText(KEEPER);
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void who_signs_out_has_to_sign_in_again(Look look) {
        try (var visitor = stranger(look)) {
            signIn(visitor);

            visitor.press(visitor.page.locator("details.who summary"));
            visitor.press(visitor.page.locator("a[href='/sign-out']"));
            visitor.page.waitForURL(address -> !address.endsWith("/today"));
            visitor.open(today);

            assertThat(visitor.page.locator("[name=username]")).isVisible();
        }
    }

    private static void signIn(Visitor visitor) {
        visitor.open(today);
        visitor.page.locator("[name=username]").fill(KEEPER);
        visitor.page.locator("[name=password]").fill(KeycloakServer.PASSWORD);
        visitor.press(visitor.page.locator("#kc-login"));
        visitor.page.waitForURL("**" + today);
    }

    /** Keycloak's own pages are another house: what happens on them is not looked at. */
    private static Visitor stranger(Look look) {
        var visitor = Visitor.stranger(URI.create(world.server.address()), look);
        var keycloak = world.keycloak.realm().replaceAll("/realms.*", "");
        for (var place : List.of("^a request to another host: \\w+ ", "^\\w* ?", "^in the console of ")) {
            visitor.expecting(place + "\\Q" + keycloak + "\\E");
        }
        return visitor;
    }
}
