package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.demebook.merkle.SignedCheckpoint;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Kept;
import org.demebook.protocol.Statement;

/** Journals: what was written stays, in one order, the same everywhere, and state is what follows from them. */
final class JournalRules {
    private static final int MOST_HEAD_BYTES = 64 * 1024;

    private final World world;
    /** Of each node, by sequence number, the leaf of what it acknowledged. */
    private final Map<String, TreeMap<Long, byte[]>> acknowledged = new HashMap<>();

    private final Set<String> lost = new HashSet<>();
    /** Of each journal, by size, the root that somebody else holds. */
    private final Map<String, TreeMap<Long, byte[]>> heads = new HashMap<>();

    private final Set<String> said = new HashSet<>();

    JournalRules(World world) {
        this.world = world;
    }

    // ── I3 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    void acknowledged(SimNode node, int before) {
        var journal = node.disk.journal(node.id);
        var its = acknowledged.computeIfAbsent(node.id, any -> new TreeMap<>());
        for (var kept : journal.subList(before, journal.size())) {
            its.put(kept.seq(), world.leaf(kept));
        }
    }

    void i3_what_was_returned_is_there(SimNode node, Entry entry) {
        boolean there = node.disk
                .entry(node.id, entry.seq())
                .flatMap(Kept::entry)
                .filter(entry.signed().compact()::equals)
                .isPresent();
        if (!there) {
            throw world.story.broken(
                    "I3", "%s said that entry %d is written, and it is not there".formatted(node, entry.seq()));
        }
    }

    void i3_what_was_asked_for_is_said(SimNode node, Predicate<Statement> wanted) {
        boolean there = node.disk.journal(node.id).stream()
                .flatMap(kept -> world.says(kept).stream())
                .anyMatch(wanted);
        if (!there) {
            throw world.story.broken("I3", node + " did what it was asked for, and has not written it");
        }
    }

    void i3_what_was_acknowledged_is_there() {
        world.nodes.stream().filter(node -> !node.isGone()).forEach(this::i3_what_was_acknowledged_is_there);
    }

    void i3_what_was_acknowledged_is_there(SimNode node) {
        acknowledged.getOrDefault(node.id, new TreeMap<>()).forEach((seq, leaf) -> {
            if (!has(node, node.id, seq, leaf)) {
                throw world.story.broken("I3", "%s has lost entry %d, which it acknowledged".formatted(node, seq));
            }
        });
    }

    /** At the end of a restore: an entry that anybody has is back, any other is nowhere. */
    void i3_a_restore_took_back_only_what_nobody_had(SimNode node) {
        var its = acknowledged.getOrDefault(node.id, new TreeMap<>());
        boolean something = false;
        for (var one : List.copyOf(its.entrySet())) {
            if (has(node, node.id, one.getKey(), one.getValue())) {
                continue;
            }
            for (var other : world.nodes) {
                if (!other.isGone() && has(other, node.id, one.getKey(), one.getValue())) {
                    throw world.story.broken(
                            "I3",
                            "entry %d of %s did not come back, though %s has it".formatted(one.getKey(), node, other));
                }
            }
            something = true;
            lost.add(HexFormat.of().formatHex(one.getValue()));
            its.remove(one.getKey());
        }
        world.story.count(something ? Happening.RESTORED_WITH_LOSS : Happening.PULLED_BACK);
    }

    void i3_what_is_lost_stays_lost(SimNode where, String journal, Kept kept) {
        if (lost.contains(HexFormat.of().formatHex(world.leaf(kept)))) {
            throw world.story.broken(
                    "I3",
                    "entry %d of %s was lost by a restore, and now %s has it"
                            .formatted(kept.seq(), world.story.node(journal), where));
        }
    }

    private boolean has(SimNode node, String journal, long seq, byte[] leaf) {
        return node.disk
                .entry(journal, seq)
                .filter(kept -> Arrays.equals(world.leaf(kept), leaf))
                .isPresent();
    }

    // ── I4 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** A head that somebody else than its author holds; the author's own may be lost with its entries. */
    void i4_a_head_is_kept_for_good(SimNode where, String journal, String head) {
        var checkpoint = SignedCheckpoint.parse(head, MOST_HEAD_BYTES).checkpoint();
        if (!where.id.equals(journal)) {
            byte[] before = heads.computeIfAbsent(journal, any -> new TreeMap<>())
                    .putIfAbsent(checkpoint.size(), checkpoint.root());
            if (before != null && !Arrays.equals(before, checkpoint.root())) {
                throw world.story.broken(
                        "I4",
                        "there are two heads of %d entries of %s"
                                .formatted(checkpoint.size(), world.story.node(journal)));
            }
            if (before != null) {
                return;
            }
        }
        requireTrue(journal, checkpoint.size(), checkpoint.root());
    }

    void i4_every_head_is_still_true() {
        heads.forEach((journal, its) -> its.forEach((size, root) -> requireTrue(journal, size, root)));
    }

    private void requireTrue(String journal, long size, byte[] root) {
        var entries = world.chronicle.journal(journal);
        if (size > entries.size()) {
            if (!world.node(journal).isGone() && !world.node(journal).isRestored()) {
                throw world.story.broken(
                        "I4",
                        "somebody holds a head of %d entries of %s, which has %d"
                                .formatted(size, world.story.node(journal), entries.size()));
            }
            return;
        }
        var leaves = entries.subList(0, (int) size).stream().map(Kept::leaf).toList();
        if (!Arrays.equals(NaiveTree.root(leaves), root)) {
            throw world.story.broken(
                    "I4",
                    "the head of %d entries of %s does not follow from these entries"
                            .formatted(size, world.story.node(journal)));
        }
    }

    // ── I5 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** That copies are equal to their originals is looked at as they are written, by the {@link Chronicle}, and here once more. */
    void i5_copies_and_state_follow_from_the_journals() {
        world.chronicle.readAgain(world.nodes);
        for (var node : world.nodes) {
            if (node.isGone()) {
                continue;
            }
            var folded = node.participantOn(node.disk);
            node.aside.forEach(other -> folded.setAside(other, true));
            var now = node.participant();
            requireEqual(node, "heads", now.heads(), folded.heads());
            requireEqual(node, "animals", now.animals(), folded.animals());
            for (var animal : now.animals()) {
                requireEqual(node, "whereabouts", now.whereabouts(animal), folded.whereabouts(animal));
            }
            requireEqual(node, "transfers", now.transfers(), folded.transfers());
            requireEqual(node, "what was told", now.told(), folded.told());
            requireEqual(node, "missing receipts", now.missingReceipts(), folded.missingReceipts());
        }
    }

    private void requireEqual(SimNode node, String what, Object now, Object folded) {
        if (!now.equals(folded)) {
            throw world.story.broken(
                    "I5",
                    "%s of %s differ from those folded from its disk:\n%s\n%s".formatted(what, node, now, folded));
        }
    }

    // ── I6 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    void i6_nothing_is_said_twice(SimNode author, Kept kept) {
        var says = world.says(kept).orElse(null);
        if (says != null) {
            count(author, says);
            onlyOnce(says).forEach(once -> {
                if (!said.add(author.id + " " + once)) {
                    throw world.story.broken("I6", "%s says a second time: %s".formatted(author, once));
                }
            });
        }
    }

    /** What may stand in one journal once. */
    private static List<String> onlyOnce(Statement says) {
        var what = says.getClass().getSimpleName() + " ";
        if (says instanceof Statement.JournalOpened) {
            return List.of(what);
        } else if (says instanceof Statement.AnimalEntered it) {
            return List.of(what + it.animal());
        } else if (says instanceof Statement.Offered it) {
            return List.of(what + it.transfer());
        } else if (says instanceof Statement.Withdrawn it) {
            return List.of("ended " + it.transfer());
        } else if (says instanceof Statement.Released it) {
            return List.of("ended " + it.transfer());
        } else if (says instanceof Statement.Accepted it) {
            return List.of("answered " + it.transfer());
        } else if (says instanceof Statement.Rejected it) {
            return List.of("answered " + it.transfer());
        } else if (says instanceof Statement.Taken it) {
            return List.of(what + it.transfer());
        } else if (says instanceof Statement.Purged it) {
            return List.of(what + it.node() + it.withdrawal());
        } else if (says instanceof Statement.SameAnimalConfirmed it) {
            return List.of(what + it.claim());
        }
        return List.of();
    }

    private void count(SimNode author, Statement says) {
        new Census(world).count(author, says);
    }

    /** What was lost may be said again. */
    void readAgain() {
        said.clear();
        for (var author : world.nodes) {
            for (var kept : new ArrayList<>(world.chronicle.journal(author.id))) {
                world.says(kept).ifPresent(says -> onlyOnce(says).forEach(once -> said.add(author.id + " " + once)));
            }
        }
    }
}
