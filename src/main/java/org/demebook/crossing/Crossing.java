package org.demebook.crossing;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.transfer.Kind;
import org.jspecify.annotations.Nullable;

/** One side of a crossing, as its last fact left it. Its id is that of the hand-over between the nodes. */
@Entity
@Table(name = "crossing")
@IdClass(Crossing.Key.class)
class Crossing extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    static final List<CrossingState> OPEN =
            List.of(CrossingState.OFFERED, CrossingState.ACCEPTED, CrossingState.ON_ITS_WAY);

    @Id
    UUID populationId;

    @Id
    UUID id;

    /** Whether this node gives it. */
    boolean given;

    @Nullable
    UUID animalId;

    String federatedId;
    String node;
    Kind kind;
    CrossingState state;

    /** From which it was offered; or into which it was accepted. */
    @Nullable
    UUID collectionId;

    /** Where the animal stands here since it arrived elsewhere. */
    @Nullable
    UUID holderId;

    /** Who offered it here; or to whom it is offered here. */
    UUID keeperId;

    @Nullable
    String addressee;

    @Nullable
    LocalDate handedOverOn;

    @Nullable
    String note;

    /** As the giver's node sent it; there once it was accepted. */
    @Nullable
    String record;

    /** The entry of this node's own journal that holds the record. */
    @Nullable
    Long recordSeq;

    /** Where the record stands in this node's federated journal; at the giver's. */
    @Nullable
    Long toldSeq;

    Instant offeredAt;
    Instant expiresAt;

    @Nullable
    Instant movedAt;

    @Nullable
    Instant endedAt;

    @Nullable
    String reason;

    long revision;

    protected Crossing() {}

    Crossing(Entry entry, CrossingFacts.AnimalOfferedElsewhere offered) {
        this(entry, offered.crossingId(), offered.federatedId(), offered.node(), offered.kind(), offered.expiresAt());
        this.given = true;
        this.animalId = offered.animalId();
        this.collectionId = offered.fromCollectionId();
        this.keeperId = entry.actorId();
        this.addressee = offered.addressee();
        this.handedOverOn = offered.handedOverOn();
        this.note = offered.note();
        this.toldSeq = offered.toldSeq();
        this.offeredAt = entry.recordedAt();
    }

    Crossing(Entry entry, CrossingFacts.OfferCameIn came) {
        this(entry, came.crossingId(), came.federatedId(), came.node(), came.kind(), came.expiresAt());
        this.keeperId = came.toKeeperId();
        this.offeredAt = came.offeredAt();
    }

    private Crossing(Entry entry, UUID id, String federatedId, String node, Kind kind, Instant expiresAt) {
        this.populationId = entry.populationId();
        this.id = id;
        this.federatedId = federatedId;
        this.node = node;
        this.kind = kind;
        this.state = CrossingState.OFFERED;
        this.expiresAt = expiresAt;
        this.revision = entry.seq();
    }

    /** It was given, and is past, and the other node never took it: that one was gone, and this node adopted the animal. */
    boolean arrivedNowhere() {
        return given && state == CrossingState.ARRIVED && holderId == null;
    }

    static @Nullable Crossing of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** The last one by which this node gave, or gives, an animal: unless it came to nothing. */
    static Optional<Crossing> lastGiven(UUID populationId, UUID animalId) {
        return find(
                        "populationId = ?1 and animalId = ?2 and given and state in ?3 order by revision desc",
                        populationId,
                        animalId,
                        List.of(CrossingState.OFFERED, CrossingState.ON_ITS_WAY, CrossingState.ARRIVED))
                .firstResultOptional();
    }
}
