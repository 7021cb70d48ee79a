package org.demebook.web;

import static org.demebook.Colony.WREN;
import static org.demebook.web.Browsing.anonymous;
import static org.demebook.web.Browsing.ofAnotherSite;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** How a browser comes in, and that nobody else comes in by its cookie. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SignInPageTest {
    private static final String HTML = "text/html";

    @Test
    void who_is_not_signed_in_is_sent_to_sign_in_and_back_to_where_they_wanted_to_be() {
        var wanted = "/populations/" + Colony.found().code + "/today";
        var sent = anonymous()
                .get(wanted)
                .then()
                .statusCode(303)
                .header("Location", endsWith("/sign-in"))
                .extract();
        signIn(anonymous().cookies(sent.detailedCookies()), Colony.PASSWORD)
                .statusCode(303)
                .header("Location", endsWith(wanted));
    }

    @Test
    void a_session_is_a_cookie_that_no_script_reads_and_no_other_site_sends() {
        signIn(anonymous(), Colony.PASSWORD)
                .header("Set-Cookie", allOf(containsString("HttpOnly"), containsString("SameSite=Lax")));
        Browsing.as(WREN).get("/preferences").then().statusCode(200).body(containsString(WREN));
    }

    @Test
    void a_wrong_password_is_told_in_the_form_and_the_name_is_kept() {
        signIn(anonymous(), "not the password")
                .statusCode(422)
                .contentType(HTML)
                .body(containsString("value=\"" + WREN + "\""))
                .body(not(containsString("not the password")))
                .body(containsString("role=\"alert\""));
    }

    @Test
    void an_empty_form_says_at_each_field_what_is_missing() {
        anonymous()
                .contentType("application/x-www-form-urlencoded")
                .post("/sign-in")
                .then()
                .statusCode(422)
                .body(containsString("id=\"e-name\""), containsString("id=\"e-password\""));
    }

    // OWASP Cross-Site Request Forgery Prevention Cheat Sheet: Fetch Metadata, verifying the origin by standard headers
    @Test
    void a_form_of_another_site_is_refused_with_the_cookie_and_without() {
        for (var forged : forgeries()) {
            signIn(forged, Colony.PASSWORD).statusCode(403).contentType(HTML);
        }
        for (var forged : forgeries()) {
            forged.cookie("demebook-session", Colony.token(WREN))
                    .contentType("application/x-www-form-urlencoded")
                    .post("/api/v1/invitations")
                    .then()
                    .statusCode(403)
                    .body("type", equalTo("/problems/not-allowed"));
        }
    }

    @Test
    void signing_out_ends_the_session_and_drops_the_pages_that_the_device_kept() {
        Browsing.as(WREN)
                .post("/sign-out")
                .then()
                .statusCode(303)
                .header("Clear-Site-Data", equalTo("\"cache\""))
                .header("Set-Cookie", containsString("Max-Age=0"));
    }

    @Test
    void a_session_that_has_ended_is_none_and_hinders_no_signing_in() {
        anonymous()
                .cookie("demebook-session", "of.no.use")
                .get("/")
                .then()
                .statusCode(200)
                .body(containsString("/sign-in"));
        anonymous()
                .cookie("demebook-session", "of.no.use")
                .get("/sign-in")
                .then()
                .statusCode(200);
    }

    @Test
    void a_page_runs_and_loads_what_comes_from_here_and_nothing_that_stands_in_it() {
        anonymous()
                .get("/sign-in")
                .then()
                .header(
                        "Content-Security-Policy",
                        allOf(containsString("default-src 'self'"), not(containsString("unsafe"))))
                .body(not(containsString("style=")), not(containsString("onclick")), not(containsString("<style")));
    }

    @Test
    void what_is_not_there_is_a_page_for_a_browser_and_a_problem_for_a_program() {
        Browsing.as(WREN).get("/populations/ZZZZ/today").then().statusCode(404).contentType(HTML);
        Colony.anonymous().get("/api/v1/nowhere").then().statusCode(404).contentType("application/problem+json");
    }

    @Test
    void a_page_speaks_the_language_of_the_browser_until_another_is_chosen() {
        anonymous()
                .header("Accept-Language", "de-DE,de;q=0.9,en;q=0.5")
                .get("/sign-in")
                .then()
                .body(containsString("Anmelden"));
        var chosen = anonymous()
                .formParam("language", "EN")
                .formParam("dates", "ISO")
                .post("/preferences")
                .then()
                .statusCode(303)
                .extract()
                .detailedCookies();
        anonymous()
                .header("Accept-Language", "de")
                .cookies(chosen)
                .get("/sign-in")
                .then()
                .body(containsString("Sign in"));
    }

    private static List<RequestSpecification> forgeries() {
        return List.of(
                ofAnotherSite(),
                ofAnotherSite().header("Origin", "https://elsewhere.example"),
                ofAnotherSite().header("Origin", "null"),
                anonymous().header("Sec-Fetch-Site", "cross-site"),
                anonymous().header("Sec-Fetch-Site", "same-site"));
    }

    private static ValidatableResponse signIn(RequestSpecification browser, String password) {
        return browser.formParam("name", WREN)
                .formParam("password", password)
                .post("/sign-in")
                .then();
    }
}
