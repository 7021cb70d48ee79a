package org.demebook.litter;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.jspecify.annotations.Nullable;

/** The outcome of a litter as it was stated once; the last one holds. */
@Entity
@Table(name = "litter_version")
@IdClass(LitterVersion.Key.class)
class LitterVersion extends PanacheEntityBase {
    record Key(UUID populationId, UUID litterId, long seq) {}

    @Id
    UUID populationId;

    @Id
    UUID litterId;

    @Id
    long seq;

    UUID statedBy;
    Instant statedAt;

    @Embedded
    Outcome outcome;

    protected LitterVersion() {}

    LitterVersion(Entry entry, UUID litterId, Outcome outcome) {
        this.populationId = entry.populationId();
        this.litterId = litterId;
        this.seq = entry.seq();
        this.statedBy = entry.actorId();
        this.statedAt = entry.recordedAt();
        this.outcome = outcome;
    }

    static List<LitterVersion> of(UUID populationId, UUID litterId) {
        return list("populationId = ?1 and litterId = ?2 order by seq", populationId, litterId);
    }

    /** @param by sign-in name; null where the asker may not see who it was */
    LitterVersionView view(@Nullable String by) {
        return new LitterVersionView(seq, statedAt, by, outcome);
    }
}
