package org.demebook.planning;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;

/** The last word on whether an animal is to breed. */
@Entity
@Table(name = "breeding_hold")
@IdClass(BreedingHold.Key.class)
class BreedingHold extends PanacheEntityBase {
    record Key(UUID populationId, UUID animalId) {}

    @Id
    UUID populationId;

    @Id
    UUID animalId;

    boolean onHold;
    String reason;
    UUID statedBy;
    Instant statedAt;
    long revision;

    protected BreedingHold() {}

    private BreedingHold(UUID populationId, UUID animalId) {
        this.populationId = populationId;
        this.animalId = animalId;
    }

    static void say(Entry entry, UUID animalId, boolean onHold, String reason) {
        BreedingHold present = findById(new Key(entry.populationId(), animalId));
        var word = present == null ? new BreedingHold(entry.populationId(), animalId) : present;
        word.onHold = onHold;
        word.reason = reason;
        word.statedBy = entry.actorId();
        word.statedAt = entry.recordedAt();
        word.revision = entry.seq();
        word.persist();
    }

    /** Puts another reason in the place of one that was taken out, where it still stands. */
    static void forget(Entry entry, UUID animalId, String reason) {
        BreedingHold present = findById(new Key(entry.populationId(), animalId));
        if (present != null && present.revision == entry.seq()) {
            present.reason = reason;
        }
    }

    /** Of all animals, the earliest word first. */
    static List<BreedingHold> of(UUID populationId) {
        return list("populationId = ?1 order by revision", populationId);
    }

    /** The last word on one animal, whichever of its records it was said of. */
    static Optional<BreedingHold> last(UUID populationId, Collection<UUID> recordIds) {
        return find("populationId = ?1 and animalId in ?2 order by revision desc", populationId, recordIds)
                .firstResultOptional();
    }
}
