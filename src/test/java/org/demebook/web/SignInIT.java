package org.demebook.web;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.SameSiteAttribute;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Signing in with name and password, where accounts are kept here. */
class SignInIT {
    private static final String TODAY = "/populations/MC/today";

    static Stream<Look> looks() {
        return Stream.of(Look.PHONE, Look.DESK, Look.PHONE.withoutScript(), Look.DESK.withoutScript());
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_keeper_signs_in_and_is_known_until_they_sign_out(Look look) {
        try (var visitor = Visitor.stranger(look)) {
            visitor.signIn("wren", DemoServer.password());
            visitor.open(TODAY);
            assertThat(visitor.page.locator("details.who summary")).hasText("wren");

            visitor.press(visitor.page.locator("details.who summary"));
            visitor.press(visitor.page.locator("form[action='/sign-out'] button"));
            visitor.page.waitForURL("**/");
            assertThat(visitor.page.locator("details.who")).hasCount(0);
            visitor.open(TODAY);
            assertThat(visitor.where()).isEqualTo("sign-in");
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void who_was_sent_to_sign_in_arrives_where_they_wanted_to_be(Look look) {
        try (var visitor = Visitor.stranger(look)) {
            visitor.open(TODAY);
            assertThat(visitor.where()).isEqualTo("sign-in");

            visitor.page.locator("[name=name]").fill("ines");
            visitor.page.locator("[name=password]").fill(DemoServer.password());
            visitor.press(visitor.page.locator("form:has([name=password]) button"));

            visitor.page.waitForURL("**" + TODAY);
        }
    }

    @ParameterizedTest
    @MethodSource("looks")
    void a_wrong_password_is_told_and_the_name_stays(Look look) {
        try (var visitor = Visitor.stranger(look)) {
            visitor.open("/sign-in");
            visitor.page.locator("[name=name]").fill("wren");
            visitor.page.locator("[name=password]").fill("not this one, nor that");
            visitor.press(visitor.page.locator("form:has([name=password]) button"));

            assertThat(visitor.page.locator(".problems")).isVisible();
            assertThat(visitor.page.locator("[name=name]")).hasValue("wren");
            assertThat(visitor.page.locator("[name=password]")).hasValue("");
        }
    }

    @Test
    void the_keyboard_alone_suffices() {
        try (var visitor = Visitor.stranger(Look.DESK)) {
            visitor.open("/sign-in");
            visitor.page.keyboard().press("Tab");
            assertThat(visitor.page.locator("a.skip")).isFocused();
            visitor.page.keyboard().press("Enter");
            visitor.page.keyboard().press("Tab");
            assertThat(visitor.page.locator("[name=name]")).isFocused();
            visitor.page.keyboard().type("dov");
            visitor.page.keyboard().press("Tab");
            visitor.page.keyboard().type(DemoServer.password());
            visitor.page.keyboard().press("Enter");
            visitor.page.waitForURL("**" + TODAY);
        }
    }

    @Test
    void no_script_can_read_the_cookie_and_no_other_site_gets_it_with_a_form() {
        try (var visitor = Visitor.stranger(Look.DESK)) {
            visitor.signIn("wren", DemoServer.password());

            assertThat(visitor.context.cookies()).anySatisfy(cookie -> {
                assertThat(cookie.httpOnly).isTrue();
                assertThat(cookie.sameSite).isIn(SameSiteAttribute.LAX, SameSiteAttribute.STRICT);
                assertThat(cookie.path).isEqualTo("/");
            });
            assertThat((String) visitor.page.evaluate("document.cookie")).doesNotContain("session");
        }
    }
}
