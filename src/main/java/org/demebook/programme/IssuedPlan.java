package org.demebook.programme;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A plan as it was issued, word for word. */
@Entity
@Immutable
@Table(name = "season_plan")
@IdClass(IssuedPlan.Key.class)
class IssuedPlan extends PanacheEntityBase {
    record Key(UUID populationId, UUID id) {}

    @Id
    UUID populationId;

    @Id
    UUID id;

    @Nullable
    UUID follows;

    LocalDate pairOn;
    LocalDate issuedOn;
    String body;
    long revision;

    protected IssuedPlan() {}

    IssuedPlan(Entry entry, PlanDocument plan) {
        this.populationId = entry.populationId();
        this.id = plan.id();
        this.follows = plan.follows();
        this.pairOn = plan.pairOn();
        this.issuedOn = LocalDate.ofInstant(entry.recordedAt(), ZoneOffset.UTC);
        this.body = plan.written();
        this.revision = entry.seq();
    }

    static Optional<IssuedPlan> of(UUID populationId, UUID id) {
        return Optional.ofNullable(findById(new Key(populationId, id)));
    }

    /** The one that was issued last is in force. */
    static Optional<IssuedPlan> inForce(UUID populationId) {
        return find("populationId = ?1 order by revision desc", populationId)
                .page(0, 1)
                .firstResultOptional();
    }

    /** The latest first. @param before sequence number of the last one seen */
    static List<IssuedPlan> page(UUID populationId, long before, int most) {
        return IssuedPlan.<IssuedPlan>find(
                        "populationId = ?1 and revision < ?2 order by revision desc", populationId, before)
                .page(0, most)
                .list();
    }

    PlanDocument document() {
        return PlanDocument.read(body);
    }
}
