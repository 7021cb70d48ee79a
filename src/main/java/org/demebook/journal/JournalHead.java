package org.demebook.journal;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.LockModeType;
import jakarta.persistence.Table;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The last sequence number of a population's journal. Only ever read under its row lock, so that no number is given twice. */
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
}
