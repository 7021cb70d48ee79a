package org.demebook.keeper;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;

/** Secrets that are shown once and kept only as a hash. They are random and long, so a plain SHA-256 is enough. */
public final class Secret {
    private static final SecureRandom RANDOM = new SecureRandom();
    // Crockford's base 32: no I, L, O, U, so that it can be read out over the phone
    private static final String SPOKEN = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

    private Secret() {}

    /** 192 random bits for a link or a password, URL-safe. */
    public static String forLink() {
        var bytes = new byte[24];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    /** 80 random bits to be typed: four groups of four. */
    public static String forTyping() {
        var code = new StringBuilder();
        for (int i = 0; i < 16; i++) {
            code.append(i > 0 && i % 4 == 0 ? "-" : "").append(SPOKEN.charAt(RANDOM.nextInt(SPOKEN.length())));
        }
        return code.toString();
    }

    /** The typed code as it was issued: case, spaces and the letters that look like digits do not matter. */
    public static String asIssued(String typed) {
        return typed.toUpperCase(Locale.ROOT)
                .replace('O', '0')
                .replaceAll("[IL]", "1")
                .replaceAll("[^0-9A-Z]", "")
                .replaceAll("(.{4})(?=.)", "$1-");
    }

    public static String hash(String secret) {
        try {
            var digest = MessageDigest.getInstance("SHA-256").digest(secret.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
