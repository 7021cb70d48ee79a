package org.demebook.peering;

import java.net.URI;
import org.demebook.signing.KeyChain;

/**
 * Another node, as this one knows it.
 *
 * @param nodeId thumbprint of its first key, 43 characters; never changes
 * @param name what the administrator calls it
 * @param address {@code https://host:port}, as the administrator typed it; nothing that a peer says changes it
 * @param tlsPin SHA-256 of the public key (SubjectPublicKeyInfo) of its TLS certificate, base64url without padding
 * @param keys its keys as far as they are known here
 */
public record Peer(String nodeId, String name, URI address, String tlsPin, KeyChain keys, State state) {
    /** Whether one talks with it. */
    public enum State {
        ACTIVE,
        /** It is asked nothing and answered nothing; what came of it before stays. */
        SET_ASIDE
    }

    public boolean isActive() {
        return state == State.ACTIVE;
    }
}
