package org.demebook.incubation;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** A clutch in an incubator, as its last facts left it. */
@Entity
@Table(name = "incubation")
@IdClass(Incubation.Key.class)
class Incubation extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID femaleId;
    LocalDate startedOn;

    @Nullable
    Integer eggs;

    BigDecimal setPointCelsius;
    String setPointWritten;
    UUID collectionId;

    @Nullable
    String notes;

    UUID recordedBy;
    long revision;

    protected Incubation() {}

    Incubation(Entry entry, IncubationFacts.IncubationStarted started) {
        this.populationId = entry.populationId();
        this.id = started.incubationId();
        this.femaleId = started.femaleId();
        this.startedOn = started.startedOn();
        this.eggs = started.eggs();
        this.setPointCelsius = new BigDecimal(started.setPointCelsius());
        this.setPointWritten = started.setPointWritten();
        this.collectionId = started.collectionId();
        this.notes = started.notes();
        this.recordedBy = entry.actorId();
        this.revision = entry.seq();
    }

    static Incubation of(UUID populationId, UUID id) {
        return findById(new Key(populationId, id));
    }
}
