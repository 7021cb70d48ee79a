package org.demebook.peering;

import io.quarkus.arc.DefaultBean;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.vertx.core.Vertx;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Inject;
import java.util.Optional;
import java.util.UUID;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Opens the TLS port when the server starts, on a node that takes part. */
@ApplicationScoped
class FederationPort {
    private static final Logger LOG = Logger.getLogger(FederationPort.class);

    @ConfigProperty(name = "demebook.federation.host")
    String host;

    @ConfigProperty(name = "demebook.federation.port")
    int port;

    @ConfigProperty(name = "demebook.federation.address")
    Optional<String> address;

    @Inject
    Node node;

    @Inject
    Peers peers;

    @Inject
    Conversation conversation;

    @Inject
    Vertx vertx;

    private @Nullable PeerServer server;

    void open(@Observes StartupEvent started) {
        if (!node.isFederated()) {
            return;
        }
        server = PeerServer.start(vertx, host, port, node.identity(), node.name(), peers, conversation);
        LOG.infof(
                "Other nodes reach this one at %s; its id is %s",
                address(), node.identity().fingerprint());
    }

    void close(@Observes ShutdownEvent ended) {
        if (server != null) {
            server.close();
        }
    }

    /** What to tell the administrators of other nodes. */
    String address() {
        return address.orElseGet(() -> "https://%s:%d".formatted(host, server == null ? port : server.port()));
    }

    /** How other nodes are asked. On a node that takes no part, asking is refused. */
    @Produces
    @ApplicationScoped
    PeerClient client() {
        return new WatchedClient(node, peers);
    }

    /** While no room of this server has anything to tell other nodes. */
    @DefaultBean
    @ApplicationScoped
    static class NothingToTell implements Conversation {
        @Override
        public Reply entries(String asking, UUID population, String of, long after, int most, String start) {
            return Reply.error(404, "no-such-journal");
        }

        @Override
        public Reply hint(String asking, UUID population) {
            return Reply.done();
        }
    }
}
