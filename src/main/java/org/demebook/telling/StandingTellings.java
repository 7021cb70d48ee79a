package org.demebook.telling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.UUID;
import org.demebook.federation.Consequence;
import org.demebook.federation.Federations;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Statement.AncestryTold;
import org.demebook.protocol.Statement.HoldingTold;
import org.demebook.protocol.Statement.TellingsWithdrawn;
import org.demebook.wall.WholeRegister;

/** Which entries of this node's journal tell of animals and stand, as the journal grows, or comes back after a restore. */
@ApplicationScoped
class StandingTellings implements Consequence {
    @Inject
    Federations federations;

    @WholeRegister
    @Transactional
    List<TellingRow> of(UUID population) {
        return TellingRow.standing(population);
    }

    /** By what other nodes tell a collection from others. */
    @WholeRegister
    @Transactional
    String custodian(UUID population, UUID collectionId) {
        return CustodianRow.pseudonym(population, collectionId);
    }

    /** In the transaction that says it. */
    void said(UUID population, long seq, Telling telling) {
        new TellingRow(population, seq, telling.digest(), telling.readers()).persist();
    }

    @Override
    public void follow(UUID population, Participant participant, List<Entry> entries) {
        var me = federations.nodeId();
        for (var entry : entries) {
            if (entry.node().equals(me)) {
                follow(population, entry.seq(), entry.says());
            }
        }
    }

    private static void follow(UUID population, long seq, Statement says) {
        if (says instanceof TellingsWithdrawn withdrawal) {
            TellingRow.withdrawn(population, withdrawal.entries());
        } else if ((says instanceof AncestryTold || says instanceof HoldingTold)
                && !TellingRow.isKnown(population, seq)) {
            // own entries that came back: to whom they were told nobody here knows any more, so they are told anew
            new TellingRow(population, seq, Telling.digest(says), null).persist();
        }
    }
}
