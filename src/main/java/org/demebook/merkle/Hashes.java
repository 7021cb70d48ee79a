package org.demebook.merkle;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** The hashes of RFC 6962, 2.1, with SHA-256. */
final class Hashes {
    static final int BYTES = 32;

    private static final byte LEAF = 0;
    private static final byte NODE = 1;

    private Hashes() {}

    /** The root of a tree without leaves. */
    static byte[] empty() {
        return digest().digest();
    }

    static byte[] leaf(byte[] content) {
        var digest = digest();
        digest.update(LEAF);
        return digest.digest(content);
    }

    static byte[] node(byte[] left, byte[] right) {
        var digest = digest();
        digest.update(NODE);
        digest.update(left);
        return digest.digest(right);
    }

    static byte[] sha256(byte[] first, byte[] second) {
        var digest = digest();
        digest.update(first);
        return digest.digest(second);
    }

    /** The largest power of two below a number of leaves above 1: how many of them are in the left subtree. */
    static long split(long leaves) {
        return Long.highestOneBit(leaves - 1);
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
