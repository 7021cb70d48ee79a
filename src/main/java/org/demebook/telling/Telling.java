package org.demebook.telling;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Set;
import org.demebook.protocol.Statement;

/**
 * Something to be said of an animal.
 *
 * @param readers ids of nodes
 */
record Telling(Statement.Restricted says, Set<String> readers) {
    String digest() {
        return digest(says);
    }

    /** A record writes its components in order, and what is in the detail stands as it was put. */
    static String digest(Statement says) {
        try {
            var bytes = MessageDigest.getInstance("SHA-256").digest(says.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
