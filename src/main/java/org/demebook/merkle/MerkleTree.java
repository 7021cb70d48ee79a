package org.demebook.merkle;

import java.util.ArrayList;
import java.util.List;

/**
 * An append-only Merkle tree with the hashes of RFC 6962, 2.1. All complete subtrees are held in memory: 64 bytes a leaf. Not safe
 * for use by several threads at once.
 */
public final class MerkleTree {
    /** The length of a salt, in bytes; fixed, so that salt and entry cannot be told apart in two ways. */
    public static final int SALT_BYTES = 32;

    /** How many leaves a tree may have, about 33 million: its lowest level is one array of a GB. */
    public static final long MOST_LEAVES = 1L << 25;

    // level k holds the roots of the complete subtrees of 2^k leaves, from left to right
    private final List<Level> levels = new ArrayList<>(List.of(new Level()));

    /**
     * Amortised O(1).
     *
     * @param leaf a leaf's hash, such as of {@link #leafOf}: 32 bytes
     * @throws IllegalArgumentException for another length
     * @throws IllegalStateException beyond {@link #MOST_LEAVES}
     */
    public void append(byte[] leaf) {
        if (leaf.length != Hashes.BYTES) {
            throw new IllegalArgumentException("a leaf's hash has 32 bytes, not " + leaf.length);
        }
        if (size() == MOST_LEAVES) {
            throw new IllegalStateException("a tree has at most " + MOST_LEAVES + " leaves");
        }
        byte[] subtree = leaf;
        for (int k = 0; ; k++) {
            if (k == levels.size()) {
                levels.add(new Level());
            }
            var level = levels.get(k);
            level.add(subtree);
            if (level.count() % 2 != 0) {
                return;
            }
            subtree = Hashes.node(level.get(level.count() - 2), subtree);
        }
    }

    /** How many leaves there are. */
    public long size() {
        return levels.get(0).count();
    }

    /** @param index from 0 */
    public byte[] leaf(long index) {
        requireWithin(index, 0, size() - 1);
        return levels.get(0).get((int) index);
    }

    /** The root over all leaves; over none, the hash of nothing. O(log size). */
    public byte[] root() {
        return root(size());
    }

    /** The root as it was when there were {@code size} leaves. O(log size). */
    public byte[] root(long size) {
        requireWithin(size, 0, size());
        return size == 0 ? Hashes.empty() : subtree(0, size);
    }

    /** Takes back what was appended after the first {@code size} leaves. O(log size). */
    public void truncate(long size) {
        requireWithin(size, 0, size());
        for (int k = 0; k < levels.size(); k++) {
            levels.get(k).truncate((int) (size >> k));
        }
    }

    /**
     * The audit path of RFC 6962, 2.1.1: that leaf {@code index} (from 0) is in the tree of the first {@code size} leaves. O(log²
     * size).
     */
    public List<byte[]> inclusion(long index, long size) {
        requireWithin(size, 1, size());
        requireWithin(index, 0, size - 1);
        List<byte[]> path = new ArrayList<>();
        path(index, 0, size, path);
        return path;
    }

    // PATH(m, D[n]) of RFC 6962
    private void path(long index, long from, long to, List<byte[]> path) {
        if (to - from == 1) {
            return;
        }
        long middle = from + Hashes.split(to - from);
        if (index < middle) {
            path(index, from, middle, path);
            path.add(subtree(middle, to));
        } else {
            path(index, middle, to, path);
            path.add(subtree(from, middle));
        }
    }

    /**
     * The consistency proof of RFC 6962, 2.1.2: that the tree of the first {@code from} leaves is a prefix of that of {@code to}.
     * Empty if there are none, or as many. O(log² size).
     */
    public List<byte[]> consistency(long from, long to) {
        requireWithin(to, 0, size());
        requireWithin(from, 0, to);
        List<byte[]> proof = new ArrayList<>();
        if (from > 0) {
            subproof(from, 0, to, true, proof);
        }
        return proof;
    }

    // SUBPROOF(m, D[n], b) of RFC 6962; m counted from the start of the tree
    private void subproof(long size, long from, long to, boolean rootIsKnown, List<byte[]> proof) {
        if (size == to) {
            if (!rootIsKnown) {
                proof.add(subtree(from, to));
            }
            return;
        }
        long middle = from + Hashes.split(to - from);
        if (size <= middle) {
            subproof(size, from, middle, rootIsKnown, proof);
            proof.add(subtree(middle, to));
        } else {
            subproof(size, middle, to, false, proof);
            proof.add(subtree(from, middle));
        }
    }

    // MTH(D[from:to]) for from a multiple of the least power of two that is not below to - from
    private byte[] subtree(long from, long to) {
        long leaves = to - from;
        if (Long.bitCount(leaves) == 1) {
            int level = Long.numberOfTrailingZeros(leaves);
            return levels.get(level).get((int) (from >> level));
        }
        long middle = from + Hashes.split(leaves);
        return Hashes.node(subtree(from, middle), subtree(middle, to));
    }

    /** Whether the proof shows that. Never throws, whatever strangers sent. */
    public static boolean includes(byte[] leaf, long index, long size, List<byte[]> proof, byte[] root) {
        return Proofs.includes(leaf, index, size, proof, root);
    }

    /** Whether the proof shows that the first tree is a prefix of the second. Never throws, whatever strangers sent. */
    public static boolean isConsistent(long from, byte[] fromRoot, long to, byte[] toRoot, List<byte[]> proof) {
        return Proofs.isConsistent(from, fromRoot, to, toRoot, proof);
    }

    /**
     * What stands for an entry where it is not given: SHA-256(salt ‖ entry). Without the salt nobody can try out what the entry may
     * have been.
     *
     * @param salt {@value #SALT_BYTES} random bytes
     * @throws IllegalArgumentException for a salt of another length
     */
    public static byte[] digestOf(byte[] salt, byte[] entry) {
        if (salt.length != SALT_BYTES) {
            throw new IllegalArgumentException("a salt has " + SALT_BYTES + " bytes, not " + salt.length);
        }
        return Hashes.sha256(salt, entry);
    }

    /**
     * The leaf of an entry: the leaf hash of RFC 6962, SHA-256(0x00 ‖ data), over one byte and the entry's digest. The byte, 0x01 for an
     * entry that not everybody may read and 0x00 for others, keeps whoever passes entries on from giving a digest where the entry itself
     * is owed: with the other byte the leaf does not fit the tree.
     *
     * @param digest of {@link #digestOf}
     */
    public static byte[] leafOf(boolean restricted, byte[] digest) {
        byte[] content = new byte[1 + digest.length];
        content[0] = (byte) (restricted ? 1 : 0);
        System.arraycopy(digest, 0, content, 1, digest.length);
        return Hashes.leaf(content);
    }

    private static void requireWithin(long number, long least, long most) {
        if (number < least || number > most) {
            throw new IndexOutOfBoundsException(number + " is not within " + least + " and " + most);
        }
    }
}
