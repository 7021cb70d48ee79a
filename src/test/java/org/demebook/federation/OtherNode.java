package org.demebook.federation;

import io.vertx.core.Vertx;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import org.demebook.peering.Conversation;
import org.demebook.peering.Peer;
import org.demebook.peering.PeerTrouble;
import org.demebook.peering.TestNode;
import org.demebook.protocol.FeedError;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Membership;
import org.demebook.protocol.MemoryDisk;
import org.demebook.protocol.PageForm;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Surroundings;

/** Another node in the test's process: real keys, real TLS, the real protocol, a disk in memory. Asks only when it is told to. */
public final class OtherNode implements AutoCloseable, Conversation {
    private static final SecureRandom RANDOM = new SecureRandom();

    public final TestNode node;
    public final AtomicInteger hints = new AtomicInteger();
    private final Map<UUID, Participant> parts = new ConcurrentHashMap<>();

    public OtherNode(Vertx vertx, Path folder, String name) {
        this.node = new TestNode(vertx, folder, name, this);
    }

    public String id() {
        return node.identity.nodeId();
    }

    /** Takes part in a population that another node founded. */
    public void follow(UUID population, String founder) {
        var identity = node.identity;
        parts.put(
                population,
                new Participant(
                        new Membership(population, founder, identity::keys, identity::signingKey),
                        new MemoryDisk(),
                        new Around(),
                        Follower.NOBODY));
    }

    private record Around() implements Surroundings {
        @Override
        public Instant now() {
            return Instant.now();
        }

        @Override
        public byte[] salt() {
            var salt = new byte[32];
            RANDOM.nextBytes(salt);
            return salt;
        }

        @Override
        public UUID newId() {
            return UUID.randomUUID();
        }
    }

    public synchronized <T> T with(UUID population, Function<Participant, T> work) {
        return work.apply(parts.get(population));
    }

    /** Asks that peer for its journal, and for the own one while fenced; until there is no more. */
    public void pull(UUID population, Peer peer) {
        if (with(population, Participant::fenced)) {
            pull(population, peer, id());
        }
        pull(population, peer, peer.nodeId());
        if (!with(population, Participant::fenced)) {
            with(population, part -> {
                part.open("other", Optional.empty());
                part.settle();
                return true;
            });
        }
    }

    private void pull(UUID population, Peer peer, String journal) {
        boolean more = true;
        while (more) {
            var cursor = with(population, part -> part.cursor(journal));
            try {
                var page = PageForm.read(
                        node.client.get(peer, Fetching.target(population, cursor, 500), PageForm.MOST_BYTES));
                more = with(population, part -> part.take(peer.nodeId(), cursor, page))
                        .more();
            } catch (PeerTrouble trouble) {
                var reason = Fetching.reason(trouble).orElseThrow(() -> trouble);
                with(population, part -> {
                    part.refused(peer.nodeId(), cursor, reason);
                    return true;
                });
                more = false;
            }
        }
    }

    @Override
    public Reply entries(String asking, UUID population, String of, long after, int most, String start) {
        try {
            FeedPage page = with(population, part -> part.entries(asking, of, after, most));
            return Reply.ok(PageForm.write(page));
        } catch (FeedError error) {
            return Reply.error(404, error.reason().word());
        }
    }

    @Override
    public Reply hint(String asking, UUID population) {
        hints.incrementAndGet();
        return Reply.done();
    }

    @Override
    public void close() {
        node.close();
    }
}
