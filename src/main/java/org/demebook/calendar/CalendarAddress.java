package org.demebook.calendar;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.demebook.keeper.Secret;

/** Where a keeper's calendar is read, as a hash. It belongs to this node alone and is in no journal; a renewed one is gone. */
@Entity
@Table(name = "calendar_address")
class CalendarAddress extends PanacheEntityBase {
    @Id
    UUID keeperId;

    String secretHash;
    Instant openedAt;

    protected CalendarAddress() {}

    /** A fresh secret, of which only the hash stays; an earlier one of the same keeper is void. */
    static String issue(UUID keeperId, Instant now) {
        CalendarAddress present = findById(keeperId);
        var address = present == null ? new CalendarAddress() : present;
        var secret = Secret.forLink();
        address.keeperId = keeperId;
        address.secretHash = Secret.hash(secret);
        address.openedAt = now;
        address.persist();
        return secret;
    }

    static Optional<CalendarAddress> of(String secret) {
        return find("secretHash", Secret.hash(secret)).firstResultOptional();
    }
}
