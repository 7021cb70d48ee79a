package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.demebook.protocol.Alarm;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.FeedPage;
import org.demebook.protocol.Kept;
import org.demebook.protocol.Statement;

/** What is told to whom, what follows from it, and that nobody is blamed for what is nobody's fault. */
final class TellingRules {
    private final World world;
    /** Of each entry, who may read it, as it was written. */
    private final Map<String, Optional<Set<String>>> readers = new HashMap<>();

    private final Set<String> everRestored = new HashSet<>();

    TellingRules(World world) {
        this.world = world;
    }

    // ── I7 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    void i7_a_body_reaches_only_its_readers(SimNode where, String journal, Kept kept) {
        if (kept.entry().isEmpty()) {
            return;
        }
        if (where.id.equals(journal)) {
            readers.putIfAbsent(kept.entry().get(), kept.readers());
        } else if (!mayRead(where, kept.entry().get())) {
            throw world.story.broken(
                    "I7",
                    "%s has entry %d of %s and is not among its readers"
                            .formatted(where, kept.seq(), world.story.node(journal)));
        }
    }

    void i7_a_body_is_given_only_to_its_readers(SimNode asker, FeedPage page) {
        for (var item : page.items()) {
            if (item.entry().isPresent()
                    && !page.node().equals(asker.id)
                    && !mayRead(asker, item.entry().get())) {
                throw world.story.broken(
                        "I7",
                        "%s is given an entry of %s and is not among its readers"
                                .formatted(asker, world.story.node(page.node())));
            }
        }
    }

    private boolean mayRead(SimNode node, String entry) {
        var its = readers.get(entry);
        return its == null || its.isEmpty() || its.get().contains(node.id);
    }

    // ── I8 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    void i8_what_was_purged_is_not_there(SimNode node) {
        for (var kept : node.disk.journal(node.id)) {
            if (world.says(kept).orElse(null) instanceof Statement.Purged receipt) {
                requireErased(node, receipt.node(), receipt.withdrawal(), "which it says it erased");
            }
        }
    }

    void i8_what_was_withdrawn_is_nowhere() {
        for (var author : world.nodes) {
            for (var kept : world.chronicle.journal(author.id)) {
                if (world.says(kept).orElse(null) instanceof Statement.TellingsWithdrawn) {
                    world.nodes.stream()
                            .filter(node -> !node.isGone() && !author.isGone())
                            .forEach(node -> requireErased(node, author.id, kept.seq(), "which was withdrawn"));
                }
            }
            if (!author.isGone()) {
                requireReceipts(author);
            }
        }
    }

    private void requireReceipts(SimNode author) {
        author.participant().missingReceipts().forEach((withdrawal, missing) -> missing.stream()
                .filter(node -> !world.node(node).isGone())
                .findFirst()
                .ifPresent(node -> {
                    throw world.story.broken(
                            "I8",
                            "%s misses a receipt of %s for its withdrawal %d"
                                    .formatted(author, world.story.node(node), withdrawal));
                }));
    }

    private void requireErased(SimNode node, String author, long withdrawal, String which) {
        var says = node.disk.entry(author, withdrawal).flatMap(world::says).orElse(null);
        if (says instanceof Statement.TellingsWithdrawn withdrawn) {
            for (long seq : withdrawn.entries()) {
                node.disk
                        .entry(author, seq)
                        .filter(kept -> kept.entry().isPresent() || kept.salt().isPresent())
                        .ifPresent(kept -> {
                            throw world.story.broken(
                                    "I8",
                                    "%s has entry %d of %s, %s".formatted(node, seq, world.story.node(author), which));
                        });
            }
        }
    }

    // ── I9 ───────────────────────────────────────────────────────────────────────────────────────────────────────────

    void i9_equal_heads_and_permission_give_equal_figures() {
        var figures = new HashMap<List<Object>, Figures>();
        for (var node : world.nodes) {
            if (node.isGone()) {
                continue;
            }
            var its = Figures.of(node);
            var other = figures.putIfAbsent(List.of(node.participant().heads(), readableBy(node)), its);
            if (other != null && !other.equals(its)) {
                throw world.story.broken(
                        "I9", "%s and another node have the same heads and see\n%s\n%s".formatted(node, its, other));
            }
        }
        boolean somethingSecret = readers.values().stream().anyMatch(Optional::isPresent);
        boolean someoneGone = world.nodes.stream().anyMatch(SimNode::isGone);
        boolean asWritten = !world.conditions.relays() && everRestored.isEmpty() && !someoneGone;
        if (figures.size() > 1 && !somethingSecret && asWritten) {
            throw world.story.broken("I9", "everything is told to everybody, and nodes see different journals");
        }
    }

    private List<Object> readableBy(SimNode node) {
        var readable = new ArrayList<Object>();
        for (var author : world.nodes) {
            for (var kept : node.disk.journal(author.id)) {
                if (world.says(kept).orElse(null) instanceof Statement.Restricted says
                        && !(says instanceof Statement.RecordSent)) {
                    readable.add(author.id + kept.seq());
                }
            }
        }
        return readable;
    }

    /** Whatever ways it took, and whoever was away: an author that is there gave its readers what it still has for them. */
    void i9_readers_have_what_is_told_to_them() {
        for (var author : world.nodes) {
            if (author.isGone()) {
                continue;
            }
            for (var kept : author.disk.journal(author.id)) {
                if (kept.entry().isPresent()) {
                    world.nodes.stream()
                            .filter(node -> node != author && !node.isGone())
                            .filter(node -> kept.readers()
                                    .map(readers -> readers.contains(node.id))
                                    .orElse(true))
                            .forEach(node -> requireReadable(node, author, kept));
                }
            }
        }
    }

    private void requireReadable(SimNode node, SimNode author, Kept kept) {
        if (node.disk.entry(author.id, kept.seq()).flatMap(Kept::entry).isEmpty()) {
            throw world.story.broken(
                    "I9",
                    "%s may read entry %d of %s and has no more than its digest".formatted(node, kept.seq(), author));
        }
    }

    // ── I10 ──────────────────────────────────────────────────────────────────────────────────────────────────────────

    void i10_nobody_is_its_own_ancestor(SimNode node) {
        var told = node.participant().told();
        if (!told.inCircles().isEmpty()) {
            world.story.count(Happening.CIRCLE_SET_ASIDE);
        }
        var parents = new HashMap<AnimalId, Set<AnimalId>>();
        for (var ancestry : told.ancestry().values()) {
            var its = parents.computeIfAbsent(same(told.sameAs(), ancestry.animal()), any -> new HashSet<>());
            ancestry.dam().ifPresent(dam -> its.add(same(told.sameAs(), dam)));
            ancestry.sires().forEach(sire -> its.add(same(told.sameAs(), sire.sire())));
        }
        var done = new HashSet<AnimalId>();
        for (var animal : parents.keySet()) {
            requireNotOwnAncestor(node, animal, parents, new HashSet<>(), done);
        }
    }

    private void requireNotOwnAncestor(
            SimNode node,
            AnimalId animal,
            Map<AnimalId, Set<AnimalId>> parents,
            Set<AnimalId> onTheWay,
            Set<AnimalId> done) {
        if (done.contains(animal)) {
            return;
        }
        if (!onTheWay.add(animal)) {
            throw world.story.broken(
                    "I10", "%s sees %s as its own ancestor".formatted(node, world.story.name('a', animal)));
        }
        for (var parent : parents.getOrDefault(animal, Set.of())) {
            requireNotOwnAncestor(node, parent, parents, onTheWay, done);
        }
        onTheWay.remove(animal);
        done.add(animal);
    }

    private static AnimalId same(Map<AnimalId, AnimalId> sameAs, AnimalId animal) {
        return sameAs.getOrDefault(animal, animal);
    }

    // ── I11 ──────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** All nodes are honest; that a restored one knows less than before is true, and no proof of bad faith. */
    void i11_nobody_honest_is_accused(SimNode node) {
        if (node.isRestored()) {
            everRestored.add(node.id);
        }
        for (var alarm : node.disk.raised()) {
            boolean restored = world.nodes.stream()
                    .anyMatch(each ->
                            each.id.equals(alarm.accused()) && (each.isRestored() || everRestored.contains(each.id)));
            if (alarm.kind() != Alarm.Kind.ROLLED_BACK || !restored || alarm.isProven()) {
                throw world.story.broken(
                        "I11",
                        "%s accuses honest %s: %s, %s"
                                .formatted(node, world.story.node(alarm.accused()), alarm.kind(), alarm.sentence()));
            }
        }
    }
}
