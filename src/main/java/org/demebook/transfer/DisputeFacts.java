package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.demebook.registry.Animals;
import org.jspecify.annotations.Nullable;

/** What the journal says of disputes over where an animal is, and where their ends put it. */
@ApplicationScoped
class DisputeFacts implements FactBook {
    /**
     * It was reported in a collection, and the register has it elsewhere.
     *
     * @param transferId the transfer that does not agree
     * @param reportedOwnerCollectionId whose it is if it is where it was reported
     * @param registeredCollectionId where the register has it; the giver's collection while it is handed out
     */
    record AnimalDisputed(
            UUID disputeId,
            UUID animalId,
            UUID transferId,
            UUID reportedCollectionId,
            UUID reportedOwnerCollectionId,
            UUID registeredCollectionId,
            UUID registeredOwnerCollectionId,
            LocalDate seenOn,
            @Words @Nullable String note)
            implements Fact {
        @Override
        public String validFrom() {
            return seenOn.toString();
        }
    }

    record DisputeWithdrawn(UUID disputeId, @Words @Nullable String reason) implements Fact {}

    record DisputeConceded(UUID disputeId, @Words @Nullable String reason) implements Fact {}

    record DisputeSettled(
            UUID disputeId,
            Outcome outcome,
            @Words(required = true) String reason) implements Fact {}

    @Inject
    Animals animals;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(AnimalDisputed.class, DisputeWithdrawn.class, DisputeConceded.class, DisputeSettled.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var populationId = forgotten.entry().populationId();
        var left = forgotten.left();
        if (left instanceof AnimalDisputed disputed) {
            if (forgotten.sharedCollections().contains(disputed.reportedCollectionId())) {
                return false;
            }
            Dispute.of(populationId, disputed.disputeId()).note = disputed.note();
        } else if (left instanceof DisputeWithdrawn withdrawn) {
            Dispute.of(populationId, withdrawn.disputeId()).reason = withdrawn.reason();
        } else if (left instanceof DisputeConceded conceded) {
            Dispute.of(populationId, conceded.disputeId()).reason = conceded.reason();
        } else if (left instanceof DisputeSettled settled) {
            Dispute.of(populationId, settled.disputeId()).reason = settled.reason();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof AnimalDisputed disputed) {
            new Dispute(entry, disputed).persistAndFlush(); // the animal refers to it
            animals.dispute(entry, disputed.animalId(), disputed.disputeId());
        } else if (fact instanceof DisputeWithdrawn withdrawn) {
            end(entry, withdrawn.disputeId(), DisputeState.WITHDRAWN, withdrawn.reason());
        } else if (fact instanceof DisputeConceded conceded) {
            end(entry, conceded.disputeId(), DisputeState.CONCEDED, conceded.reason());
        } else if (fact instanceof DisputeSettled settled) {
            end(entry, settled.disputeId(), settled.outcome().state(), settled.reason());
        }
        Dispute.flush();
    }

    private void end(Entry entry, UUID disputeId, DisputeState state, @Nullable String reason) {
        var dispute = Dispute.of(entry.populationId(), disputeId);
        dispute.state = state;
        dispute.reason = reason;
        dispute.endedAt = entry.recordedAt();
        dispute.revision = entry.seq();
        if (state.movedIt()) {
            animals.move(
                    entry, dispute.animalId, dispute.reportedCollectionId, null, dispute.reportedOwnerCollectionId);
        }
        animals.dispute(entry, dispute.animalId, null);
    }
}
