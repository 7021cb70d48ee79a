package org.demebook.transfer;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A dispute over where an animal is, as its last fact left it. */
@Entity
@Table(name = "dispute")
@IdClass(Dispute.Key.class)
class Dispute extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    UUID transferId;
    UUID reportedBy;
    Instant reportedAt;
    UUID reportedCollectionId;
    UUID reportedOwnerCollectionId;
    UUID registeredCollectionId;
    UUID registeredOwnerCollectionId;
    LocalDate seenOn;

    @Nullable
    String note;

    DisputeState state;

    @Nullable
    Instant endedAt;

    @Nullable
    String reason;

    long revision;

    protected Dispute() {}

    Dispute(Entry entry, DisputeFacts.AnimalDisputed disputed) {
        this.populationId = entry.populationId();
        this.id = disputed.disputeId();
        this.animalId = disputed.animalId();
        this.transferId = disputed.transferId();
        this.reportedBy = entry.actorId();
        this.reportedAt = entry.recordedAt();
        this.reportedCollectionId = disputed.reportedCollectionId();
        this.reportedOwnerCollectionId = disputed.reportedOwnerCollectionId();
        this.registeredCollectionId = disputed.registeredCollectionId();
        this.registeredOwnerCollectionId = disputed.registeredOwnerCollectionId();
        this.seenOn = disputed.seenOn();
        this.note = disputed.note();
        this.state = DisputeState.OPEN;
        this.revision = entry.seq();
    }

    static Dispute of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** The latest first. */
    static List<Dispute> about(UUID populationId, UUID animalId) {
        return list("populationId = ?1 and animalId = ?2 order by id desc", populationId, animalId);
    }

    /** The open ones that put some transfers in dispute. */
    static List<Dispute> openOver(UUID populationId, Collection<UUID> transferIds) {
        return transferIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and transferId in ?2 and state = ?3",
                        populationId,
                        transferIds,
                        DisputeState.OPEN);
    }

    /** Those that ended with their animals where they were reported. */
    static List<Dispute> thatMoved(UUID populationId, Collection<UUID> animalIds) {
        return animalIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and animalId in ?2 and state in ?3 order by endedAt desc",
                        populationId,
                        animalIds,
                        List.of(DisputeState.CONCEDED, DisputeState.UPHELD));
    }

    static Optional<Dispute> lastThatMoved(UUID populationId, UUID animalId) {
        return thatMoved(populationId, List.of(animalId)).stream().findFirst();
    }
}
