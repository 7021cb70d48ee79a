package org.demebook.protocol;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Optional;
import org.demebook.merkle.MerkleTree;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;

/**
 * Asks a journal's own node once more for what others gave as digests, since it alone knows who may read it. What comes has to be
 * what the digest in the tree promised; it takes effect where it stands. What it keeps back stays a digest.
 */
record Again(Desk desk, Fence fence) {

    Intake take(String from, Cursor cursor, FeedPage page) {
        var copy = desk.copies.of(cursor.node());
        if (!from.equals(copy.node())
                || cursor.epoch() != fence.epoch(copy.node())
                || cursor.after() + 1 != copy.again) {
            return Intake.of(Intake.Outcome.STALE);
        }
        if (!desk.copies.seats(copy.node()) || desk.untrusted.contains(copy.node())) {
            return Intake.of(Intake.Outcome.REFUSED);
        }
        if (!page.node().equals(copy.node()) || page.after() != cursor.after()) {
            desk.raise(Alarm.Kind.BROKEN_SEQUENCE, from, "It gave another place of a journal than it was asked for.");
            return Intake.of(Intake.Outcome.REFUSED);
        }
        var items = page.items();
        var held = desk.disk.entries(copy.node(), cursor.after(), items.size());
        if (held.isEmpty()) {
            return Intake.of(Intake.Outcome.NOTHING_NEW);
        }
        var filled = new ArrayList<Entry>();
        for (int i = 0; i < held.size(); i++) {
            fill(copy, held.get(i), items.get(i)).ifPresent(filled::add);
        }
        desk.isDirty = true;
        long next = copy.again + held.size();
        copy.again = next > copy.size() ? 0 : next;
        desk.disk.keepAgain(copy.node(), copy.again);
        if (!filled.isEmpty()) {
            desk.loadAgain(copy.node(), filled);
        }
        return new Intake(Intake.Outcome.TAKEN, filled.size(), copy.again > 0);
    }

    private Optional<Entry> fill(Copy copy, Kept held, FeedPage.Item item) {
        if (held.entry().isPresent() || item.entry().isEmpty() || copy.ledger.withdrawn.contains(held.seq())) {
            return Optional.empty();
        }
        var compact = item.entry().get();
        var kept = Kept.of(held.seq(), compact, item.salt().orElseThrow(), Optional.empty());
        var entry =
                Arrays.equals(kept.digest(), held.digest()) ? read(copy, held.seq(), item) : Optional.<Entry>empty();
        if (entry.isEmpty()) {
            desk.raise(
                    Alarm.Kind.FALSE_PROOF,
                    copy.node(),
                    "What it gave as entry %d is not what stands there in its journal.".formatted(held.seq()));
            return Optional.empty();
        }
        desk.disk.fill(copy.node(), kept);
        return entry;
    }

    private Optional<Entry> read(Copy copy, long seq, FeedPage.Item item) {
        try {
            var signed = Signed.parse(item.entry().orElseThrow(), Entry.MOST_CHARACTERS);
            var entry = Entry.read(signed);
            var key = copy.ledger.keysAt(seq).map(KeyChain::current);
            return Optional.of(entry)
                    .filter(read -> read.seq() == seq
                            && read.node().equals(copy.node())
                            && read.population().equals(desk.membership.population())
                            && Kept.isRestricted(read)
                            && item.salt().orElseThrow().length == MerkleTree.SALT_BYTES
                            && key.filter(one -> signed.keyId().equals(one.thumbprint()) && signed.isBy(one))
                                    .isPresent());
        } catch (Malformed | BadStatement e) {
            return Optional.empty();
        }
    }
}
