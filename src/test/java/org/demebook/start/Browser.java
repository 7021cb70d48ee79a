package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.CookieManager;
import java.net.CookiePolicy;
import java.net.HttpCookie;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** A browser of one person, as far as signing in needs one: it keeps cookies, follows redirects, fills in a form. */
final class Browser {
    private static final Pattern FORM_ACTION = Pattern.compile("<form[^>]*\\saction=\"([^\"]+)\"");
    private static final URI CALLBACK = URI.create("http://127.0.0.1:9/callback"); // nobody listens there
    private static final int MOST_REDIRECTS = 10;

    private final CookieManager cookies = new CookieManager(null, CookiePolicy.ACCEPT_ALL);
    private final HttpClient http =
            HttpClient.newBuilder().cookieHandler(cookies).build();
    private final List<String> cookieLines = new ArrayList<>();

    /** Opens the page, signs in at Keycloak's form when sent there, and gives the page where that leads. */
    HttpResponse<String> signIn(String page, String username) throws IOException, InterruptedException {
        return fillIn(get(page), username);
    }

    private HttpResponse<String> fillIn(HttpResponse<String> form, String username)
            throws IOException, InterruptedException {
        assertThat(form.statusCode())
                .as("the form at %s: %s", form.uri(), form.body())
                .isEqualTo(200);
        var action = FORM_ACTION.matcher(form.body());
        assertThat(action.find()).as(form.body()).isTrue();
        return send(HttpRequest.newBuilder(URI.create(action.group(1).replace("&amp;", "&")))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(
                        query(Map.of("username", username, "password", KeycloakServer.PASSWORD, "credentialId", "")))));
    }

    HttpResponse<String> get(String page) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(URI.create(page)));
    }

    /** Sends the request with this browser's cookies and follows redirects. */
    HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        var response = once(request);
        for (int i = 0; i < MOST_REDIRECTS; i++) {
            cookieLines.addAll(response.headers().allValues("set-cookie"));
            var location = response.headers().firstValue("location").map(response.uri()::resolve);
            if (response.statusCode() / 100 != 3
                    || location.isEmpty()
                    || location.get().getPort() == CALLBACK.getPort()) {
                return response;
            }
            response = once(HttpRequest.newBuilder(location.get()));
        }
        throw new IllegalStateException("sent around in a circle: " + response.uri());
    }

    private HttpResponse<String> once(HttpRequest.Builder request) throws IOException, InterruptedException {
        // browsers take the loopback address for a secure one; Java's client does not
        cookies.getCookieStore().getCookies().forEach(cookie -> cookie.setSecure(false));
        return http.send(request.build(), BodyHandlers.ofString());
    }

    /** What was set for a cookie when it was set last, attributes included. */
    String setCookie(String name) {
        return cookieLines.stream()
                .filter(line -> line.startsWith(name) && !line.contains("Max-Age=0"))
                .reduce((first, last) -> last)
                .orElseThrow();
    }

    List<String> cookieNames() {
        return cookies.getCookieStore().getCookies().stream()
                .map(HttpCookie::getName)
                .toList();
    }

    /**
     * An access token for a program: RFC 8252 with the proof key of RFC 7636.
     *
     * @param realm address of the realm
     */
    static String token(String realm, String clientId, String username) throws IOException, InterruptedException {
        var browser = new Browser();
        var verifier = UUID.randomUUID() + "." + UUID.randomUUID();
        var authorization = Map.of(
                "response_type", "code",
                "client_id", clientId,
                "redirect_uri", CALLBACK.toString(),
                "scope", "openid",
                "state", "s",
                "code_challenge", challenge(verifier),
                "code_challenge_method", "S256");
        var back = browser.signIn(realm + "/protocol/openid-connect/auth?" + query(authorization), username);
        var location = back.headers().firstValue("location").orElseThrow(() -> new AssertionError(back.body()));
        var code = Pattern.compile("[?&]code=([^&]+)").matcher(location);
        assertThat(code.find()).as(location).isTrue();
        var exchange = Map.of(
                "grant_type",
                "authorization_code",
                "client_id",
                clientId,
                "redirect_uri",
                CALLBACK.toString(),
                "code",
                code.group(1),
                "code_verifier",
                verifier);
        var answer = browser.send(HttpRequest.newBuilder(URI.create(realm + "/protocol/openid-connect/token"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString(query(exchange))));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        return new ObjectMapper().readTree(answer.body()).get("access_token").asText();
    }

    private static String challenge(String verifier) {
        try {
            var digest = MessageDigest.getInstance("SHA-256").digest(verifier.getBytes(StandardCharsets.US_ASCII));
            return Base64.getUrlEncoder().withoutPadding().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String query(Map<String, String> values) {
        return values.entrySet().stream()
                .map(value -> value.getKey() + "=" + URLEncoder.encode(value.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
    }
}
