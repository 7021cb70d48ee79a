package org.demebook.web;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/** Styles and scripts of the pages: their address names their content, so that a browser may keep them for good. */
@ApplicationScoped
class Assets {
    private static final String FOLDER = "/pages/";

    /** Its version stands in its address already. */
    private static final String HTMX = "/webjars/htmx.org/2.0.8/dist/htmx.min.js";

    private final Map<String, String> addresses = new ConcurrentHashMap<>(Map.of("htmx.js", HTMX));

    String address(String name) {
        return addresses.computeIfAbsent(name, file -> FOLDER + file + "?v=" + mark(file));
    }

    private static String mark(String file) {
        try (var content = Assets.class.getResourceAsStream("/META-INF/resources" + FOLDER + file)) {
            var bytes = Objects.requireNonNull(content, file).readAllBytes();
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes), 0, 6);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
