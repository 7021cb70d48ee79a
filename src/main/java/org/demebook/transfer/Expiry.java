package org.demebook.transfer;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.demebook.transfer.TransferFacts.TransferExpired;
import org.demebook.wall.Wall;

/**
 * Writes down that offers have run out, in the name of the giver. Until then they are refused by the clock alone. Claim
 * codes run out without a fact: the animal stays where it is.
 */
@ApplicationScoped
class Expiry {
    @Inject
    Journal journal;

    @Inject
    Days days;

    @Inject
    Wall wall;

    /** One population a transaction, so that a long list keeps nobody waiting. */
    @Scheduled(every = "5m", delayed = "1m", concurrentExecution = ConcurrentExecution.SKIP)
    void expireDue() {
        var now = days.now();
        var populations = QuarkusTransaction.requiringNew().call(() -> {
            wall.openForWriting();
            return Transfer.populationsWithDue(now);
        });
        for (var populationId : populations) {
            QuarkusTransaction.requiringNew().run(() -> expireIn(populationId));
        }
    }

    private void expireIn(UUID populationId) {
        journal.open(populationId);
        for (var transfer : Transfer.due(populationId, days.now())) {
            journal.record(populationId, transfer.offeredBy, new TransferExpired(transfer.id));
        }
    }
}
