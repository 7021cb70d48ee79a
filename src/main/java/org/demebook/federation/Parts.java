package org.demebook.federation;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import javax.sql.DataSource;
import org.demebook.merkle.MerkleTree;
import org.demebook.peering.Node;
import org.demebook.protocol.Follower;
import org.demebook.protocol.Membership;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Surroundings;

/** This node's parts in the populations that it shares, one each. */
@ApplicationScoped
class Parts {
    /** Own entries of a population are durable: others may be told that there is something new. */
    record Written(UUID population) {}

    private final ConcurrentHashMap<UUID, Part> parts = new ConcurrentHashMap<>();
    private final SecureRandom random = new SecureRandom();

    @Inject
    Node node;

    @Inject
    DataSource database;

    @Inject
    Clock clock;

    @Inject
    Event<Written> written;

    /** In a transaction. Empty where the population is not shared. */
    Optional<Part> of(UUID population) {
        if (!node.isFederated()) {
            return Optional.empty();
        }
        var known = parts.get(population);
        return known != null
                ? Optional.of(known)
                : FederatedPopulation.of(population)
                        .map(row -> parts.computeIfAbsent(population, id -> make(id, row.founder)));
    }

    private Part make(UUID population, String founder) {
        var identity = node.identity();
        var membership = new Membership(population, founder, identity::keys, identity::signingKey);
        return new Part(population, identity.nodeId(), new PostgresDisk(population, database), new Part.Making() {
            @Override
            public Participant participant(PostgresDisk disk, Follower follower) {
                return new Participant(membership, disk, surroundings(), follower);
            }

            @Override
            public Set<String> aside() {
                return AsideNode.of(population);
            }
        });
    }

    void leave(Part part, boolean committed) {
        boolean tell = committed && part.hasWritten();
        part.leave(committed);
        if (!part.isEstablished()) {
            parts.remove(part.population, part); // the sharing itself was taken back
        }
        if (tell) {
            written.fireAsync(new Written(part.population));
        }
    }

    Surroundings surroundings() {
        return new Surroundings() {
            @Override
            public Instant now() {
                return Instant.now(clock);
            }

            @Override
            public byte[] salt() {
                var salt = new byte[MerkleTree.SALT_BYTES];
                random.nextBytes(salt);
                return salt;
            }

            @Override
            public UUID newId() {
                return UUID.randomUUID();
            }
        };
    }
}
