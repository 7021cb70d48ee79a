package org.demebook.peering;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.LockModeType;
import jakarta.persistence.Table;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.jspecify.annotations.Nullable;

/** A peer as it stands in the database. It is of the node, not of a population: it follows from no journal. */
@Entity
@Table(name = "peer")
class PeerRow extends PanacheEntityBase {
    private static final int MOST_TROUBLE = 500;
    private static final Duration TOLD_EVERY = Duration.ofSeconds(10);

    /** By their text: to verify a chain takes two signatures a key. */
    private static final Cache<String, KeyChain> VERIFIED =
            Caffeine.newBuilder().maximumSize(200).build();

    @Id
    String nodeId;

    String name;
    String address;
    String tlsPin;
    String keys;
    Instant admittedAt;
    UUID admittedBy;
    String state;

    @Nullable
    Instant lastContactAt;

    @Nullable
    String lastTrouble;

    protected PeerRow() {}

    PeerRow(KeyChain keys, Instant admittedAt, UUID admittedBy) {
        this.nodeId = keys.nodeId();
        this.keys = text(keys);
        this.admittedAt = admittedAt;
        this.admittedBy = admittedBy;
        this.state = word(Peer.State.ACTIVE);
    }

    static List<PeerRow> inOrder() {
        return list("order by lower(name), nodeId");
    }

    static Optional<PeerRow> locked(String nodeId) {
        return Optional.ofNullable(findById(nodeId, LockModeType.PESSIMISTIC_WRITE));
    }

    /** A row is not written anew for each of many requests. */
    static void contact(String nodeId, Instant at) {
        update(
                "lastContactAt = ?1, lastTrouble = null where nodeId = ?2"
                        + " and (lastContactAt is null or lastContactAt < ?3 or lastTrouble is not null)",
                at,
                nodeId,
                at.minus(TOLD_EVERY));
    }

    static void trouble(String nodeId, String trouble) {
        var kept = trouble.length() <= MOST_TROUBLE ? trouble : trouble.substring(0, MOST_TROUBLE);
        update("lastTrouble = ?1 where nodeId = ?2", kept, nodeId);
    }

    Peer peer() {
        return new Peer(nodeId, name, URI.create(address), tlsPin, chain(), state());
    }

    Peer.State state() {
        return state.equals(word(Peer.State.ACTIVE)) ? Peer.State.ACTIVE : Peer.State.SET_ASIDE;
    }

    void become(Peer.State next) {
        state = word(next);
    }

    /** @return whether these are the known keys now */
    boolean learn(KeyChain later) {
        var known = chain();
        if (!later.extendsChain(known) && !later.overrules(known)) {
            return false;
        }
        keys = text(later);
        return true;
    }

    private KeyChain chain() {
        return VERIFIED.get(keys, PeerRow::verified);
    }

    private static KeyChain verified(String keys) {
        return KeyChain.parse(
                CanonicalJson.read(keys.getBytes(StandardCharsets.UTF_8), Limits.MOST_KEY_DOCUMENT_BYTES));
    }

    private static String text(KeyChain keys) {
        ObjectNode json = keys.toJson();
        return new String(CanonicalJson.write(json), StandardCharsets.UTF_8);
    }

    private static String word(Peer.State state) {
        return state == Peer.State.ACTIVE ? "active" : "set-aside";
    }
}
