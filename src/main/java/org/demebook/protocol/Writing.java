package org.demebook.protocol;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.protocol.Statement.Carried;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.JournalOpened;
import org.demebook.protocol.Statement.KeysChanged;
import org.demebook.protocol.Statement.Offered;
import org.demebook.protocol.Statement.Purged;
import org.demebook.protocol.Statement.RecordSent;
import org.demebook.protocol.Statement.Rejected;
import org.demebook.protocol.Statement.Released;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SameAnimalConfirmed;
import org.demebook.protocol.Statement.SameAnimalReversed;
import org.demebook.protocol.Statement.Taken;
import org.demebook.protocol.Statement.Withdrawn;

/** What the node itself says: it refuses here what others would not accept from it. */
record Writing(Desk desk, Fence fence, Set<String> others) {

    Entry write(Saying saying) {
        if (fence.isUp()) {
            throw new Refused(
                    Refused.Reason.FENCED,
                    "This node was started and has not heard yet from %s how far its journal went."
                            .formatted(fence.awaited(others)));
        }
        var ledger = desk.copies.of(desk.me).ledger;
        if (ledger.keys().isEmpty() != saying.says() instanceof JournalOpened) {
            throw new Refused(
                    Refused.Reason.NOT_OPEN,
                    "The journal has %s.".formatted(ledger.keys().isEmpty() ? "not begun" : "begun already"));
        }
        if (!(saying.says() instanceof KeysChanged)) {
            stateKeyInUse();
        }
        return append(saying);
    }

    /** With another key than the journal says, nobody could tell whose the next entry is. */
    private void stateKeyInUse() {
        var stated = desk.copies.of(desk.me).ledger.keys();
        var keys = desk.membership.keys().get();
        if (stated.isPresent() && !stated.get().equals(keys)) {
            append(Saying.toAll(new KeysChanged(keys)));
        }
    }

    private Entry append(Saying saying) {
        var copy = desk.copies.of(desk.me);
        var entry = Entry.sign(
                desk.me,
                desk.membership.population(),
                copy.size() + 1,
                desk.around.now(),
                saying.says(),
                desk.membership.key().get());
        requireOurs(saying.says());
        copy.ledger.fault(entry).ifPresent(fault -> {
            throw new Refused(reason(fault.kind()), fault.sentence());
        });
        var kept = Kept.of(entry.seq(), entry.signed().compact(), desk.around.salt(), saying.readers());
        desk.isDirty = true;
        desk.disk.append(desk.me, kept);
        copy.tree.append(kept.leaf(Optional.of(entry)));
        Desk.note(copy, entry);
        desk.takeEffect(copy, entry);
        return entry;
    }

    /** What other journals say, too: an animal that others adopted is not this node's any more. */
    private void requireOurs(Statement says) {
        if (says instanceof Offered offered) {
            requireSeated(offered.to());
            requireHeld(offered.animal());
        } else if (says instanceof GoneStated stated) {
            requireSeated(stated.gone());
            requireSeated(stated.heir());
        } else if (says instanceof HoldingTold told) {
            requireHeld(told.animal());
        }
    }

    private void requireSeated(String node) {
        if (!desk.copies.seats(node)) {
            throw new Refused(Refused.Reason.NOT_SEATED, "That node takes no part in this population.");
        }
    }

    private void requireHeld(AnimalId animal) {
        if (!isHere(animal)) {
            throw new Refused(Refused.Reason.NOT_ITS_HOLDER, "%s is not held here.".formatted(animal));
        }
    }

    private static Refused.Reason reason(Alarm.Kind kind) {
        return switch (kind) {
            case NOT_ITS_HOLDER -> Refused.Reason.NOT_ITS_HOLDER;
            case FOREIGN_AUTHORITY -> Refused.Reason.FOREIGN_AUTHORITY;
            case REPLAYED -> Refused.Reason.REPLAYED;
            case FALSE_PROOF -> Refused.Reason.FALSE_PROOF;
            default -> Refused.Reason.MALFORMED;
        };
    }

    // ── hand-over ────────────────────────────────────────────────────────────────────────────────────────────────────

    UUID offer(AnimalId animal, String to, Instant expiresAt, ObjectNode record) {
        var transfer = TransferId.of(desk.around.newId(), desk.me);
        write(Saying.toAll(new Offered(transfer, animal, to, expiresAt, Digests.of(record))));
        write(Saying.to(Set.of(to), new RecordSent(transfer, record)));
        return transfer;
    }

    void withdraw(UUID transfer) {
        var ledger = desk.copies.of(desk.me).ledger;
        if (!ledger.outgoing.containsKey(transfer)) {
            throw noSuchTransfer(transfer);
        }
        if (ledger.releases.containsKey(transfer)) {
            throw new Refused(Refused.Reason.TOO_LATE, "The animal was released and cannot be taken back.");
        }
        if (ledger.isOpen(transfer)) {
            write(Saying.toAll(new Withdrawn(transfer)));
        }
    }

    void answer(UUID transfer, boolean accepted) {
        var own = desk.copies.of(desk.me).ledger;
        var before = own.incoming.get(transfer);
        if (before != null) {
            if (before.accepted() == accepted) {
                return; // it was said before
            }
            throw new Refused(Refused.Reason.TOO_LATE, "This offer was answered already.");
        }
        var giver = desk.copies.byNode.values().stream()
                .filter(copy -> copy.ledger.outgoing.containsKey(transfer))
                .findFirst()
                .orElseThrow(() -> noSuchTransfer(transfer));
        var out = giver.ledger.outgoing.get(transfer);
        if (!out.offered().to().equals(desk.me)) {
            throw noSuchTransfer(transfer);
        }
        if (!giver.ledger.isOpen(transfer)) {
            throw new Refused(Refused.Reason.TOO_LATE, "Its giver has ended the offer.");
        }
        var offer = new Carried(out.offer().signed(), giver.keys().orElseThrow());
        write(Saying.toAll(accepted ? new Statement.Accepted(transfer, offer) : new Rejected(transfer, offer)));
    }

    private static Refused noSuchTransfer(UUID transfer) {
        return new Refused(Refused.Reason.NO_SUCH_TRANSFER, "There is no transfer %s.".formatted(transfer));
    }

    // ── twice registered ─────────────────────────────────────────────────────────────────────────────────────────────

    UUID claimSame(AnimalId animal, AnimalId other) {
        var claim = desk.around.newId();
        write(Saying.toAll(new SameAnimalClaimed(claim, animal, other)));
        return claim;
    }

    void confirmSame(SameAnimalClaim claim) {
        var own = desk.copies.of(desk.me).ledger;
        if (own.confirmations.containsKey(claim.id())) {
            return; // it was said before
        }
        var claimant = desk.copies.of(claim.animal().node());
        var entry = claimant.ledger.claims.get(claim.id());
        if (entry == null || claimant.ledger.reversals.contains(claim.id())) {
            throw new Refused(Refused.Reason.TOO_LATE, "Its node took the claim back.");
        }
        write(Saying.toAll(new SameAnimalConfirmed(
                claim.id(), new Carried(entry.signed(), claimant.keys().orElseThrow()))));
    }

    void reverseSame(UUID claim) {
        if (!desk.copies.of(desk.me).ledger.reversals.contains(claim)) {
            write(Saying.toAll(new SameAnimalReversed(claim)));
        }
    }

    // ── what follows by itself ───────────────────────────────────────────────────────────────────────────────────────

    void settle() {
        if (fence.isUp() || desk.copies.of(desk.me).ledger.keys().isEmpty()) {
            return;
        }
        var own = desk.copies.of(desk.me).ledger;
        stateKeyInUse();
        for (var transfer : List.copyOf(own.outgoing.keySet())) {
            if (own.isOpen(transfer)) {
                settleGiven(transfer, own.outgoing.get(transfer));
            }
        }
        for (var in : List.copyOf(own.incoming.values())) {
            if (in.accepted() && !own.taken.containsKey(in.offered().transfer())) {
                settleTaken(in);
            }
        }
        receipts().forEach(receipt -> write(Saying.toAll(receipt)));
    }

    private void settleGiven(UUID transfer, Ledger.Outgoing out) {
        var receiver = desk.copies.byNode.get(out.offered().to());
        var answer = receiver == null ? null : receiver.ledger.incoming.get(transfer);
        if (answer == null || !answer.offer().signed().equals(out.offer().signed())) {
            if (!desk.around.now().isBefore(out.offered().expiresAt())) {
                write(Saying.toAll(new Withdrawn(transfer)));
            }
        } else if (answer.accepted() && isHere(out.offered().animal())) {
            write(Saying.toAll(new Released(
                    transfer,
                    new Carried(answer.answer().signed(), receiver.keys().orElseThrow()))));
        } else {
            write(Saying.toAll(new Withdrawn(transfer)));
        }
    }

    private boolean isHere(AnimalId animal) {
        return desk.copies.whereabouts(animal) instanceof Whereabouts.Held held
                && held.node().equals(desk.me);
    }

    private void settleTaken(Ledger.Incoming in) {
        var giver = desk.copies.byNode.get(in.offer().node());
        var release =
                giver == null ? null : giver.ledger.releases.get(in.offered().transfer());
        if (release != null) {
            write(Saying.toAll(new Taken(
                    in.offered().transfer(),
                    new Carried(release.signed(), giver.keys().orElseThrow()))));
        }
    }

    private List<Statement> receipts() {
        var own = desk.copies.of(desk.me).ledger;
        var receipts = new ArrayList<Statement>();
        for (var copy : desk.copies.byNode.values()) {
            if (!copy.node().equals(desk.me)) {
                for (long withdrawal : copy.ledger.withdrawals.keySet()) {
                    if (!own.purged
                            .getOrDefault(copy.node(), Collections.emptySortedSet())
                            .contains(withdrawal)) {
                        receipts.add(new Purged(copy.node(), withdrawal));
                    }
                }
            }
        }
        return receipts;
    }
}
