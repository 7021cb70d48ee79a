package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.registry.Sire;
import org.jspecify.annotations.Nullable;

/** What the journal says of litters; each live-born young is a fact of the registry that follows. */
@ApplicationScoped
class LitterFacts implements FactBook {
    record LitterRegistered(
            UUID litterId,
            UUID damId,
            Sire sire,
            Origin origin,
            RoughDate born,
            UUID collectionId,
            Outcome outcome,
            @Nullable String notes)
            implements Fact {
        @Override
        public String validFrom() {
            return born.toString();
        }
    }

    /** The outcome at birth as it is known now. */
    record LitterOutcomeCorrected(
            UUID litterId, Outcome outcome, @Nullable Long supersedes) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(LitterRegistered.class, LitterOutcomeCorrected.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof LitterRegistered registered) {
            // its young refer to it: it has to be there before them
            new Litter(entry, registered).persistAndFlush();
        } else if (fact instanceof LitterOutcomeCorrected corrected) {
            Objects.requireNonNull(Litter.of(entry.populationId(), corrected.litterId()))
                    .setOutcome(entry, corrected.outcome());
        }
    }
}
