package org.demebook.peering;

/** Asks other nodes over TLS 1.3, each by its pinned key and by no other. */
public final class PinnedClient implements PeerClient {
    private final NodeIdentity self;

    public PinnedClient(NodeIdentity self) {
        this.self = self;
    }

    @Override
    public byte[] get(Peer peer, String target, int mostBytes) {
        throw new UnsupportedOperationException();
    }

    @Override
    public void post(Peer peer, String target, byte[] body) {
        throw new UnsupportedOperationException();
    }
}
