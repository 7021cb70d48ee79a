package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.UUID;

/**
 * One node's part in one population: writes its journal, takes in those of others, gives them away, and says where an animal is.
 *
 * <p>Every call that changes something is one change of the {@link Disk}; what it returned or gave away is durable. After a change that
 * failed the state is folded anew from the disk. Not for several threads at once. Keeps some 300 bytes an entry in memory.
 */
public final class Participant {
    /** @param follower hears of every entry that takes effect, own ones included, within the change */
    public Participant(Membership membership, Disk disk, Surroundings around, Follower follower) {}

    // ── what the node itself says ────────────────────────────────────────────────────────────────────────────────────

    /** Begins the journal, where there is none yet; at the founder with the charter. */
    public void open(String name, Optional<Charter> charter) {}

    /**
     * Writes statements in one change, in this order, all or none.
     *
     * @throws Refused if one of them is not the node's to make now, or the node is fenced
     */
    public List<Entry> write(List<Saying> sayings) {
        return List.of();
    }

    /** Offers an animal that the node holds, with what its receiver is handed. */
    public UUID offer(AnimalId animal, String to, Instant expiresAt, ObjectNode record) {
        return UUID.randomUUID();
    }

    /** Takes an offer back. @throws Refused after the animal was released */
    public void withdraw(UUID transfer) {}

    /** Takes up an offer that another node made to this one. @throws Refused if it is known to have ended */
    public void accept(UUID transfer) {}

    public void reject(UUID transfer) {}

    /**
     * Does what follows without anybody's decision: releases what was accepted, takes what was released, ends what was rejected or
     * has expired, erases what was withdrawn and says so. Nothing while fenced.
     */
    public void settle() {}

    /** Signs that a node is gone for good, for whoever adopts its animals. */
    public Statement.Endorsement endorse(String gone) {
        throw new UnsupportedOperationException();
    }

    // ── the others ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** The other nodes of the charter, but for those set aside, whose journals this one follows. */
    public SortedSet<String> others() {
        throw new UnsupportedOperationException();
    }

    /** From where to ask for a journal; the own one while fenced. What is asked with it has to be taken in with it. */
    public Cursor cursor(String node) {
        throw new UnsupportedOperationException();
    }

    /**
     * What this node gives of a journal.
     *
     * @throws FeedError typed
     */
    public FeedPage entries(String asker, String node, long after, int most) {
        throw new UnsupportedOperationException();
    }

    /**
     * Takes a page in, all of it or nothing: sizes and forms were checked by {@link PageForm}; then head, signatures, sequence, consistency,
     * and of each statement whether its node may make it.
     *
     * @param from the node that gave it
     */
    public Intake take(String from, Cursor cursor, FeedPage page) {
        throw new UnsupportedOperationException();
    }

    /** The node that was asked refused. */
    public Intake refused(String from, Cursor cursor, FeedError.Reason reason) {
        throw new UnsupportedOperationException();
    }

    /** Something that {@link PageForm} could not read. */
    public void unreadable(String from, RuntimeException why) {}

    // ── where things are ─────────────────────────────────────────────────────────────────────────────────────────────

    /** Whether the node may not write before others told it how far its journal went. */
    public boolean fenced() {
        return true;
    }

    /** The nodes that still have to tell. */
    public Set<String> awaited() {
        return Set.of();
    }

    /** The administrator says that this node is not to be waited for, nor followed. */
    public void setAside(String node, boolean aside) {}

    public Whereabouts whereabouts(AnimalId animal) {
        throw new UnsupportedOperationException();
    }

    public SortedSet<AnimalId> animals() {
        throw new UnsupportedOperationException();
    }

    /** How many entries of each journal this node holds and has checked. */
    public SortedMap<String, Long> heads() {
        throw new UnsupportedOperationException();
    }

    public Optional<Charter> charter() {
        return Optional.empty();
    }

    public Map<UUID, Transfer> transfers() {
        return Map.of();
    }

    /** What was told of animals, as far as it was told to this node: ancestry by the node that registered, holding by the one that holds. */
    public Told told() {
        throw new UnsupportedOperationException();
    }

    /** Of each own withdrawal, the nodes that have not said yet that they erased. */
    public SortedMap<Long, SortedSet<String>> missingReceipts() {
        throw new UnsupportedOperationException();
    }

    public List<Alarm> alarms() {
        return List.of();
    }
}
