package org.demebook.transfer;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.demebook.registry.Animals;
import org.jspecify.annotations.Nullable;

/** What the journal says of transfers, and where that puts their animals. No fact holds a claim code or its hash. */
@ApplicationScoped
class TransferFacts implements FactBook {
    record TransferOffered(
            UUID transferId,
            UUID animalId,
            Kind kind,
            UUID fromCollectionId,
            UUID toKeeperId,
            Instant expiresAt,
            @Nullable LocalDate handedOverOn,
            @Words @Nullable String note)
            implements Fact {}

    /** It is with somebody who does not take part yet. */
    record AnimalHandedOut(
            UUID transferId,
            UUID animalId,
            Kind kind,
            UUID fromCollectionId,
            Instant expiresAt,
            @Nullable LocalDate handedOverOn,
            @Words @Nullable String note)
            implements Fact {
        @Override
        public @Nullable String validFrom() {
            return handedOverOn == null ? null : handedOverOn.toString();
        }
    }

    record TransferAccepted(
            UUID transferId, UUID toCollectionId, @Nullable LocalDate handedOverOn) implements Fact {
        @Override
        public @Nullable String validFrom() {
            return handedOverOn == null ? null : handedOverOn.toString();
        }
    }

    record TransferRefused(UUID transferId, @Words @Nullable String reason) implements Fact {}

    record TransferWithdrawn(
            UUID transferId, @Words @Nullable String reason) implements Fact {}

    record TransferExpired(UUID transferId) implements Fact {}

    record ClaimCodeRenewed(UUID transferId, Instant expiresAt) implements Fact {}

    record TransferClaimed(UUID transferId, UUID toKeeperId, UUID toCollectionId) implements Fact {}

    @Inject
    Animals animals;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                TransferOffered.class,
                AnimalHandedOut.class,
                TransferAccepted.class,
                TransferRefused.class,
                TransferWithdrawn.class,
                TransferExpired.class,
                ClaimCodeRenewed.class,
                TransferClaimed.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var populationId = forgotten.entry().populationId();
        var left = forgotten.left();
        var shared = forgotten.sharedCollections();
        if (left instanceof TransferOffered offered) {
            return !shared.contains(offered.fromCollectionId())
                    && say(Transfer.of(populationId, offered.transferId()), offered.note());
        } else if (left instanceof AnimalHandedOut handedOut) {
            return !shared.contains(handedOut.fromCollectionId())
                    && say(Transfer.of(populationId, handedOut.transferId()), handedOut.note());
        } else if (left instanceof TransferRefused refused) {
            Transfer.of(populationId, refused.transferId()).reason = refused.reason();
        } else if (left instanceof TransferWithdrawn withdrawn) {
            var transfer = Transfer.of(populationId, withdrawn.transferId());
            if (shared.contains(transfer.fromCollectionId)) {
                return false;
            }
            transfer.reason = withdrawn.reason();
        }
        return true;
    }

    private static boolean say(Transfer transfer, @Nullable String note) {
        transfer.note = note;
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof TransferOffered offered) {
            new Transfer(entry, offered).persist();
        } else if (fact instanceof AnimalHandedOut handedOut) {
            new Transfer(entry, handedOut).persistAndFlush(); // the animal refers to it
            var owner = handedOut.fromCollectionId();
            animals.move(entry, handedOut.animalId(), null, handedOut.transferId(), owner);
        } else if (fact instanceof TransferAccepted accepted) {
            var transfer = end(entry, accepted.transferId(), State.ACCEPTED, null);
            transfer.handedOverOn = accepted.handedOverOn();
            receive(entry, transfer, accepted.toCollectionId());
        } else if (fact instanceof TransferRefused refused) {
            end(entry, refused.transferId(), State.REFUSED, refused.reason());
        } else if (fact instanceof TransferWithdrawn withdrawn) {
            takeBack(entry, end(entry, withdrawn.transferId(), State.WITHDRAWN, withdrawn.reason()));
        } else if (fact instanceof TransferExpired expired) {
            end(entry, expired.transferId(), State.EXPIRED, null);
        } else if (fact instanceof ClaimCodeRenewed renewed) {
            var transfer = touched(entry, renewed.transferId());
            transfer.expiresAt = renewed.expiresAt();
        } else if (fact instanceof TransferClaimed claimed) {
            var transfer = end(entry, claimed.transferId(), State.CLAIMED, null);
            transfer.toKeeperId = claimed.toKeeperId();
            receive(entry, transfer, claimed.toCollectionId());
        }
        // the next offer of the same animal has to find this one ended
        Transfer.flush();
    }

    private void receive(Entry entry, Transfer transfer, UUID toCollectionId) {
        transfer.toCollectionId = toCollectionId;
        var owner = transfer.kind.changesOwner() ? toCollectionId : ownerOf(transfer);
        animals.move(entry, transfer.animalId, toCollectionId, null, owner);
    }

    /** An animal that was only offered never left; one that was handed out comes back. */
    private void takeBack(Entry entry, Transfer transfer) {
        var present = animals.custody(transfer.populationId, transfer.animalId);
        if (transfer.id.equals(present.transferId())) {
            animals.move(entry, transfer.animalId, transfer.fromCollectionId, null, ownerOf(transfer));
        }
    }

    private UUID ownerOf(Transfer transfer) {
        return Objects.requireNonNull(
                animals.custody(transfer.populationId, transfer.animalId).ownerCollectionId());
    }

    private static Transfer end(Entry entry, UUID transferId, State state, @Nullable String reason) {
        var transfer = touched(entry, transferId);
        transfer.state = state;
        transfer.reason = reason;
        transfer.endedAt = entry.recordedAt();
        return transfer;
    }

    private static Transfer touched(Entry entry, UUID transferId) {
        var transfer = Transfer.of(entry.populationId(), transferId);
        transfer.revision = entry.seq();
        return transfer;
    }
}
