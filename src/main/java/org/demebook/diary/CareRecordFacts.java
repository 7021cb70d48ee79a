package org.demebook.diary;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.jspecify.annotations.Nullable;

/** What the journal says of animals in care, and what that does to the records. */
@ApplicationScoped
class CareRecordFacts implements FactBook {
    /** @param collectionId that it was written for */
    record CareRecorded(UUID recordId, UUID animalId, UUID collectionId, CareRecord record) implements Fact {
        @Override
        public String validFrom() {
            return record.on().toString();
        }
    }

    /** The record as it is known now. */
    record CareRecordCorrected(
            UUID recordId, CareRecord record, @Nullable Long supersedes) implements Fact {
        @Override
        public String validFrom() {
            return record.on().toString();
        }
    }

    /** What a health note is about is no concern any more, or a quarantine is over. */
    record CareRecordEnded(UUID recordId, LocalDate on) implements Fact {
        @Override
        public String validFrom() {
            return on.toString();
        }
    }

    /** It was entered by mistake. */
    record CareRecordWithdrawn(UUID recordId, @Nullable Long supersedes) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(CareRecorded.class, CareRecordCorrected.class, CareRecordEnded.class, CareRecordWithdrawn.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof CareRecorded recorded) {
            return forget(forgotten, recorded.recordId(), recorded.record());
        } else if (forgotten.left() instanceof CareRecordCorrected corrected) {
            return forget(forgotten, corrected.recordId(), corrected.record());
        }
        return true;
    }

    private static boolean forget(Forgotten forgotten, UUID recordId, CareRecord left) {
        var row = CareRecordRow.of(forgotten.entry().populationId(), recordId);
        if (forgotten.sharedCollections().contains(row.collectionId)) {
            return false;
        }
        if (Objects.equals(row.wordsSeq, forgotten.entry().seq())) {
            row.record = row.record instanceof HealthNote present && left instanceof HealthNote note
                    ? new HealthNote(note.on(), note.text(), present.endedOn())
                    : left;
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof CareRecorded recorded) {
            new CareRecordRow(
                            entry, recorded.recordId(), recorded.animalId(), recorded.collectionId(), recorded.record())
                    .persist();
        } else if (fact instanceof CareRecordCorrected corrected) {
            CareRecordRow.of(entry.populationId(), corrected.recordId()).say(entry, corrected.record());
        } else if (fact instanceof CareRecordEnded ended) {
            var row = CareRecordRow.of(entry.populationId(), ended.recordId());
            row.set(entry, ended(row.record, ended.on()));
        } else if (fact instanceof CareRecordWithdrawn withdrawn) {
            var row = CareRecordRow.of(entry.populationId(), withdrawn.recordId());
            row.withdrawn = true;
            row.revision = entry.seq();
        }
    }

    private static CareRecord ended(CareRecord record, LocalDate on) {
        if (record instanceof HealthNote note) {
            return new HealthNote(note.on(), note.text(), on);
        } else if (record instanceof Quarantine quarantine) {
            return new Quarantine(quarantine.from(), quarantine.until(), on);
        }
        throw new IllegalStateException("a " + record.kind() + " has no end");
    }
}
