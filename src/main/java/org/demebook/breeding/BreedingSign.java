package org.demebook.breeding;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.gestation.HowKnown;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** Something seen of a female's cycle, as the last facts left it. */
@Entity
@Table(name = "breeding_sign")
@IdClass(BreedingSign.Key.class)
class BreedingSign extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID femaleId;
    SignKind kind;
    LocalDate happenedOn;

    @Nullable
    Instant happenedAt;

    HowKnown howKnown;

    @Nullable
    UUID maleId;

    @Nullable
    Integer eggs;

    UUID collectionId;

    @Nullable
    String notes;

    /** The entry that says the notes. */
    @Nullable
    Long notesSeq;

    boolean withdrawn;
    UUID recordedBy;
    long revision;

    protected BreedingSign() {}

    BreedingSign(Entry entry, BreedingFacts.BreedingSignNoted noted) {
        this.populationId = entry.populationId();
        this.id = noted.signId();
        this.femaleId = noted.femaleId();
        this.collectionId = noted.collectionId();
        this.recordedBy = entry.actorId();
        set(entry, noted.seen());
    }

    void set(Entry entry, BreedingFacts.Seen seen) {
        kind = seen.kind();
        happenedOn = seen.happenedOn();
        happenedAt = seen.happenedAt();
        howKnown = seen.howKnown();
        maleId = seen.maleId();
        eggs = seen.eggs();
        notes = seen.notes();
        notesSeq = entry.seq();
        revision = entry.seq();
    }

    static BreedingSign of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }

    /** Those that hold, the first ones first. */
    static List<BreedingSign> ofFemales(UUID populationId, Collection<UUID> femaleIds) {
        return femaleIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and femaleId in ?2 and withdrawn = false order by happenedOn, id",
                        populationId,
                        femaleIds);
    }

    /** Those of a population from which days are counted. */
    static List<BreedingSign> landmarks(UUID populationId) {
        return list(
                "populationId = ?1 and withdrawn = false and kind in ?2 order by happenedOn, id",
                populationId,
                List.of(SignKind.OVULATION, SignKind.POST_OVULATION_SHED, SignKind.LAYING));
    }

    Sign sign() {
        return new Sign(id, femaleId, kind, happenedOn, happenedAt, howKnown, maleId);
    }

    BreedingSignView view(Map<UUID, String> numbers) {
        return new BreedingSignView(
                id,
                numbers.get(femaleId),
                kind,
                happenedOn,
                happenedAt,
                howKnown,
                maleId == null ? null : numbers.get(maleId),
                eggs,
                withdrawn,
                notes,
                revision);
    }
}
