package org.demebook.protocol;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.demebook.merkle.MerkleTree;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.protocol.Statement.JournalOpened;
import org.demebook.protocol.Statement.KeysChanged;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.VerifyingKey;

/**
 * Takes pages of other nodes' journals in, in this order: keys → head → forms → sequence → consistency → signatures → whether its node may
 * make each statement → effect. Up to the signatures a page is taken whole or not at all; a statement that its node may not make stays in
 * the journal, since it was said, and has no effect.
 */
final class Intaking {
    private final Desk desk;
    private final Fence fence;
    private final Heads heads;

    /** An item that fits its head. */
    private record Staged(Kept kept, Optional<Entry> entry) {
        byte[] leaf() {
            return kept.leaf(entry);
        }
    }

    /** Ends the intake of a page after its alarm was raised. */
    private static final class Unacceptable extends RuntimeException {
        Unacceptable() {
            super(null, null, false, false);
        }
    }

    Intaking(Desk desk, Fence fence) {
        this.desk = desk;
        this.fence = fence;
        this.heads = new Heads(desk);
    }

    Intake take(String from, Cursor cursor, FeedPage page) {
        var own = cursor.node().equals(desk.me);
        var copy = desk.copies.of(cursor.node());
        var asked = own ? cursor.epoch() == fence.round && fence.isUp() : cursor.epoch() == fence.epoch(copy.node());
        if (!asked || cursor.after() != copy.size()) {
            return Intake.of(Intake.Outcome.STALE);
        }
        if (!own && (!desk.copies.seats(copy.node()) || desk.untrusted.contains(copy.node()))) {
            return Intake.of(Intake.Outcome.REFUSED);
        }
        try {
            return take(from, copy, page, own);
        } catch (Unacceptable e) {
            return Intake.of(Intake.Outcome.REFUSED);
        }
    }

    private Unacceptable refuse(Alarm.Kind kind, String accused, String sentence) {
        desk.raise(kind, accused, sentence);
        return new Unacceptable();
    }

    private Intake take(String from, Copy copy, FeedPage page, boolean own) {
        if (!page.node().equals(copy.node()) || page.after() != copy.size()) {
            throw refuse(Alarm.Kind.BROKEN_SEQUENCE, from, "It gave another place of a journal than it was asked for.");
        }
        var keys = keys(from, copy, page);
        var head = page.head();
        if (!heads.isSigned(head, keys, copy.node())) {
            throw refuse(
                    Alarm.Kind.FORGED_SIGNATURE,
                    from,
                    "It gave a head of %s that %s did not sign.".formatted(copy.node(), copy.node()));
        }
        long size = head.checkpoint().size();
        if (size <= copy.size()) {
            return nothingNew(from, copy, page, keys, own);
        }
        if (page.items().isEmpty()) {
            throw refuse(
                    Alarm.Kind.WITHHELD,
                    from,
                    "It shows a head of %s with %d entries and gives none after %d."
                            .formatted(copy.node(), size, copy.size()));
        }
        if (page.items().size() > Giving.MOST_ENTRIES || page.items().size() > size - copy.size()) {
            throw refuse(Alarm.Kind.BROKEN_SEQUENCE, from, "It gave more entries than its head has.");
        }
        requireContinuation(from, copy, page, keys);
        var staged = stage(from, copy, page);
        requireSigned(copy, keys, staged);
        apply(from, copy, page, keys, staged);
        listen(from, page);
        heads.grown(copy);
        return new Intake(Intake.Outcome.TAKEN, staged.size(), copy.size() < Math.max(size, page.highest()));
    }

    private KeyChain keys(String from, Copy copy, FeedPage page) {
        var shown = page.keys();
        if (!shown.nodeId().equals(copy.node())) {
            throw refuse(Alarm.Kind.WRONG_KEY, from, "It gave keys of another node.");
        }
        var known = copy.keys();
        if (known.isEmpty()) {
            return shown;
        }
        if (!heads.keysFit(copy.node(), known.get(), shown)) {
            throw new Unacceptable();
        }
        return known.get().extendsChain(shown) ? known.get() : shown;
    }

    private Intake nothingNew(String from, Copy copy, FeedPage page, KeyChain keys, boolean own) {
        var fits = heads.compare(copy, keys, page.head());
        if (!fits) {
            return Intake.of(Intake.Outcome.REFUSED);
        }
        if (own) {
            if (page.head().checkpoint().size() > copy.headSize()) {
                // it was signed after the backup from which this node was restored
                desk.isDirty = true;
                copy.head = Optional.of(page.head());
                desk.disk.keepHead(desk.me, page.head().text());
            }
            if (page.highest() <= copy.size()) {
                fence.clear(from);
            }
        } else if (from.equals(copy.node()) && page.head().checkpoint().size() < copy.headSize()) {
            desk.raise(
                    Alarm.Kind.ROLLED_BACK,
                    from,
                    "It knows %d entries of its own journal, and it had signed %d: it was restored from a backup, or hides them."
                            .formatted(page.head().checkpoint().size(), copy.headSize()));
        }
        listen(from, page);
        return Intake.of(Intake.Outcome.NOTHING_NEW);
    }

    /** What is held here is a part of what the head promises. */
    private void requireContinuation(String from, Copy copy, FeedPage page, KeyChain keys) {
        var head = page.head().checkpoint();
        if (Prefix.isPartOf(copy.tree, head, page.fromStart())) {
            return;
        }
        var held = copy.head.filter(known -> Evidence.contradict(known.checkpoint(), head, page.fromStart()));
        held.ifPresent(known -> desk.raise(
                Alarm.Kind.EQUIVOCATION,
                copy.node(),
                Optional.of(Evidence.equivocation(keys, known, page.head(), page.fromStart())),
                "%s signed two heads that contradict each other, of %d and of %d entries."
                        .formatted(copy.node(), known.checkpoint().size(), head.size())));
        if (held.isEmpty()) {
            desk.raise(
                    Alarm.Kind.INCONSISTENT_HEAD,
                    from,
                    "It did not show that the head of %s it gave goes on from the one before.".formatted(copy.node()));
        }
        throw new Unacceptable();
    }

    // ── forms and sequence ───────────────────────────────────────────────────────────────────────────────────────────

    private List<Staged> stage(String from, Copy copy, FeedPage page) {
        long before = copy.size();
        var staged = new ArrayList<Staged>(page.items().size());
        try {
            for (var item : page.items()) {
                var next = stage(from, copy, before + staged.size() + 1, item);
                staged.add(next);
                copy.tree.append(next.leaf());
            }
            if (!Prefix.isPartOf(copy.tree, page.head().checkpoint(), page.fromEnd())) {
                throw refuse(
                        Alarm.Kind.INCONSISTENT_HEAD,
                        from,
                        "The entries of %s that it gave are not those of the head.".formatted(copy.node()));
            }
        } catch (RuntimeException e) {
            copy.tree.truncate(before);
            throw e;
        }
        copy.tree.truncate(before);
        return staged;
    }

    private Staged stage(String from, Copy copy, long seq, FeedPage.Item item) {
        if (item.digest().isPresent()) {
            return new Staged(
                    new Kept(seq, item.digest().get(), Optional.empty(), Optional.empty(), Optional.empty()),
                    Optional.empty());
        }
        var compact = item.entry().orElseThrow();
        if (compact.length() > Entry.MOST_CHARACTERS) {
            throw refuse(
                    Alarm.Kind.OVERSIZE,
                    from,
                    "Entry %d of %s is larger than an entry may be.".formatted(seq, copy.node()));
        }
        var salt = item.salt().orElseThrow();
        if (salt.length != MerkleTree.SALT_BYTES) {
            throw refuse(Alarm.Kind.MALFORMED, from, "Entry %d of %s has no good salt.".formatted(seq, copy.node()));
        }
        var entry = read(from, copy, seq, compact);
        var kept = Kept.of(seq, compact, salt, readers(copy, entry));
        return new Staged(kept, Optional.of(entry));
    }

    /** Who might read an own entry was lost with it: from here on nobody may, but who held it then. */
    private Optional<Set<String>> readers(Copy copy, Entry entry) {
        return copy.node().equals(desk.me) && entry.says() instanceof Statement.Restricted
                ? Optional.of(Set.of())
                : Optional.empty();
    }

    private Entry read(String from, Copy copy, long seq, String compact) {
        try {
            var entry = Entry.read(Signed.parse(compact, Entry.MOST_CHARACTERS));
            if (entry.seq() != seq
                    || !entry.node().equals(copy.node())
                    || !entry.population().equals(desk.membership.population())) {
                throw refuse(
                        Alarm.Kind.BROKEN_SEQUENCE,
                        from,
                        "Where entry %d of %s should be, it gave entry %d of %s."
                                .formatted(seq, copy.node(), entry.seq(), entry.node()));
            }
            return entry;
        } catch (Malformed | BadStatement e) {
            throw refuse(
                    Alarm.Kind.MALFORMED,
                    from,
                    "Entry %d of %s cannot be read: %s".formatted(seq, copy.node(), e.getMessage()));
        }
    }

    // ── signatures ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** Fits its head, so that its node stands for all of it. */
    private void requireSigned(Copy copy, KeyChain keys, List<Staged> staged) {
        var present = copy.ledger.keys();
        for (var next : staged) {
            if (next.entry.isEmpty()) {
                continue;
            }
            var entry = next.entry.get();
            var said = present;
            if (entry.says() instanceof JournalOpened opened) {
                said = Optional.of(opened.keys());
            } else if (entry.says() instanceof KeysChanged changed) {
                said = Optional.of(changed.keys());
            }
            var key = said.map(KeyChain::current)
                    .orElseThrow(() -> refuse(
                            Alarm.Kind.BROKEN_SEQUENCE, copy.node(), "Its journal does not begin with its opening."));
            requireSigned(copy.node(), entry, key, keys);
            present = said;
        }
    }

    private void requireSigned(String node, Entry entry, VerifyingKey key, KeyChain keys) {
        if (!entry.signed().keyId().equals(key.thumbprint())
                || keys.key(entry.signed().keyId()).isEmpty()) {
            throw refuse(
                    Alarm.Kind.WRONG_KEY,
                    node,
                    "Entry %d is signed with a key that is not the one in use there.".formatted(entry.seq()));
        }
        if (!entry.signed().isBy(key)) {
            throw refuse(
                    Alarm.Kind.FORGED_SIGNATURE,
                    node,
                    "The signature of entry %d does not fit.".formatted(entry.seq()));
        }
    }

    // ── effect ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private void apply(String from, Copy copy, FeedPage page, KeyChain keys, List<Staged> staged) {
        var own = copy.node().equals(desk.me);
        desk.isDirty = true;
        for (var next : staged) {
            copy.tree.append(next.leaf());
            desk.disk.append(copy.node(), next.kept);
            next.entry.ifPresent(entry -> apply(copy, keys, entry));
        }
        if (!own && !from.equals(copy.node())) {
            askAgainFor(copy, staged);
        }
        var size = page.head().checkpoint().size();
        if (copy.size() == size) {
            copy.head = Optional.of(
                    own
                            ? page.head()
                            : page.head()
                                    .cosignaturesOf(desk.copies.presentKeys())
                                    .cosigned(
                                            desk.me,
                                            desk.around.now(),
                                            desk.membership.key().get()));
            desk.disk.keepHead(copy.node(), copy.head.get().text());
        } else {
            heads.keep(copy, page.head());
        }
        copy.laterKeys = Optional.of(keys);
    }

    /** Others do not know who may read what is restricted: the journal's own node does. */
    private void askAgainFor(Copy copy, List<Staged> staged) {
        if (copy.again == 0) {
            staged.stream().filter(next -> next.entry.isEmpty()).findFirst().ifPresent(first -> {
                copy.again = first.kept.seq();
                desk.disk.keepAgain(copy.node(), copy.again);
            });
        }
    }

    private void apply(Copy copy, KeyChain keys, Entry entry) {
        Desk.note(copy, entry);
        compareHeirs(keys, entry);
        var fault = copy.ledger.fault(entry);
        if (fault.isPresent()) {
            desk.raise(fault.get(), keys, entry);
            return;
        }
        desk.takeEffect(copy, entry);
        compareCarried(entry);
        compareWithCarried(copy, keys, entry);
    }

    /** What an entry carries of journals that are held here is what stands there. */
    private void compareCarried(Entry entry) {
        for (var inside : desk.copies.carrying.within(entry.says())) {
            var other = desk.copies.carrying.read(inside);
            compareHeirs(inside.keys(), other);
            if (other.seq() <= desk.copies.of(other.node()).size()) {
                compareCarried(inside, other);
            } else if (other.node().equals(desk.me)) {
                fence.raise();
            }
        }
    }

    private void compareCarried(Statement.Carried inside, Entry other) {
        desk.entry(other.node(), other.seq())
                .filter(held -> !held.equals(inside.entry().compact()))
                .ifPresent(held ->
                        forked(other.node(), inside.keys(), held, inside.entry().compact()));
    }

    /** A node names one heir of another, wherever its words come from. */
    private void compareHeirs(KeyChain keys, Entry entry) {
        if (entry.says() instanceof GoneStated stated) {
            var before = desk.copies.of(entry.node()).ledger.gone.get(stated.gone());
            if (before != null
                    && Evidence.ofTwoHeirs(keys, before.signed(), entry.signed(), desk.membership.population())) {
                desk.raise(
                        Alarm.Kind.TWO_HEIRS,
                        entry.node(),
                        Optional.of(Evidence.twoEntries(keys, before.signed(), entry.signed())),
                        "%s named two heirs of %s.".formatted(entry.node(), stated.gone()));
            }
        }
    }

    /** What others carried of this journal before is what comes now. */
    private void compareWithCarried(Copy copy, KeyChain keys, Entry entry) {
        var signs = desk.carried.get(copy.node());
        var sign = signs == null ? null : signs.get(entry.seq());
        if (sign != null && !sign.equals(entry.signed().compact())) {
            forked(copy.node(), keys, entry.signed().compact(), sign);
        }
    }

    private void forked(String node, KeyChain keys, String held, String carried) {
        var one = Signed.parse(held, Entry.MOST_CHARACTERS);
        var other = Signed.parse(carried, Entry.MOST_CHARACTERS);
        if (Evidence.forked(keys, one, other, desk.membership.population())) {
            desk.raise(
                    Alarm.Kind.FORKED_ENTRY,
                    node,
                    Optional.of(Evidence.twoEntries(keys, one, other)),
                    "%s signed two entries with one number.".formatted(node));
        }
    }

    // ── what comes beside a page ─────────────────────────────────────────────────────────────────────────────────────

    private void listen(String from, FeedPage page) {
        for (var heard : page.heads()) {
            if (heard.node().equals(desk.me)) {
                hearOfMe(from, heard);
            } else {
                heads.hear(from, heard);
            }
        }
        for (var alarm : page.alarms()) {
            if (Evidence.holds(alarm, desk.membership.population())) {
                desk.raise(alarm.kind(), alarm.accused(), alarm.evidence(), alarm.sentence());
            } else {
                desk.raise(
                        Alarm.Kind.FALSE_PROOF,
                        from,
                        "It passed on an alarm against %s that proves nothing.".formatted(alarm.accused()));
            }
        }
    }

    private void hearOfMe(String from, FeedPage.NodeHead heard) {
        var copy = desk.copies.of(desk.me);
        if (!Evidence.isBy(heard.head(), desk.me, desk.membership.keys().get(), desk.membership.population())) {
            desk.raise(Alarm.Kind.FORGED_SIGNATURE, from, "It shows a head of this node that this node did not sign.");
        } else if (heard.head().checkpoint().size() > copy.size()) {
            fence.raise();
        } else if (heads.compare(copy, desk.membership.keys().get(), heard.head())) {
            heads.witness(copy, heard.head());
        }
    }
}
