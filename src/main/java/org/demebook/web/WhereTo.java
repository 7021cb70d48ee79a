package org.demebook.web;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import org.jspecify.annotations.Nullable;

/** Where somebody wanted to be before they were sent to sign in, as a cookie carries it: an address of this server, never of another. */
final class WhereTo {
    private static final URI FIRST_PAGE = URI.create("/");

    private WhereTo() {}

    static String kept(URI wanted) {
        var address = wanted.getRawPath() + (wanted.getRawQuery() == null ? "" : "?" + wanted.getRawQuery());
        return Base64.getUrlEncoder().withoutPadding().encodeToString(address.getBytes(StandardCharsets.UTF_8));
    }

    static URI of(@Nullable String kept) {
        if (kept == null) {
            return FIRST_PAGE;
        }
        try {
            var address = new String(Base64.getUrlDecoder().decode(kept), StandardCharsets.UTF_8);
            // two slashes would begin the name of another server
            return address.startsWith("/") && !address.startsWith("//") ? URI.create(address) : FIRST_PAGE;
        } catch (IllegalArgumentException e) {
            return FIRST_PAGE;
        }
    }
}
