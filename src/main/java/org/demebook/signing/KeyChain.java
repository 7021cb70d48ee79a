package org.demebook.signing;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;

/**
 * The keys of a node, from the first on: the node's key document, also carried by the first entry of each of its journals. A
 * node's id is the thumbprint of its first key.
 *
 * @param founding the first key's own word (typ {@value #TYPE}, number 1): it commits to a recovery key, which the node's id does not
 * @param links one for each further key, in order
 */
public record KeyChain(Signed founding, List<Link> links) {
    /** What a signature of a key is called in its header. */
    public static final String TYPE = "demebook-key";

    /** The most keys that a chain may have. */
    public static final int MOST_KEYS = 256;

    /**
     * A key and its successor, who say the same: {@code {"node":id,"number":n,"key":x,"recovery":thumbprint,"by":x}}.
     *
     * @param byOld by the key before, or by the recovery key that was committed before; {@code by} is its {@code x}
     * @param byNew by the new key
     */
    public record Link(Signed byOld, Signed byNew) {}

    /** @throws Malformed if a signature or a succession does not hold */
    public KeyChain {
        links = List.copyOf(links);
    }

    /** A new node. @param recovery of a key pair that is kept away from the node */
    public static KeyChain of(SigningKey first, VerifyingKey recovery) {
        throw new UnsupportedOperationException();
    }

    /**
     * The chain with a further key.
     *
     * @param current the key now in use
     * @param recovery the recovery key from now on; may stay the same
     * @throws IllegalArgumentException if {@code current} is not the key in use, or the next was in use before
     */
    public KeyChain rotated(SigningKey current, SigningKey next, VerifyingKey recovery) {
        throw new UnsupportedOperationException();
    }

    /**
     * The chain with a further key where the one in use is lost or stolen.
     *
     * @param nextRecovery another one, since the recovery key's public half is known from now on
     * @throws IllegalArgumentException if {@code recoveryKey} is not the one committed to
     */
    public KeyChain recovered(SigningKey recoveryKey, SigningKey next, VerifyingKey nextRecovery) {
        throw new UnsupportedOperationException();
    }

    /** The thumbprint of the first key. */
    public String nodeId() {
        throw new UnsupportedOperationException();
    }

    public VerifyingKey first() {
        throw new UnsupportedOperationException();
    }

    public VerifyingKey current() {
        throw new UnsupportedOperationException();
    }

    /** The thumbprint of the recovery key now committed to. */
    public String recovery() {
        throw new UnsupportedOperationException();
    }

    /** All keys, in the order of their numbers, which start at 1. */
    public List<VerifyingKey> keys() {
        throw new UnsupportedOperationException();
    }

    /** The key of that thumbprint, if it is or was this node's. */
    public Optional<VerifyingKey> key(String keyId) {
        throw new UnsupportedOperationException();
    }

    /** Whether this is that chain, or that chain with further keys. */
    public boolean extendsChain(KeyChain earlier) {
        throw new UnsupportedOperationException();
    }

    /**
     * Whether, of two chains of one node that part, this is the one to go on with: where they part, this one was recovered and the
     * other rotated. A thief of the key in use can rotate it; only the holder of the recovery key can recover.
     */
    public boolean overrules(KeyChain other) {
        throw new UnsupportedOperationException();
    }

    /** {@code {"founding":compact,"links":[[byOld,byNew],…]}}. */
    public ObjectNode toJson() {
        throw new UnsupportedOperationException();
    }

    /**
     * Reads what a stranger sent and verifies all of it: two verifications of Ed25519 a key.
     *
     * @throws Malformed for any other form, and where a signature or a succession does not hold
     */
    public static KeyChain parse(ObjectNode json) {
        throw new UnsupportedOperationException();
    }
}
