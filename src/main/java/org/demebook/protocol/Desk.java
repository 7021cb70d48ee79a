package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.signing.KeyChain;

/**
 * What a participant works on: the disk, and everything that was folded from it. Made anew whenever the disk is not as it was left.
 */
final class Desk {
    private static final int CHUNK = 1_000;

    final Membership membership;
    final Disk disk;
    final Surroundings around;
    final Follower follower;
    final Copies copies;
    final String me;

    /** Whether the present change wrote something that is folded in here already. */
    boolean isDirty;

    /** Signs of entries that are inside entries of others, by node and number: the compact form. */
    final Map<String, SortedMap<Long, String>> carried = new HashMap<>();

    /** Nodes that are proven to have two stories: nothing of theirs is taken in any more. */
    final Set<String> untrusted = new HashSet<>();

    Desk(Membership membership, Disk disk, Surroundings around, Follower follower) {
        this.membership = membership;
        this.disk = disk;
        this.around = around;
        this.follower = follower;
        this.me = membership.node();
        this.copies = new Copies(membership);
        disk.journals().forEach(this::load);
        disk.alarms().forEach(this::distrust);
    }

    private void load(String node) {
        load(node, (entry, fault) -> {});
    }

    /** @param faulty hears of entries that have no effect, and why */
    private void load(String node, BiConsumer<Entry, Fault> faulty) {
        var copy = copies.of(node);
        List<Kept> chunk;
        do {
            chunk = disk.entries(node, copy.size(), CHUNK);
            for (var kept : chunk) {
                var entry = kept.entry().map(Entry::read);
                copy.tree.append(kept.leaf(entry));
                entry.ifPresent(read -> fold(copy, read, faulty));
            }
        } while (chunk.size() == CHUNK);
        copy.head = disk.head(node).map(SignedCheckpoint::parse);
        copy.again = disk.again(node);
    }

    /** An entry that was taken in before, so that its form and signature are good. */
    private void fold(Copy copy, Entry entry, BiConsumer<Entry, Fault> faulty) {
        note(copy, entry);
        var fault = copy.ledger.fault(entry);
        if (fault.isEmpty()) {
            copy.ledger.fold(entry);
            remember(entry);
        } else {
            faulty.accept(entry, fault.get());
        }
    }

    /** Folds a journal anew, of which some entries came to the disk that had been digests; these take effect where they stand. O(journal). */
    void loadAgain(String node, List<Entry> filled) {
        var before = copies.byNode.remove(node);
        var faults = new HashMap<Long, Fault>();
        load(node, (entry, fault) -> faults.put(entry.seq(), fault));
        var copy = copies.of(node);
        copy.laterKeys = before.laterKeys;
        copy.witnesses.putAll(before.witnesses);
        for (var entry : filled) {
            var fault = faults.get(entry.seq());
            if (fault == null) {
                follower.follow(entry);
            } else {
                raise(fault, copy.keys().orElseThrow(), entry);
            }
        }
    }

    void raise(Fault fault, KeyChain keys, Entry entry) {
        raise(
                fault.kind(),
                entry.node(),
                Optional.of(Evidence.entry(keys, entry.signed())),
                "Entry %d: %s".formatted(entry.seq(), fault.sentence()));
    }

    /** Who may read it follows from what it is, not from whether it had an effect. */
    static void note(Copy copy, Entry entry) {
        if (Kept.isRestricted(entry)) {
            copy.restricted.add(entry.seq());
        }
    }

    /** Folds an entry in that has no fault; what it withdraws is erased, and who follows hears of it. */
    void takeEffect(Copy copy, Entry entry) {
        var erasable = entry.says() instanceof TellingsWithdrawn withdrawal
                ? Folding.erasable(copy.ledger, withdrawal)
                : List.<Long>of();
        copy.ledger.fold(entry);
        remember(entry);
        erase(copy.node(), erasable);
        follower.follow(entry);
    }

    /** What an entry carries is a sign of other journals. */
    private void remember(Entry entry) {
        for (var inside : copies.carrying.within(entry.says())) {
            var other = copies.carrying.read(inside);
            carried.computeIfAbsent(other.node(), node -> new TreeMap<>())
                    .putIfAbsent(other.seq(), inside.entry().compact());
        }
    }

    /** The highest number of a journal that there is any sign of here. */
    long highest(String node) {
        long highest = copies.of(node).size();
        for (var text : disk.unchecked(node)) {
            highest =
                    Math.max(highest, SignedCheckpoint.parse(text).checkpoint().size());
        }
        var signs = carried.get(node);
        return signs == null ? highest : Math.max(highest, signs.lastKey());
    }

    Optional<String> entry(String node, long seq) {
        return disk.entries(node, seq - 1, 1).stream().findFirst().flatMap(Kept::entry);
    }

    private void erase(String node, Collection<Long> seqs) {
        if (!seqs.isEmpty()) {
            isDirty = true;
            disk.erase(node, seqs);
            follower.forget(node, seqs);
        }
    }

    // ── alarms ───────────────────────────────────────────────────────────────────────────────────────────────────────

    void raise(Alarm.Kind kind, String accused, String sentence) {
        raise(kind, accused, Optional.empty(), sentence);
    }

    void raise(Alarm.Kind kind, String accused, Optional<ObjectNode> evidence, String sentence) {
        var what = kind + " " + accused + " " + evidence.map(Digests::of).orElse(sentence);
        var alarm = new Alarm(Digests.of(what), kind, accused, evidence, sentence, around.now());
        if (disk.alarms().stream().noneMatch(known -> known.id().equals(alarm.id()))) {
            isDirty = true;
            disk.raise(alarm);
            follower.raised(alarm);
            distrust(alarm);
        }
    }

    private void distrust(Alarm alarm) {
        if (Evidence.standsAlone(alarm.kind())
                && alarm.isProven()
                && !alarm.accused().equals(me)) {
            untrusted.add(alarm.accused());
        }
    }
}
