package org.demebook.peering;

import io.vertx.core.Vertx;
import java.net.URI;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.demebook.signing.KeyChain;

/** A whole node but for its database: keys in a folder, a TLS port on loopback, peers in memory. Several fit into one process. */
public final class TestNode implements AutoCloseable, PeerBook {
    public final NodeIdentity identity;
    public final PinnedClient client;
    public final Map<String, Peer> peers = new ConcurrentHashMap<>();
    public final Map<String, Integer> heardOf = new ConcurrentHashMap<>();
    private final String name;
    private final PeerServer server;

    public TestNode(Vertx vertx, Path folder, String name, Conversation conversation) {
        this.name = name;
        identity = NodeIdentity.in(folder);
        client = new PinnedClient(identity);
        server = PeerServer.start(vertx, "127.0.0.1", 0, identity, name, this, conversation);
    }

    public int port() {
        return server.port();
    }

    public URI address() {
        return URI.create("https://127.0.0.1:" + port());
    }

    /** As others know it now. */
    public Peer asPeer() {
        return new Peer(identity.nodeId(), name, address(), identity.tlsPin(), identity.keys(), Peer.State.ACTIVE);
    }

    public void admit(Peer peer) {
        peers.put(peer.nodeId(), peer);
    }

    @Override
    public Optional<Peer> find(String nodeId) {
        return Optional.ofNullable(peers.get(nodeId));
    }

    @Override
    public boolean learn(String nodeId, KeyChain keys) {
        var known = peers.get(nodeId);
        if (!keys.extendsChain(known.keys()) && !keys.overrules(known.keys())) {
            return false;
        }
        peers.put(nodeId, new Peer(nodeId, known.name(), known.address(), known.tlsPin(), keys, known.state()));
        return true;
    }

    @Override
    public void heardOf(String nodeId) {
        heardOf.merge(nodeId, 1, Integer::sum);
    }

    @Override
    public void close() {
        server.close();
    }
}
