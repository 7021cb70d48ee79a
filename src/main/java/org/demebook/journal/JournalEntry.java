package org.demebook.journal;

import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** An entry as it is stored: the exact bytes of its canonical form, with what one looks for beside them. */
@Entity
@Immutable
@Table(name = "journal_entry")
@IdClass(JournalEntry.Key.class)
class JournalEntry extends PanacheEntityBase {
    record Key(UUID populationId, String nodeCode, long seq) {}

    @Id
    UUID populationId;

    @Id
    String nodeCode;

    @Id
    long seq;

    Instant recordedAt;
    UUID actorId;
    String type;
    byte[] body;

    protected JournalEntry() {}

    JournalEntry(Entry entry, String type, byte[] body) {
        this.populationId = entry.populationId();
        this.nodeCode = entry.nodeCode();
        this.seq = entry.seq();
        this.recordedAt = entry.recordedAt();
        this.actorId = entry.actorId();
        this.type = type;
        this.body = body;
    }

    /** What one keeper said after an entry, in order. */
    static List<JournalEntry> saidBy(UUID populationId, UUID actorId, long afterSeq, int most) {
        return JournalEntry.<JournalEntry>find(
                        "populationId = ?1 and actorId = ?2 and seq > ?3 order by seq", populationId, actorId, afterSeq)
                .page(0, most)
                .list();
    }

    static List<JournalEntry> after(UUID populationId, long seq, int most) {
        return JournalEntry.<JournalEntry>find("populationId = ?1 and seq > ?2 order by seq", populationId, seq)
                .page(0, most)
                .list();
    }
}
