package org.demebook.signing;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256, which every Java platform has. */
final class Digests {
    private Digests() {}

    static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
