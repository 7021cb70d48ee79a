package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import java.net.URLEncoder;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyPairGenerator;
import java.security.Signature;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Signing in where a Keycloak keeps the accounts: the same jar in another profile, against a real Keycloak. */
class KeycloakSignInIT {
    private static final String POPULATIONS = "/api/v1/populations";
    private static final String JSON = "application/json";

    static KeycloakWorld world;

    @BeforeAll
    static void start() throws Exception {
        world = KeycloakWorld.start();
    }

    @Test
    void the_server_starts_before_keycloak_does_and_says_who_is_missing() {
        var early = world.withoutKeycloak;

        assertThat(early.startedIn()).isLessThan(Duration.ofSeconds(60));
        early.open().then().statusCode(200).body("signIn", equalTo("keycloak"));
        early.bearer()
                .then()
                .statusCode(503)
                .contentType("application/problem+json")
                .body("type", equalTo("/problems/unavailable"))
                .body("detail", containsString("Keycloak"));
        assertThat(early.browserStatus()).isEqualTo(503);
        world.as("early").get(POPULATIONS).then().statusCode(200); // and needs no second start
    }

    @Test
    void a_browser_is_sent_to_keycloak_and_known_by_its_cookie_afterwards() throws Exception {
        var browser = new Browser();
        world.account("wren");

        var arrived = browser.signIn(world.server.address() + "/sign-in", "wren");
        assertThat(arrived.uri()).hasPath("/");
        assertThat(arrived.statusCode()).isEqualTo(200);

        assertThat(browser.get(world.server.address() + POPULATIONS).statusCode())
                .isEqualTo(200);
        assertThat(browser.setCookie("q_session"))
                .containsIgnoringCase("HttpOnly")
                .contains("SameSite=Lax");
        browser.get(world.server.address() + "/sign-out");
        assertThat(browser.get(world.server.address() + POPULATIONS).statusCode())
                .isEqualTo(401);
    }

    @Test
    void whoever_is_not_signed_in_is_told_where_to_and_not_sent_away() {
        world.server
                .anonymous()
                .redirects()
                .follow(false)
                .get(POPULATIONS)
                .then()
                .statusCode(401)
                .body("type", equalTo("/problems/not-signed-in"))
                .body("detail", containsString(world.keycloak.realm()))
                .body("detail", containsString("/sign-in"));
    }

    // OWASP Cross-Site Request Forgery Prevention Cheat Sheet: SameSite cookies, Fetch Metadata, custom request headers
    @Test
    void a_change_that_another_site_sends_with_the_cookie_has_no_effect() throws Exception {
        var browser = new Browser();
        world.account("forged");
        browser.signIn(world.server.address() + "/sign-in", "forged");
        var form = "code=F1&name=" + URLEncoder.encode("Marrowfin Cay", StandardCharsets.UTF_8);
        var json = "{\"code\":\"F2\",\"name\":\"n\",\"taxon\":\"t\",\"locality\":\"l\",\"birthMode\":\"live-bearing\"}";

        var byForm = world.byCookie(POPULATIONS)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(form));
        var jsonAsText =
                world.byCookie(POPULATIONS).header("Content-Type", "text/plain").POST(BodyPublishers.ofString(json));
        var withoutKey =
                world.byCookie(POPULATIONS).header("Content-Type", JSON).POST(BodyPublishers.ofString(json));
        var fromElsewhere = world.byCookie(POPULATIONS)
                .header("Content-Type", JSON)
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .header("Sec-Fetch-Site", "cross-site")
                .POST(BodyPublishers.ofString(json));
        assertThat(browser.send(byForm).statusCode()).isIn(403, 415);
        assertThat(browser.send(jsonAsText).statusCode()).isIn(403, 415);
        assertThat(browser.send(withoutKey).statusCode()).isEqualTo(400);
        var refused = browser.send(fromElsewhere);
        assertThat(refused.statusCode()).isEqualTo(403);
        assertThat(refused.body()).contains("/problems/not-allowed", "another site");
        assertThat(browser.get(world.server.address() + POPULATIONS).body()).isEqualTo("[]");

        var ownPage = world.byCookie(POPULATIONS)
                .header("Content-Type", JSON)
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .header("Sec-Fetch-Site", "same-origin")
                .POST(BodyPublishers.ofString(json));
        assertThat(browser.send(ownPage).statusCode()).isEqualTo(201);
    }

    @Test
    void a_page_of_another_site_is_not_allowed_to_ask_for_more() {
        world.server
                .anonymous()
                .header("Origin", "https://elsewhere.example")
                .header("Access-Control-Request-Method", "POST")
                .header("Access-Control-Request-Headers", "idempotency-key,content-type")
                .options(POPULATIONS)
                .then()
                .header("Access-Control-Allow-Origin", nullValue());
    }

    @Test
    void a_token_for_another_program_is_refused() {
        world.keycloak.addClient("elsewhere", false, 300);
        refused(world.freshToken("wren", "elsewhere"));
    }

    @Test
    void a_token_of_another_issuer_is_refused() {
        refused(world.keycloak.operatorToken());
    }

    @Test
    void a_token_that_somebody_else_signed_is_refused() throws Exception {
        var real = world.token("wren").split("\\.");
        refused(real[0] + "." + real[1] + "." + forgedSignature(real[0] + "." + real[1]));

        var administrator = new String(Base64.getUrlDecoder().decode(real[1]), StandardCharsets.UTF_8)
                .replace("\"keeper\"", "\"administrator\"");
        refused(real[0] + "." + base64(administrator.getBytes(StandardCharsets.UTF_8)) + "." + real[2]);
        var unsigned = base64("{\"alg\":\"none\"}".getBytes(StandardCharsets.UTF_8));
        refused(unsigned + "." + real[1] + ".");
    }

    @Test
    void an_expired_token_is_refused() throws Exception {
        world.keycloak.addClient("short-lived", true, 4);
        var token = world.freshToken("wren", "short-lived");
        var received = Instant.now();
        world.withToken(token).get(POPULATIONS).then().statusCode(200);

        Thread.sleep(Duration.between(Instant.now(), received.plusSeconds(6)).toMillis());
        refused(token);
    }

    @Test
    void the_role_of_an_administrator_is_given_and_taken_in_keycloak() {
        var id = world.account("mara");
        world.keycloak.giveRole(id, "administrator");
        world.as("mara").body(Map.of()).post("/api/v1/invitations").then().statusCode(200);
        world.as("wren")
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
    }

    @Test
    void an_account_without_the_role_of_a_keeper_is_refused() {
        var id = world.account("visitor");
        world.keycloak.takeRole(id, "default-roles-demebook");
        world.as("visitor").get(POPULATIONS).then().statusCode(403).body("type", equalTo("/problems/not-allowed"));
    }

    @Test
    void there_are_no_accounts_and_no_passwords_here() {
        world.server
                .anonymous()
                .body(Map.of("name", "wren", "password", KeycloakServer.PASSWORD))
                .post("/api/v1/tokens")
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/sign-in-elsewhere"));
    }

    @Test
    void the_first_requests_of_a_keeper_may_come_all_at_once() throws Exception {
        var token = world.token("hasty");
        var threads = Executors.newFixedThreadPool(8);
        try {
            var statuses = threads.invokeAll(IntStream.range(0, 16)
                    .<Callable<Integer>>mapToObj(
                            i -> () -> world.withToken(token).get(POPULATIONS).statusCode())
                    .toList());
            for (Future<Integer> status : statuses) {
                assertThat(status.get()).isEqualTo(200);
            }
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void the_profile_says_what_it_needs_before_it_starts_anything() throws Exception {
        var process = new ProcessBuilder(
                        ProcessHandle.current().info().command().orElse("java"),
                        "-Dquarkus.profile=keycloak",
                        "-Ddemebook.keycloak.url=" + world.keycloak.realm(),
                        "-Ddemebook.state=target/never-made",
                        "-jar",
                        "target/quarkus-app/quarkus-run.jar")
                .redirectErrorStream(true)
                .start();
        var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);

        assertThat(process.waitFor()).isEqualTo(1);
        assertThat(said)
                .contains("Demebook cannot start.", "demebook.keycloak.secret", "DEMEBOOK_KEYCLOAK_ADMIN_SECRET")
                .doesNotContain("demebook.keycloak.url");
    }

    private static void refused(String token) {
        world.withToken(token)
                .get(POPULATIONS)
                .then()
                .statusCode(401)
                .contentType("application/problem+json")
                .header("WWW-Authenticate", containsString("Bearer"))
                .body("type", equalTo("/problems/not-signed-in"));
    }

    private static String forgedSignature(String signed) throws GeneralSecurityException {
        var generator = KeyPairGenerator.getInstance("RSA");
        generator.initialize(2048);
        var signature = Signature.getInstance("SHA256withRSA");
        signature.initSign(generator.generateKeyPair().getPrivate());
        signature.update(signed.getBytes(StandardCharsets.US_ASCII));
        return base64(signature.sign());
    }

    private static String base64(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }
}
