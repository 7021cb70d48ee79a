package org.demebook.transfer;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A transfer, as its last fact left it. */
@Entity
@Table(name = "transfer")
@IdClass(Transfer.Key.class)
class Transfer extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID animalId;
    Kind kind;
    UUID fromCollectionId;

    @Nullable
    UUID toKeeperId;

    @Nullable
    UUID toCollectionId;

    State state;
    UUID offeredBy;
    Instant offeredAt;
    Instant expiresAt;

    @Nullable
    LocalDate handedOverOn;

    @Nullable
    String note;

    @Nullable
    Instant endedAt;

    @Nullable
    String reason;

    long revision;

    protected Transfer() {}

    Transfer(Entry entry, TransferFacts.TransferOffered offered) {
        this(entry, offered.transferId(), offered.animalId(), offered.kind(), offered.fromCollectionId());
        this.state = State.OFFERED;
        this.toKeeperId = offered.toKeeperId();
        this.expiresAt = offered.expiresAt();
        this.handedOverOn = offered.handedOverOn();
        this.note = offered.note();
    }

    Transfer(Entry entry, TransferFacts.AnimalHandedOut handedOut) {
        this(entry, handedOut.transferId(), handedOut.animalId(), handedOut.kind(), handedOut.fromCollectionId());
        this.state = State.HANDED_OUT;
        this.expiresAt = handedOut.expiresAt();
        this.handedOverOn = handedOut.handedOverOn();
        this.note = handedOut.note();
    }

    private Transfer(Entry entry, UUID id, UUID animalId, Kind kind, UUID fromCollectionId) {
        this.populationId = entry.populationId();
        this.id = id;
        this.animalId = animalId;
        this.kind = kind;
        this.fromCollectionId = fromCollectionId;
        this.offeredBy = entry.actorId();
        this.offeredAt = entry.recordedAt();
        this.revision = entry.seq();
    }

    static Transfer of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** The transfer of an animal that has not come to its end. */
    static Optional<Transfer> openOf(UUID populationId, UUID animalId) {
        return find(
                        "populationId = ?1 and animalId = ?2 and state in ?3",
                        populationId,
                        animalId,
                        List.of(State.OFFERED, State.HANDED_OUT))
                .firstResultOptional();
    }

    /** Those of an animal that are open or have moved it, with a keeper on one of their sides; one query. */
    static List<Transfer> ofNumberAndSide(UUID populationId, String number, UUID keeperId, Set<UUID> collectionIds) {
        return list(
                "populationId = ?1 and animalId in (select a.id from Animal a where a.populationId = ?1 and a.number = ?2)"
                        + " and state in ?3 and (toKeeperId = ?4 or fromCollectionId in ?5 or toCollectionId in ?5)",
                populationId,
                number,
                List.of(State.OFFERED, State.HANDED_OUT, State.ACCEPTED, State.CLAIMED),
                keeperId,
                collectionIds);
    }

    /** The same of an animal, whoever is on their sides, the latest first. */
    static List<Transfer> openOrDone(UUID populationId, UUID animalId) {
        return list(
                "populationId = ?1 and animalId = ?2 and state in ?3 order by id desc",
                populationId,
                animalId,
                List.of(State.OFFERED, State.HANDED_OUT, State.ACCEPTED, State.CLAIMED));
    }

    /**
     * The transfer that brought an animal where it is now, if it was handed over after a day.
     *
     * @param since when it came to the giver otherwise; those before have nothing to do with where it is
     */
    static Optional<Transfer> lastHandedOverAfter(UUID populationId, UUID animalId, LocalDate day, Instant since) {
        return Transfer.<Transfer>find(
                        "populationId = ?1 and animalId = ?2 and state in ?3 and handedOverOn is not null"
                                + " and offeredAt >= ?4 order by handedOverOn desc",
                        populationId,
                        animalId,
                        List.of(State.ACCEPTED, State.CLAIMED),
                        since)
                .firstResultOptional()
                .filter(transfer -> transfer.handedOverOn.isAfter(day));
    }

    /** Offers of a population whose time is over and whose end has not been written down. */
    static List<Transfer> due(UUID populationId, Instant now) {
        return list(
                "populationId = ?1 and state = ?2 and expiresAt <= ?3 order by id", populationId, State.OFFERED, now);
    }

    /** Populations with such offers. */
    static List<UUID> populationsWithDue(Instant now) {
        return getEntityManager()
                .createQuery(
                        "select distinct t.populationId from Transfer t where t.state = :offered and t.expiresAt <= :now",
                        UUID.class)
                .setParameter("offered", State.OFFERED)
                .setParameter("now", now)
                .getResultList();
    }

    boolean due(Instant now) {
        return state == State.OFFERED && !now.isBefore(expiresAt);
    }
}
