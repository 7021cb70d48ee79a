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
import org.demebook.care.CareFacts.CareTaskDone;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A task that was done, with its words: its source may not give it any more. */
@Entity
@Table(name = "care_completion")
@IdClass(Completion.Key.class)
class Completion extends PanacheEntityBase {
    record Key(UUID populationId, UUID collectionId, String key) {}

    @Id
    UUID populationId;

    @Id
    UUID collectionId;

    @Id
    String key;

    CareKind kind;

    @Nullable
    UUID animalId;

    @Nullable
    UUID litterId;

    LocalDate dueOn;
    String what;
    String why;
    LocalDate doneOn;
    UUID doneBy;
    long revision;

    /** The entry that says what and why. */
    @Nullable
    Long wordsSeq;

    protected Completion() {}

    Completion(Entry entry, CareTaskDone done) {
        this.populationId = entry.populationId();
        this.collectionId = done.collectionId();
        this.key = done.key();
        this.kind = done.kind();
        this.animalId = done.animalId();
        this.litterId = done.litterId();
        this.dueOn = done.dueOn();
        this.what = done.what();
        this.why = done.why();
        this.doneOn = done.on();
        this.doneBy = entry.actorId();
        this.revision = entry.seq();
        this.wordsSeq = entry.seq();
    }

    static @Nullable Completion of(UUID populationId, UUID collectionId, String key) {
        return findById(new Key(populationId, collectionId, key));
    }

    static List<Completion> ofKeys(UUID populationId, Collection<UUID> collectionIds, Collection<String> keys) {
        return list("populationId = ?1 and collectionId in ?2 and key in ?3", populationId, collectionIds, keys);
    }

    static List<Completion> since(UUID populationId, Collection<UUID> collectionIds, LocalDate doneOn) {
        return list("populationId = ?1 and collectionId in ?2 and doneOn >= ?3", populationId, collectionIds, doneOn);
    }

    CareTask task() {
        return new CareTask(key, kind, animalId, litterId, dueOn, null, null, what, why);
    }
}
