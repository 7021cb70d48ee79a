package org.demebook.incubation;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Entry;

/** What a thermometer in an incubator showed. */
@Entity
@Table(name = "incubation_reading")
@IdClass(IncubationReading.Key.class)
class IncubationReading extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    UUID incubationId;
    Instant readAt;
    BigDecimal celsius;
    String written;

    protected IncubationReading() {}

    IncubationReading(Entry entry, IncubationFacts.IncubatorRead read) {
        this.populationId = entry.populationId();
        this.id = read.readingId();
        this.incubationId = read.incubationId();
        this.readAt = read.readAt();
        this.celsius = new BigDecimal(read.celsius());
        this.written = read.written();
    }

    /** The latest first. */
    static List<IncubationReading> of(UUID populationId, Collection<UUID> incubationIds) {
        return incubationIds.isEmpty()
                ? List.of()
                : list(
                        "populationId = ?1 and incubationId in ?2 order by readAt desc, id desc",
                        populationId,
                        incubationIds);
    }
}
