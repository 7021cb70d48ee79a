package org.demebook.incubation;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of incubations. Temperatures in °C as decimals, and as they were written. */
@ApplicationScoped
class IncubationFacts implements FactBook {
    record IncubationStarted(
            UUID incubationId,
            UUID femaleId,
            LocalDate startedOn,
            @Nullable Integer eggs,
            String setPointCelsius,
            String setPointWritten,
            UUID collectionId,
            @Words @Nullable String notes)
            implements Fact {
        @Override
        public String validFrom() {
            return startedOn.toString();
        }
    }

    record IncubatorRead(UUID readingId, UUID incubationId, Instant readAt, String celsius, String written)
            implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(IncubationStarted.class, IncubatorRead.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof IncubationStarted started) {
            if (forgotten.sharedCollections().contains(started.collectionId())) {
                return false;
            }
            Incubation.of(forgotten.entry().populationId(), started.incubationId()).notes = started.notes();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof IncubationStarted started) {
            new Incubation(entry, started).persistAndFlush(); // its readings refer to it
        } else if (fact instanceof IncubatorRead read) {
            new IncubationReading(entry, read).persist();
            Incubation.of(entry.populationId(), read.incubationId()).revision = entry.seq();
        }
    }
}
