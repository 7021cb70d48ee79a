package org.demebook.merkle;

import java.util.List;

/**
 * An append-only Merkle tree with the hashes of RFC 6962, 2.1. All complete subtrees are held in memory: 64 bytes a leaf. Not safe
 * for use by several threads at once.
 */
public final class MerkleTree {
    /** The length of a salt, in bytes; fixed, so that salt and entry cannot be told apart in two ways. */
    public static final int SALT_BYTES = 32;

    /** @param leaf a leaf's hash, such as of {@link #leafOf}: 32 bytes */
    public void append(byte[] leaf) {
        throw new UnsupportedOperationException();
    }

    /** How many leaves there are. */
    public long size() {
        throw new UnsupportedOperationException();
    }

    /** @param index from 0 */
    public byte[] leaf(long index) {
        throw new UnsupportedOperationException();
    }

    /** The root over all leaves; over none, the hash of nothing. O(log size). */
    public byte[] root() {
        throw new UnsupportedOperationException();
    }

    /** The root as it was when there were {@code size} leaves. O(log size). */
    public byte[] root(long size) {
        throw new UnsupportedOperationException();
    }

    /** Takes back what was appended after the first {@code size} leaves. */
    public void truncate(long size) {
        throw new UnsupportedOperationException();
    }

    /** The audit path of RFC 6962, 2.1.1: that leaf {@code index} (from 0) is in the tree of {@code size} leaves. */
    public List<byte[]> inclusion(long index, long size) {
        throw new UnsupportedOperationException();
    }

    /** The consistency proof of RFC 6962, 2.1.2: that the tree of {@code from} leaves is a prefix of that of {@code to}; empty from none, or to itself. */
    public List<byte[]> consistency(long from, long to) {
        throw new UnsupportedOperationException();
    }

    /** Whether the proof shows that. Never throws, whatever strangers sent. */
    public static boolean includes(byte[] leaf, long index, long size, List<byte[]> proof, byte[] root) {
        throw new UnsupportedOperationException();
    }

    /** Whether the proof shows that the first tree is a prefix of the second. Never throws, whatever strangers sent. */
    public static boolean isConsistent(long from, byte[] fromRoot, long to, byte[] toRoot, List<byte[]> proof) {
        throw new UnsupportedOperationException();
    }

    /**
     * The leaf of an entry: SHA-256(0x00 ‖ SHA-256(salt ‖ entry)), the leaf hash of RFC 6962 over a salted digest. Without the salt
     * nobody can try out what the entry may have been.
     *
     * @param salt {@value #SALT_BYTES} random bytes
     * @throws IllegalArgumentException for a salt of another length
     */
    public static byte[] leafOf(byte[] salt, byte[] entry) {
        throw new UnsupportedOperationException();
    }
}
