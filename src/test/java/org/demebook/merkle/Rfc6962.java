package org.demebook.merkle;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.List;

/** The definitions of RFC 6962, 2.1 to 2.1.2, as they stand there: MTH, PATH, PROOF and SUBPROOF over hashes of leaves. */
final class Rfc6962 {
    private Rfc6962() {}

    static byte[] root(List<byte[]> leaves) {
        if (leaves.isEmpty()) {
            return sha256();
        }
        if (leaves.size() == 1) {
            return leaves.get(0);
        }
        int k = split(leaves.size());
        return sha256(new byte[] {1}, root(leaves.subList(0, k)), root(leaves.subList(k, leaves.size())));
    }

    static List<byte[]> path(int m, List<byte[]> leaves) {
        int n = leaves.size();
        if (n == 1) {
            return List.of();
        }
        int k = split(n);
        return m < k
                ? join(path(m, leaves.subList(0, k)), root(leaves.subList(k, n)))
                : join(path(m - k, leaves.subList(k, n)), root(leaves.subList(0, k)));
    }

    /** Empty for none, which the RFC leaves undefined. */
    static List<byte[]> proof(int m, List<byte[]> leaves) {
        return m == 0 ? List.of() : subproof(m, leaves, true);
    }

    private static List<byte[]> subproof(int m, List<byte[]> leaves, boolean b) {
        int n = leaves.size();
        if (m == n) {
            return b ? List.of() : List.of(root(leaves));
        }
        int k = split(n);
        return m <= k
                ? join(subproof(m, leaves.subList(0, k), b), root(leaves.subList(k, n)))
                : join(subproof(m - k, leaves.subList(k, n), false), root(leaves.subList(0, k)));
    }

    private static int split(int n) {
        int k = 1;
        while (2 * k < n) {
            k *= 2;
        }
        return k;
    }

    private static List<byte[]> join(List<byte[]> path, byte[] hash) {
        var all = new ArrayList<>(path);
        all.add(hash);
        return all;
    }

    private static byte[] sha256(byte[]... parts) {
        try {
            var digest = MessageDigest.getInstance("SHA-256");
            for (byte[] part : parts) {
                digest.update(part);
            }
            return digest.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError(e);
        }
    }
}
