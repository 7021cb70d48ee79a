package org.demebook.protocol;

import java.util.Optional;
import java.util.Set;

/**
 * An entry as it is kept: its leaf for good, its bytes and salt as long as they may be had.
 *
 * @param entry the compact form, exactly as it was signed; empty where it was never given to this node, or was erased
 * @param salt 32 random bytes; there whenever the entry is
 * @param readers of an own entry: the nodes that may read it; empty: all of the population. Nothing of it is signed
 */
public record Kept(
        long seq, byte[] leaf, Optional<String> entry, Optional<byte[]> salt, Optional<Set<String>> readers) {}
