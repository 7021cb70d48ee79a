package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import org.demebook.signing.CanonicalJson;

/** SHA-256 in base64url. */
final class Digests {
    private Digests() {}

    static String of(ObjectNode object) {
        return of(CanonicalJson.write(object));
    }

    static String of(String text) {
        return of(text.getBytes(StandardCharsets.UTF_8));
    }

    private static String of(byte[] bytes) {
        try {
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
