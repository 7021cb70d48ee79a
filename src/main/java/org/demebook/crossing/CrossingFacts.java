package org.demebook.crossing;

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
import org.demebook.transfer.Kind;
import org.jspecify.annotations.Nullable;

/** What this node's journal says of crossings, and where that puts their animals. */
@ApplicationScoped
class CrossingFacts implements FactBook {
    // ── this node gives ──────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * @param federatedId how the animal is called between nodes
     * @param node id of the other node
     * @param addressee sign-in name there, as the giver wrote it
     * @param toldSeq where the record that goes with it stands in this node's federated journal; 0: not known any more
     */
    record AnimalOfferedElsewhere(
            UUID crossingId,
            UUID animalId,
            String federatedId,
            String node,
            Kind kind,
            UUID fromCollectionId,
            @Words(required = true) String addressee,
            Instant expiresAt,
            @Nullable LocalDate handedOverOn,
            @Words @Nullable String note,
            long toldSeq)
            implements Fact {}

    /** It is with neither side from here on. */
    record AnimalReleasedElsewhere(UUID crossingId) implements Fact {}

    /** @param holderId a collection that nobody acts for */
    record AnimalArrivedElsewhere(UUID crossingId, UUID holderId) implements Fact {}

    // ── this node receives ───────────────────────────────────────────────────────────────────────────────────────────

    /**
     * Of what was told with it nothing is taken over as long as it may come to nothing.
     *
     * @param offeredAt by the giver's clock
     */
    record OfferCameIn(
            UUID crossingId,
            String federatedId,
            String node,
            Kind kind,
            UUID toKeeperId,
            Instant offeredAt,
            Instant expiresAt)
            implements Fact {}

    /** @param record canonical JSON, as the giver's node sent it; it holds words of the giver */
    record CrossingAccepted(
            UUID crossingId,
            UUID intoCollectionId,
            @Words @Nullable String record) implements Fact {}

    /** @param animalId its record in this register, from before or new */
    record AnimalCameIn(UUID crossingId, UUID animalId) implements Fact {}

    // ── this node adopts ─────────────────────────────────────────────────────────────────────────────────────────────

    /**
     * By a coordinator: an animal that this node adopted has a keeper here.
     *
     * @param animalId its record in this register, from before or new
     * @param from id of the node that is gone
     * @param crossingId by which it had been on its way to that node from here; null: by none
     */
    record AdoptedAnimalPlaced(
            UUID animalId,
            String federatedId,
            String from,
            UUID collectionId,
            @Nullable UUID crossingId) implements Fact {}

    // ── both ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    /** By the receiver. */
    record CrossingRefused(UUID crossingId) implements Fact {}

    /** By the giver. */
    record CrossingWithdrawn(
            UUID crossingId, @Words @Nullable String reason) implements Fact {}

    record CrossingExpired(UUID crossingId) implements Fact {}

    @Inject
    Animals animals;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                AnimalOfferedElsewhere.class,
                AnimalReleasedElsewhere.class,
                AnimalArrivedElsewhere.class,
                OfferCameIn.class,
                CrossingAccepted.class,
                AnimalCameIn.class,
                AdoptedAnimalPlaced.class,
                CrossingRefused.class,
                CrossingWithdrawn.class,
                CrossingExpired.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var populationId = forgotten.entry().populationId();
        var left = forgotten.left();
        if (left instanceof AnimalOfferedElsewhere offered) {
            if (forgotten.sharedCollections().contains(offered.fromCollectionId())) {
                return false;
            }
            var crossing = row(populationId, offered.crossingId());
            crossing.addressee = offered.addressee();
            crossing.note = offered.note();
        } else if (left instanceof CrossingAccepted accepted) {
            row(populationId, accepted.crossingId()).record = accepted.record();
        } else if (left instanceof CrossingWithdrawn withdrawn) {
            row(populationId, withdrawn.crossingId()).reason = withdrawn.reason();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof AnimalOfferedElsewhere offered) {
            new Crossing(entry, offered).persist();
        } else if (fact instanceof OfferCameIn came) {
            new Crossing(entry, came).persist();
        } else if (fact instanceof AnimalReleasedElsewhere released) {
            var crossing = moved(entry, released.crossingId(), CrossingState.ON_ITS_WAY);
            animals.release(entry, Objects.requireNonNull(crossing.animalId), crossing.id);
        } else if (fact instanceof AnimalArrivedElsewhere arrived) {
            var crossing = end(entry, arrived.crossingId(), CrossingState.ARRIVED);
            crossing.holderId = arrived.holderId();
            animals.move(
                    entry, Objects.requireNonNull(crossing.animalId), arrived.holderId(), null, arrived.holderId());
        } else if (fact instanceof CrossingAccepted accepted) {
            var crossing = moved(entry, accepted.crossingId(), CrossingState.ACCEPTED);
            crossing.collectionId = accepted.intoCollectionId();
            crossing.record = accepted.record();
            crossing.recordSeq = entry.seq();
        } else if (fact instanceof AnimalCameIn came) {
            var crossing = end(entry, came.crossingId(), CrossingState.ARRIVED);
            crossing.animalId = came.animalId();
            var into = Objects.requireNonNull(crossing.collectionId);
            animals.move(entry, came.animalId(), into, null, into);
        } else if (fact instanceof AdoptedAnimalPlaced placed) {
            if (placed.crossingId() != null) {
                end(entry, placed.crossingId(), CrossingState.ARRIVED);
            }
            animals.move(entry, placed.animalId(), placed.collectionId(), null, placed.collectionId());
        } else if (fact instanceof CrossingRefused refused) {
            end(entry, refused.crossingId(), CrossingState.REFUSED);
        } else if (fact instanceof CrossingWithdrawn withdrawn) {
            end(entry, withdrawn.crossingId(), CrossingState.WITHDRAWN).reason = withdrawn.reason();
        } else if (fact instanceof CrossingExpired expired) {
            end(entry, expired.crossingId(), CrossingState.EXPIRED);
        }
        // the animal refers to it, and the next offer of the same animal has to find this one ended
        Crossing.flush();
    }

    private static Crossing moved(Entry entry, UUID crossingId, CrossingState state) {
        var crossing = touched(entry, crossingId, state);
        crossing.movedAt = entry.recordedAt();
        return crossing;
    }

    private static Crossing end(Entry entry, UUID crossingId, CrossingState state) {
        var crossing = touched(entry, crossingId, state);
        crossing.endedAt = entry.recordedAt();
        return crossing;
    }

    private static Crossing touched(Entry entry, UUID crossingId, CrossingState state) {
        var crossing = row(entry.populationId(), crossingId);
        crossing.state = state;
        crossing.revision = entry.seq();
        return crossing;
    }

    private static Crossing row(UUID populationId, UUID crossingId) {
        return Objects.requireNonNull(Crossing.of(populationId, crossingId));
    }
}
