package org.demebook.protocol;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.Set;
import org.demebook.merkle.MerkleTree;

/**
 * An entry as it is kept: its digest for good, its bytes and salt as long as they may be had.
 *
 * @param digest SHA-256 of salt and entry
 * @param entry the compact form, exactly as it was signed; empty where it was never given to this node, or was erased
 * @param salt 32 random bytes; there whenever the entry is
 * @param readers of an own entry: the nodes that may read it; empty: all of the population. Nothing of it is signed
 */
public record Kept(
        long seq, byte[] digest, Optional<String> entry, Optional<byte[]> salt, Optional<Set<String>> readers) {

    static Kept of(long seq, String compact, byte[] salt, Optional<Set<String>> readers) {
        var digest = MerkleTree.digestOf(salt, compact.getBytes(StandardCharsets.US_ASCII));
        return new Kept(seq, digest, Optional.of(compact), Optional.of(salt), readers);
    }

    /** What is kept as a digest alone is restricted, or it would not fit the tree. */
    byte[] leaf(Optional<Entry> read) {
        return MerkleTree.leafOf(read.map(Kept::isRestricted).orElse(true), digest);
    }

    static boolean isRestricted(Entry entry) {
        return entry.says() instanceof Statement.Restricted;
    }

    /** The leaf in the tree of its journal. Reads the entry, where it is there. */
    public byte[] leaf() {
        return leaf(entry.map(Entry::read));
    }
}
