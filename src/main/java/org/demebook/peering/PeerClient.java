package org.demebook.peering;

/**
 * How another node is asked. No address but the peer's own is ever called, no redirect followed, no proxy used.
 *
 * <p>An interface, so that a simulation can put a network of its own in between; {@link PinnedClient} is the one on TLS.
 */
public interface PeerClient {
    /**
     * @param target path and query, beginning with {@code /federation/}
     * @param mostBytes the largest answer that is read; reading stops there
     * @throws PeerTrouble whatever comes in between, by kind
     * @throws IllegalArgumentException for a target elsewhere
     */
    byte[] get(Peer peer, String target, int mostBytes);

    /**
     * @param body at most {@link Limits#MOST_BODY_BYTES}
     * @throws PeerTrouble whatever comes in between, by kind
     */
    void post(Peer peer, String target, byte[] body);
}
