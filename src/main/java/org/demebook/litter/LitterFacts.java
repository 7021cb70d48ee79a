package org.demebook.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.photo.Moment;
import org.demebook.photo.Photos;
import org.demebook.photo.Subject;
import org.demebook.photo.TakenPhoto;
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
            @Words @Nullable String notes)
            implements Fact {
        @Override
        public String validFrom() {
            return born.toString();
        }
    }

    /** The outcome at birth as it is known now. */
    record LitterOutcomeCorrected(
            UUID litterId, Outcome outcome, @Nullable Long supersedes) implements Fact {}

    record LitterPhotographed(
            UUID photoId,
            UUID litterId,
            Moment moment,
            String sha256,
            @Words @Nullable String label,
            @Nullable LocalDate takenOn,
            int widthPixels,
            int heightPixels)
            implements Fact {
        static LitterPhotographed of(UUID litterId, Moment moment, TakenPhoto taken) {
            return new LitterPhotographed(
                    taken.photoId(),
                    litterId,
                    moment,
                    taken.sha256(),
                    taken.label(),
                    taken.takenOn(),
                    taken.widthPixels(),
                    taken.heightPixels());
        }

        TakenPhoto taken() {
            return new TakenPhoto(photoId, sha256, label, takenOn, widthPixels, heightPixels);
        }

        @Override
        public @Nullable String validFrom() {
            return takenOn == null ? null : takenOn.toString();
        }
    }

    @Inject
    Photos photos;

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(LitterRegistered.class, LitterOutcomeCorrected.class, LitterPhotographed.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var populationId = forgotten.entry().populationId();
        if (forgotten.left() instanceof LitterRegistered registered) {
            var litter = Objects.requireNonNull(Litter.of(populationId, registered.litterId()));
            if (forgotten.sharedCollections().contains(litter.collectionId)) {
                return false;
            }
            litter.notes = registered.notes();
        } else if (forgotten.left() instanceof LitterPhotographed photographed) {
            return !photos.has(populationId, photographed.photoId());
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof LitterRegistered registered) {
            // its young refer to it: it has to be there before them
            new Litter(entry, registered).persistAndFlush();
            new LitterVersion(entry, registered.litterId(), registered.outcome()).persist();
        } else if (fact instanceof LitterOutcomeCorrected corrected) {
            Objects.requireNonNull(Litter.of(entry.populationId(), corrected.litterId()))
                    .setOutcome(entry, corrected.outcome());
            new LitterVersion(entry, corrected.litterId(), corrected.outcome()).persist();
        } else if (fact instanceof LitterPhotographed photographed) {
            photos.add(entry, Subject.litter(photographed.litterId(), photographed.moment()), photographed.taken());
        }
    }
}
