package org.demebook.peering;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Asks other nodes in this one's name, and writes down for the administrator when each was heard of, or what came in between. */
final class WatchedClient implements PeerClient {
    private final Node node;
    private final Peers peers;
    private volatile @Nullable PinnedClient client;

    WatchedClient(Node node, Peers peers) {
        this.node = node;
        this.peers = peers;
    }

    @Override
    public byte[] get(Peer peer, String target, int mostBytes) {
        return watched(peer, () -> client().get(peer, target, mostBytes));
    }

    @Override
    public void post(Peer peer, String target, byte[] body) {
        watched(peer, () -> {
            client().post(peer, target, body);
            return body;
        });
    }

    private byte[] watched(Peer peer, Supplier<byte[]> asking) {
        byte[] answer;
        try {
            answer = asking.get();
        } catch (PeerTrouble trouble) {
            peers.troubled(peer.nodeId(), trouble.getMessage());
            throw trouble;
        }
        peers.heardOf(peer.nodeId());
        return answer;
    }

    /** Made when it is first used: on a node that takes no part there is no identity. */
    private synchronized PinnedClient client() {
        var known = client;
        if (known == null) {
            known = new PinnedClient(node.identity());
            client = known;
        }
        return known;
    }
}
