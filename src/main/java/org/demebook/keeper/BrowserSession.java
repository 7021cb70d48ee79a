package org.demebook.keeper;

import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.core.NewCookie;
import java.time.Duration;
import java.time.Instant;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.jspecify.annotations.Nullable;

/**
 * How a browser stays signed in where accounts are kept here: its cookie holds the token that a program would send. No script
 * of a page can read it, and no other site can send it along with a change ({@link OwnPagesOnly}). Where Keycloak signs in,
 * the cookie is the framework's.
 */
public final class BrowserSession {
    /** A phone in the animal room is not to ask for the password every morning; from half of it on it is renewed. */
    static final Duration VALID = Duration.ofDays(7);

    private static final String COOKIE = "demebook-session";
    private static final String BY_COOKIE = "org.demebook.keeper.byCookie";

    private BrowserSession() {}

    /** The cookie of a token. */
    public static NewCookie cookie(TokenView token, boolean secure) {
        return new NewCookie.Builder(COOKIE)
                .value(token.accessToken())
                .path("/")
                .maxAge((int) token.expiresInSeconds())
                .httpOnly(true)
                .secure(secure)
                .sameSite(NewCookie.SameSite.LAX)
                .build();
    }

    /** The cookie that ends a session. */
    public static NewCookie ended() {
        return new NewCookie.Builder(COOKIE)
                .value("")
                .path("/")
                .maxAge(0)
                .httpOnly(true)
                .sameSite(NewCookie.SameSite.LAX)
                .build();
    }

    /** The token in the cookie of a request; from here on the request is known as one that a browser signed. */
    static @Nullable String token(RoutingContext request) {
        var cookie = request.request().getCookie(COOKIE);
        if (cookie == null || cookie.getValue().isBlank()) {
            return null;
        }
        request.put(BY_COOKIE, true);
        return cookie.getValue();
    }

    /** Whether a browser's token is good for less than half of its time. */
    public static boolean isOld(JsonWebToken token, Instant now) {
        return token.getExpirationTime() - now.getEpochSecond() < VALID.toSeconds() / 2;
    }

    /** Whether a browser signed the request by its cookie. */
    public static boolean signed(RoutingContext request) {
        return request.get(BY_COOKIE) != null;
    }
}
