package org.demebook.census;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** A keeper who does without the protection of their own numbers. */
@Entity
@Table(name = "count_waiver")
@IdClass(CountWaiver.Key.class)
class CountWaiver extends PanacheEntityBase {
    record Key(UUID populationId, UUID keeperId) {}

    @Id
    UUID populationId;

    @Id
    UUID keeperId;

    Instant waivedAt;

    protected CountWaiver() {}

    CountWaiver(UUID populationId, UUID keeperId, Instant waivedAt) {
        this.populationId = populationId;
        this.keeperId = keeperId;
        this.waivedAt = waivedAt;
    }

    static boolean isOf(UUID populationId, UUID keeperId) {
        return findById(new Key(populationId, keeperId)) != null;
    }

    static Set<UUID> of(UUID populationId) {
        return CountWaiver.<CountWaiver>list("populationId", populationId).stream()
                .map(waiver -> waiver.keeperId)
                .collect(Collectors.toSet());
    }
}
