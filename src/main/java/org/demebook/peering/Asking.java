package org.demebook.peering;

import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.jspecify.annotations.Nullable;

/**
 * Who asks: an active peer whose key in use signed the request, or nobody. Whoever is not known gets one answer, whatever was wrong, so that a
 * stranger does not learn who the peers are.
 */
final class Asking {
    private final NodeIdentity self;
    private final PeerBook peers;

    Asking(NodeIdentity self, PeerBook peers) {
        this.self = self;
        this.peers = peers;
    }

    /** What the header says, to this node and for this very request; not verified. @throws Turned otherwise */
    RequestToken claimed(@Nullable String authorization, String methodAndTarget) {
        if (authorization == null) {
            throw new Turned(401, "no-token");
        }
        RequestToken token;
        try {
            token = RequestToken.parse(authorization);
        } catch (Malformed e) {
            throw new Turned(401, "malformed-token");
        }
        if (!token.to().equals(self.nodeId())) {
            throw new Turned(401, "wrong-addressee");
        }
        if (!token.target().equals(methodAndTarget)) {
            throw new Turned(401, "wrong-target");
        }
        return token;
    }

    /** The peer who signed it with the key that it has in use. @throws Turned otherwise */
    Peer verified(RequestToken token) {
        var peer = known(token);
        var key = peer.keys().key(token.signed().keyId());
        if (key.isEmpty() || !token.signed().isBy(key.get())) {
            throw new Turned(401, "unknown-peer");
        }
        if (!key.get().equals(peer.keys().current())) {
            throw new Turned(401, "old-key");
        }
        return requireActive(peer);
    }

    private Peer known(RequestToken token) {
        return peers.find(token.from()).orElseThrow(() -> new Turned(401, "unknown-peer"));
    }

    /**
     * Takes over a peer's longer chain, brought in a request that its last key signed. Whether there is such a peer is looked at last: only the node
     * itself is told.
     *
     * @throws Turned otherwise
     */
    void learn(RequestToken token, byte[] document) {
        KeyChain keys;
        try {
            keys = KeyChain.parse(CanonicalJson.read(document, Limits.MOST_BODY_BYTES));
        } catch (Malformed e) {
            throw new Turned(400, "malformed-keys");
        }
        if (!keys.nodeId().equals(token.from()) || !token.signed().isBy(keys.current())) {
            throw new Turned(401, "unknown-peer");
        }
        requireActive(known(token));
        if (!peers.learn(token.from(), keys)) {
            throw new Turned(409, "keys-do-not-follow");
        }
    }

    private static Peer requireActive(Peer peer) {
        if (!peer.isActive()) {
            throw new Turned(403, "set-aside");
        }
        return peer;
    }
}
