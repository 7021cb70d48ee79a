package org.demebook.breeding;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A male and a female together, as the last facts left it. */
@Entity
@Table(name = "introduction")
@IdClass(Introduction.Key.class)
class Introduction extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID femaleId;
    UUID maleId;
    LocalDate fromOn;

    @Nullable
    LocalDate untilOn;

    UUID collectionId;

    @Nullable
    String notes;

    /** The entry that says the notes. */
    @Nullable
    Long notesSeq;

    boolean withdrawn;
    UUID recordedBy;
    long revision;

    protected Introduction() {}

    Introduction(Entry entry, BreedingFacts.IntroductionOpened opened) {
        this.populationId = entry.populationId();
        this.id = opened.introductionId();
        this.femaleId = opened.femaleId();
        this.maleId = opened.maleId();
        this.fromOn = opened.fromOn();
        this.untilOn = opened.untilOn();
        this.collectionId = opened.collectionId();
        this.notes = opened.notes();
        this.notesSeq = entry.seq();
        this.recordedBy = entry.actorId();
        this.revision = entry.seq();
    }

    static Introduction of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** Those that took place, the first ones first. */
    static List<Introduction> ofFemales(UUID populationId, Collection<UUID> femaleIds) {
        return femaleIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and femaleId in ?2 and withdrawn = false order by fromOn, id",
                        populationId,
                        femaleIds);
    }

    boolean overlaps(LocalDate from, @Nullable LocalDate until) {
        return (until == null || !fromOn.isAfter(until)) && (untilOn == null || !untilOn.isBefore(from));
    }

    IntroductionView view(Map<UUID, String> numbers) {
        return new IntroductionView(
                id, numbers.get(femaleId), numbers.get(maleId), fromOn, untilOn, withdrawn, notes, revision);
    }
}
