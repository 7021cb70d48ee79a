package org.demebook.care;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** To which day a task was moved, and how often; it stays when the move is taken back, so that the count goes on. */
@Entity
@Table(name = "care_postponement")
@IdClass(Postponement.Key.class)
class Postponement extends PanacheEntityBase {
    record Key(UUID populationId, UUID collectionId, String key) {}

    @Id
    UUID populationId;

    @Id
    UUID collectionId;

    @Id
    String key;

    @Nullable
    LocalDate movedTo;

    int timesMoved;

    protected Postponement() {}

    Postponement(UUID populationId, UUID collectionId, String key) {
        this.populationId = populationId;
        this.collectionId = collectionId;
        this.key = key;
    }

    static @Nullable Postponement of(UUID populationId, UUID collectionId, String key) {
        return findById(new Key(populationId, collectionId, key));
    }

    static List<Postponement> ofKeys(UUID populationId, Collection<UUID> collectionIds, Collection<String> keys) {
        return list("populationId = ?1 and collectionId in ?2 and key in ?3", populationId, collectionIds, keys);
    }
}
