package org.demebook.protocol.simulation;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.List;

/** The root of a Merkle tree by the very words of RFC 6962, 2.1: recursive, from the leaves' hashes, nothing kept. */
final class NaiveTree {
    private NaiveTree() {}

    /** @param leaves hashes of the leaves, MTH({d(i)}) */
    static byte[] root(List<byte[]> leaves) {
        return switch (leaves.size()) {
            case 0 -> sha256(new byte[0]);
            case 1 -> leaves.get(0);
            default -> {
                int k = Integer.highestOneBit(leaves.size() - 1);
                byte[] left = root(leaves.subList(0, k));
                byte[] right = root(leaves.subList(k, leaves.size()));
                byte[] both = new byte[1 + left.length + right.length];
                both[0] = 1;
                System.arraycopy(left, 0, both, 1, left.length);
                System.arraycopy(right, 0, both, 1 + left.length, right.length);
                yield sha256(both);
            }
        };
    }

    private static byte[] sha256(byte[] bytes) {
        try {
            return MessageDigest.getInstance("SHA-256").digest(bytes);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
