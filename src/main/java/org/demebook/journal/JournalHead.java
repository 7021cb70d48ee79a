package org.demebook.journal;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.LockModeType;
import jakarta.persistence.Table;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The last sequence number of a population's journal; numbers are given under its row lock only, so that none is given twice. */
@Entity
@Table(name = "journal_head")
class JournalHead extends PanacheEntityBase {
    @Id
    UUID populationId;

    String code;
    String nodeCode;
    long seq;

    protected JournalHead() {}

    JournalHead(UUID populationId, String code, String nodeCode) {
        this.populationId = populationId;
        this.code = code;
        this.nodeCode = nodeCode;
    }

    static @Nullable JournalHead locked(UUID populationId) {
        return findById(populationId, LockModeType.PESSIMISTIC_WRITE);
    }

    static long seqOf(UUID populationId) {
        return find("select seq from JournalHead where populationId = ?1", populationId)
                .project(Long.class)
                .firstResultOptional()
                .orElse(0L);
    }
}
