package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** A person on this node. */
@Entity
@Table(name = "keeper")
class Keeper extends PanacheEntityBase {
    @Id
    UUID id;

    String name;
    String fullName;
    String subject;
    boolean administrator;
    Instant joinedAt;

    protected Keeper() {}

    Keeper(UUID id, String name, String fullName, String subject, boolean administrator, Instant joinedAt) {
        this.id = id;
        this.name = name;
        this.fullName = fullName;
        this.subject = subject;
        this.administrator = administrator;
        this.joinedAt = joinedAt;
    }

    static Optional<Keeper> named(String name) {
        return find("lower(name) = ?1", name.strip().toLowerCase(Locale.ROOT)).firstResultOptional();
    }

    static Optional<Keeper> withSubject(String subject) {
        return find("subject", subject).firstResultOptional();
    }

    static List<Keeper> withIds(Set<UUID> ids) {
        return ids.isEmpty() ? List.of() : list("id in ?1", ids);
    }

    Asker asker() {
        return new Asker(id, name, administrator);
    }
}
