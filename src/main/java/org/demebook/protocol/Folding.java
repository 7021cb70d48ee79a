package org.demebook.protocol;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.demebook.protocol.Ledger.Incoming;
import org.demebook.protocol.Ledger.Outgoing;
import org.demebook.protocol.Statement.Accepted;
import org.demebook.protocol.Statement.Adopted;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.AnimalEntered;
import org.demebook.protocol.Statement.CharterStated;
import org.demebook.protocol.Statement.GoneStated;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.Offered;
import org.demebook.protocol.Statement.Purged;
import org.demebook.protocol.Statement.RecordSent;
import org.demebook.protocol.Statement.Rejected;
import org.demebook.protocol.Statement.Released;
import org.demebook.protocol.Statement.SameAnimalClaimed;
import org.demebook.protocol.Statement.SameAnimalConfirmed;
import org.demebook.protocol.Statement.SameAnimalReversed;
import org.demebook.protocol.Statement.Taken;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.protocol.Statement.Withdrawn;

/** What an entry does to its {@link Ledger}. Decides nothing: whether it has an effect was asked before. */
record Folding(Ledger ledger, Carrying carrying) {

    void fold(Entry entry) {
        var says = entry.says();
        if (says instanceof CharterStated stated) {
            ledger.charter = Optional.of(stated.charter());
            ledger.charterEntry = Optional.of(entry);
        } else if (says instanceof AnimalEntered entered) {
            begin(new Stint(entered.animal(), Optional.empty(), Optional.empty()));
        } else if (says instanceof Offered offered) {
            var stint = ledger.present(offered.animal()).orElseThrow();
            stint.leaving = Optional.of(offered.transfer());
            ledger.outgoing.put(offered.transfer(), new Outgoing(entry, offered, stint));
        } else if (says instanceof Withdrawn withdrawn) {
            ledger.outgoing.get(withdrawn.transfer()).stint().leaving = Optional.empty();
            ledger.ended.put(withdrawn.transfer(), entry.seq());
        } else if (says instanceof Accepted accepted) {
            answer(entry, accepted.offer(), true);
        } else if (says instanceof Rejected rejected) {
            answer(entry, rejected.offer(), false);
        } else if (says instanceof Released released) {
            var stint = ledger.outgoing.get(released.transfer()).stint();
            stint.released = true;
            stint.releasedSeq = entry.seq();
            ledger.releases.put(released.transfer(), entry);
        } else if (says instanceof Taken taken) {
            var in = ledger.incoming.get(taken.transfer());
            begin(new Stint(in.offered().animal(), Optional.of(taken.transfer()), Optional.empty()));
            ledger.taken.put(taken.transfer(), entry.seq());
        } else if (says instanceof Adopted adopted) {
            begin(new Stint(adopted.animal(), Optional.empty(), Optional.of(adopted)));
            ledger.adoptions.add(adopted);
        } else if (says instanceof GoneStated stated) {
            ledger.gone.put(stated.gone(), entry);
        } else if (says instanceof AncestryTold told) {
            ledger.ancestry
                    .computeIfAbsent(told.animal(), animal -> new TreeMap<>())
                    .put(entry.seq(), told);
            ledger.restricted.put(entry.seq(), told);
        } else if (says instanceof HoldingTold told) {
            ledger.holdings
                    .computeIfAbsent(told.animal(), animal -> new TreeMap<>())
                    .put(entry.seq(), told);
            ledger.restricted.put(entry.seq(), told);
        } else if (says instanceof RecordSent sent) {
            ledger.records.put(sent.transfer(), sent);
            ledger.restricted.put(entry.seq(), sent);
        } else if (says instanceof TellingsWithdrawn withdrawal) {
            ledger.withdrawals.put(entry.seq(), withdrawal.entries());
            ledger.withdrawn.addAll(withdrawal.entries());
            withdrawal.entries().forEach(ledger::forget);
        } else if (says instanceof Purged purged) {
            ledger.purged
                    .computeIfAbsent(purged.node(), node -> new TreeSet<>())
                    .add(purged.withdrawal());
        } else if (says instanceof SameAnimalClaimed claimed) {
            ledger.claims.put(claimed.claim(), entry);
        } else if (says instanceof SameAnimalConfirmed confirmed) {
            ledger.confirmations.put(confirmed.claim(), entry);
        } else if (says instanceof SameAnimalReversed reversed) {
            ledger.reversals.add(reversed.claim());
        }
    }

    private void begin(Stint stint) {
        ledger.stints
                .computeIfAbsent(stint.animal, animal -> new ArrayList<>(1))
                .add(stint);
    }

    private void answer(Entry entry, Statement.Carried carried, boolean accepted) {
        var offer = carrying.read(carried);
        var offered = (Offered) offer.says();
        ledger.incoming.put(offered.transfer(), new Incoming(offer, offered, entry, accepted));
    }

    /** Of all that was withdrawn at once, what is of a kind that can be. */
    static List<Long> erasable(Ledger ledger, TellingsWithdrawn withdrawal) {
        return withdrawal.entries().stream()
                .filter(ledger.restricted::containsKey)
                .toList();
    }
}
