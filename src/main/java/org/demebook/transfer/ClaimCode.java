package org.demebook.transfer;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.demebook.keeper.Secret;

/**
 * The present claim code of an animal that was handed out, as a hash. It belongs to this node alone and is written by the
 * doors, always with the population's journal open; once used or renewed, the old one is gone.
 */
@Entity
@Table(name = "claim_code")
class ClaimCode extends PanacheEntityBase {
    @Id
    UUID transferId;

    UUID populationId;
    String hash;
    Instant expiresAt;

    protected ClaimCode() {}

    /** A fresh code, of which only the hash stays; an earlier one of the same transfer is void. */
    static String issue(UUID populationId, UUID transferId, Instant expiresAt) {
        ClaimCode present = findById(transferId);
        if (present == null) {
            present = new ClaimCode();
            present.transferId = transferId;
        }
        var code = Secret.forTyping();
        present.populationId = populationId;
        present.hash = Secret.hash(code);
        present.expiresAt = expiresAt;
        present.persist();
        return code;
    }

    /** Where the code leads, before anything is locked; the code is to be read again under the population's lock. */
    static Optional<UUID> populationOf(String code) {
        return getEntityManager()
                .createQuery("select c.populationId from ClaimCode c where c.hash = :hash", UUID.class)
                .setParameter("hash", Secret.hash(code))
                .getResultStream()
                .findFirst();
    }

    static Optional<ClaimCode> of(String code) {
        return find("hash", Secret.hash(code)).firstResultOptional();
    }
}
