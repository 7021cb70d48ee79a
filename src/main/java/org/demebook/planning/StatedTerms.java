package org.demebook.planning;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** The terms that hold for a collection. */
@Entity
@Table(name = "pairing_terms")
@IdClass(StatedTerms.Key.class)
class StatedTerms extends PanacheEntityBase {
    record Key(UUID populationId, UUID collectionId) {}

    @Id
    UUID populationId;

    @Id
    UUID collectionId;

    @Nullable
    Integer littersAtMost;

    @Nullable
    Integer malesAwayAtMost;

    @Nullable
    Integer farthestKilometres;

    @Nullable
    Boolean mayCrossBorders;

    @Nullable
    List<String> exchangeWith;

    @Nullable
    String notes;

    Instant statedAt;
    long revision;

    protected StatedTerms() {}

    static @Nullable StatedTerms of(UUID populationId, UUID collectionId) {
        return findById(new Key(populationId, collectionId));
    }

    static List<StatedTerms> of(UUID populationId) {
        return list("populationId = ?1 order by collectionId", populationId);
    }

    static void state(Entry entry, UUID collectionId, PairingTerms terms) {
        var present = of(entry.populationId(), collectionId);
        var row = present == null ? new StatedTerms() : present;
        row.populationId = entry.populationId();
        row.collectionId = collectionId;
        row.littersAtMost = terms.littersAtMost();
        row.malesAwayAtMost = terms.malesAwayAtMost();
        row.farthestKilometres = terms.farthestKilometres();
        row.mayCrossBorders = terms.mayCrossBorders();
        row.exchangeWith = terms.exchangeWith();
        row.notes = terms.notes();
        row.statedAt = entry.recordedAt();
        row.revision = entry.seq();
        row.persist();
    }

    static void withdraw(UUID populationId, UUID collectionId) {
        deleteById(new Key(populationId, collectionId));
    }

    /** Puts other notes in the place of those that were taken out, where they still stand. */
    static void forget(Entry entry, UUID collectionId, @Nullable String notes) {
        var present = of(entry.populationId(), collectionId);
        if (present != null && present.revision == entry.seq()) {
            present.notes = notes;
        }
    }

    /** Those of collections that nobody acts for any more. */
    static void withdrawOfNobody(UUID populationId) {
        getEntityManager().flush();
        getEntityManager().createNativeQuery("""
                        delete from demebook.pairing_terms t where t.population_id = ?1 and not exists (
                            select 1 from demebook.collection_keeper k
                            where k.population_id = t.population_id and k.collection_id = t.collection_id)
                        """).setParameter(1, populationId).executeUpdate();
    }

    PairingTerms terms() {
        return new PairingTerms(
                littersAtMost,
                malesAwayAtMost,
                farthestKilometres,
                mayCrossBorders,
                exchangeWith == null ? null : List.copyOf(exchangeWith),
                notes);
    }
}
