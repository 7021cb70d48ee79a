package org.demebook.peering;

import java.util.Optional;
import org.demebook.signing.KeyChain;

/** Where the server of peers looks up who asks. {@link Peers} is the one on the database. */
public interface PeerBook {
    /** A peer in whatever state. */
    Optional<Peer> find(String nodeId);

    /**
     * A peer's keys have gone on. Does nothing where they have not.
     *
     * @return whether {@code keys} are now the known ones: they extend those known before, or overrule them ({@link
     *     KeyChain#overrules})
     */
    boolean learn(String nodeId, KeyChain keys);

    /** It was heard of: it asked, and was who it says. */
    void heardOf(String nodeId);
}
