package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A keeper belongs to a population. */
@Entity
@Table(name = "membership")
@IdClass(Membership.Key.class)
class Membership extends PanacheEntityBase {
    record Key(UUID populationId, UUID keeperId) {}

    @Id
    UUID populationId;

    @Id
    UUID keeperId;

    String role;
    long joinedSeq;

    protected Membership() {}

    Membership(UUID populationId, UUID keeperId, Role role, long joinedSeq) {
        this.populationId = populationId;
        this.keeperId = keeperId;
        this.role = role.word();
        this.joinedSeq = joinedSeq;
    }

    static @Nullable Membership of(UUID populationId, UUID keeperId) {
        return findById(new Key(populationId, keeperId));
    }

    static List<Membership> in(UUID populationId) {
        return list("populationId = ?1 order by joinedSeq", populationId);
    }
}
