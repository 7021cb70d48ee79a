package org.demebook.keeper;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.LockModeType;
import jakarta.persistence.Table;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.demebook.journal.Journal;
import org.jspecify.annotations.Nullable;

/** A one-time link: whoever opens it first gets an account, and a membership where one is named. */
@Entity
@Table(name = "invitation")
class Invitation extends PanacheEntityBase {
    static final Duration VALID = Duration.ofDays(14);

    @Id
    UUID id;

    String secretHash;

    @Nullable
    UUID populationId;

    @Nullable
    String role;

    UUID invitedBy;
    Instant invitedAt;
    Instant expiresAt;

    @Nullable
    Instant usedAt;

    @Nullable
    UUID usedBy;

    protected Invitation() {}

    Invitation(String secret, @Nullable UUID populationId, @Nullable Role role, UUID invitedBy, Instant now) {
        this.id = Journal.newId();
        this.secretHash = Secret.hash(secret);
        this.populationId = populationId;
        this.role = role == null ? null : role.word();
        this.invitedBy = invitedBy;
        this.invitedAt = now;
        this.expiresAt = now.plus(VALID);
    }

    /** Under its row lock, so that a link cannot be used twice. */
    static Optional<Invitation> locked(String secret) {
        return find("secretHash", Secret.hash(secret))
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .firstResultOptional();
    }

    boolean usable(Instant now) {
        return usedAt == null && now.isBefore(expiresAt);
    }
}
