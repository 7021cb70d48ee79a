package org.demebook.protocol;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.demebook.merkle.Checkpoint;
import org.demebook.merkle.MerkleTree;

/**
 * What a consistency proof says of the smaller tree. RFC 9162, 2.1.4.2, compares two roots; here the smaller root is computed, so that
 * a node that signed another one for that size is shown to have lied by its own larger head. To this end the proof always begins
 * with a hash of the smaller tree: where that is complete, with its root, which RFC 9162 leaves out.
 */
final class Prefix {
    private Prefix() {}

    /** The proof that the tree's first {@code from} leaves are a part of its first {@code to}; empty from none. */
    static List<byte[]> proof(MerkleTree tree, long from, long to) {
        if (from == 0) {
            return List.of();
        }
        var proof = new ArrayList<byte[]>();
        if (Long.bitCount(from) == 1 || from == to) {
            proof.add(tree.root(from));
        }
        proof.addAll(tree.consistency(from, to));
        return proof;
    }

    /**
     * The root that the first {@code from} leaves have in the tree of {@code to} leaves with this root; empty if the proof does not lead
     * to that root. Never throws, whatever strangers sent.
     */
    static Optional<byte[]> root(long from, long to, byte[] toRoot, List<byte[]> proof) {
        if (from < 1 || from > to || proof.isEmpty()) {
            return Optional.empty();
        }
        if (from == to) {
            return proof.size() == 1 && Arrays.equals(proof.get(0), toRoot) ? Optional.of(toRoot) : Optional.empty();
        }
        return climb(from, to, toRoot, proof);
    }

    /** Whether the tree's present leaves are a part of that head's. Of no leaves always. */
    static boolean isPartOf(MerkleTree tree, Checkpoint head, List<byte[]> proof) {
        return tree.size() == 0
                || root(tree.size(), head.size(), head.root(), proof)
                        .map(root -> Arrays.equals(root, tree.root()))
                        .orElse(false);
    }

    private static Optional<byte[]> climb(long from, long to, byte[] toRoot, List<byte[]> proof) {
        long node = from - 1;
        long last = to - 1;
        while ((node & 1) == 1) {
            node >>= 1;
            last >>= 1;
        }
        byte[] first = proof.get(0);
        byte[] second = proof.get(0);
        for (var hash : proof.subList(1, proof.size())) {
            if (last == 0) {
                return Optional.empty();
            }
            if ((node & 1) == 1 || node == last) {
                first = parent(hash, first);
                second = parent(hash, second);
                while (node != 0 && (node & 1) == 0) {
                    node >>= 1;
                    last >>= 1;
                }
            } else {
                second = parent(second, hash);
            }
            node >>= 1;
            last >>= 1;
        }
        return last == 0 && Arrays.equals(second, toRoot) ? Optional.of(first) : Optional.empty();
    }

    private static byte[] parent(byte[] left, byte[] right) {
        try {
            var sha256 = MessageDigest.getInstance("SHA-256");
            sha256.update((byte) 1);
            sha256.update(left);
            sha256.update(right);
            return sha256.digest();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
