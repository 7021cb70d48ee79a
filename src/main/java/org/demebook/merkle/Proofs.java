package org.demebook.merkle;

import java.util.Arrays;
import java.util.List;

/** The verification of proofs by RFC 9162, 2.1.3.2 and 2.1.4.2, which RFC 6962 leaves to the reader; the proofs are the same. */
final class Proofs {
    private Proofs() {}

    static boolean includes(byte[] leaf, long index, long size, List<byte[]> proof, byte[] root) {
        if (index < 0 || index >= size || !areHashes(proof) || leaf.length != Hashes.BYTES) {
            return false;
        }
        long node = index;
        long last = size - 1;
        byte[] hash = leaf;
        for (byte[] sibling : proof) {
            if (last == 0) {
                return false;
            }
            if (node % 2 == 1 || node == last) {
                hash = Hashes.node(sibling, hash);
                while (node % 2 == 0 && node != 0) {
                    node >>= 1;
                    last >>= 1;
                }
            } else {
                hash = Hashes.node(hash, sibling);
            }
            node >>= 1;
            last >>= 1;
        }
        return last == 0 && Arrays.equals(hash, root);
    }

    static boolean isConsistent(long from, byte[] fromRoot, long to, byte[] toRoot, List<byte[]> proof) {
        if (from < 0 || from > to || !areHashes(proof)) {
            return false;
        }
        if (from == 0 || from == to) {
            return proof.isEmpty()
                    && (from != to || Arrays.equals(fromRoot, toRoot))
                    && (from != 0 || Arrays.equals(fromRoot, Hashes.empty()))
                    && toRoot.length == Hashes.BYTES;
        }
        boolean startsAtRoot = Long.bitCount(from) == 1; // then the proof leaves out what is known
        if (!startsAtRoot && proof.isEmpty()) {
            return false;
        }
        long node = from - 1;
        long last = to - 1;
        while (node % 2 == 1) {
            node >>= 1;
            last >>= 1;
        }
        byte[] before = startsAtRoot ? fromRoot : proof.get(0);
        byte[] after = before;
        for (byte[] hash : proof.subList(startsAtRoot ? 0 : 1, proof.size())) {
            if (last == 0) {
                return false;
            }
            if (node % 2 == 1 || node == last) {
                before = Hashes.node(hash, before);
                after = Hashes.node(hash, after);
                while (node % 2 == 0 && node != 0) {
                    node >>= 1;
                    last >>= 1;
                }
            } else {
                after = Hashes.node(after, hash);
            }
            node >>= 1;
            last >>= 1;
        }
        return last == 0 && Arrays.equals(before, fromRoot) && Arrays.equals(after, toRoot);
    }

    private static boolean areHashes(List<byte[]> proof) {
        return proof.stream().allMatch(hash -> hash.length == Hashes.BYTES);
    }
}
