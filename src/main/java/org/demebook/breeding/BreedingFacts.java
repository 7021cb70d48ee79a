package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.gestation.HowKnown;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of introductions and breeding signs. */
@ApplicationScoped
class BreedingFacts implements FactBook {
    record IntroductionOpened(
            UUID introductionId,
            UUID femaleId,
            UUID maleId,
            LocalDate fromOn,
            @Nullable LocalDate untilOn,
            UUID collectionId,
            @Words @Nullable String notes)
            implements Fact {
        @Override
        public String validFrom() {
            return fromOn.toString();
        }
    }

    record IntroductionEnded(UUID introductionId, LocalDate untilOn) implements Fact {
        @Override
        public String validFrom() {
            return untilOn.toString();
        }
    }

    record IntroductionCorrected(
            UUID introductionId,
            LocalDate fromOn,
            @Nullable LocalDate untilOn,
            @Words @Nullable String notes,
            @Nullable Long supersedes)
            implements Fact {}

    record IntroductionWithdrawn(
            UUID introductionId,
            @Words @Nullable String reason,
            @Nullable Long supersedes) implements Fact {}

    /** What was seen. */
    record Seen(
            SignKind kind,
            LocalDate happenedOn,
            @Nullable Instant happenedAt,
            HowKnown howKnown,
            @Nullable UUID maleId,
            @Nullable Integer eggs,
            @Words @Nullable String notes) {}

    record BreedingSignNoted(UUID signId, UUID femaleId, Seen seen, UUID collectionId) implements Fact {
        @Override
        public String validFrom() {
            return seen.happenedOn().toString();
        }
    }

    record BreedingSignCorrected(
            UUID signId, Seen seen, @Nullable Long supersedes) implements Fact {}

    record BreedingSignWithdrawn(
            UUID signId,
            @Words @Nullable String reason,
            @Nullable Long supersedes) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                IntroductionOpened.class,
                IntroductionEnded.class,
                IntroductionCorrected.class,
                IntroductionWithdrawn.class,
                BreedingSignNoted.class,
                BreedingSignCorrected.class,
                BreedingSignWithdrawn.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        var left = forgotten.left();
        if (left instanceof IntroductionOpened opened) {
            return forget(forgotten, opened.introductionId(), opened.notes());
        } else if (left instanceof IntroductionCorrected corrected) {
            return forget(forgotten, corrected.introductionId(), corrected.notes());
        } else if (left instanceof BreedingSignNoted noted) {
            return forgetSign(forgotten, noted.signId(), noted.seen());
        } else if (left instanceof BreedingSignCorrected corrected) {
            return forgetSign(forgotten, corrected.signId(), corrected.seen());
        }
        return true; // why something was withdrawn stands in no row
    }

    private static boolean forget(Forgotten forgotten, UUID introductionId, @Nullable String notes) {
        var row = Introduction.of(forgotten.entry().populationId(), introductionId);
        if (forgotten.sharedCollections().contains(row.collectionId)) {
            return false;
        }
        if (Objects.equals(row.notesSeq, forgotten.entry().seq())) {
            row.notes = notes;
        }
        return true;
    }

    private static boolean forgetSign(Forgotten forgotten, UUID signId, Seen seen) {
        var row = BreedingSign.of(forgotten.entry().populationId(), signId);
        if (forgotten.sharedCollections().contains(row.collectionId)) {
            return false;
        }
        if (Objects.equals(row.notesSeq, forgotten.entry().seq())) {
            row.notes = seen.notes();
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof IntroductionOpened opened) {
            new Introduction(entry, opened).persist();
        } else if (fact instanceof IntroductionEnded ended) {
            introduction(entry, ended.introductionId()).untilOn = ended.untilOn();
        } else if (fact instanceof IntroductionCorrected corrected) {
            var introduction = introduction(entry, corrected.introductionId());
            introduction.fromOn = corrected.fromOn();
            introduction.untilOn = corrected.untilOn();
            introduction.notes = corrected.notes();
            introduction.notesSeq = entry.seq();
        } else if (fact instanceof IntroductionWithdrawn withdrawn) {
            introduction(entry, withdrawn.introductionId()).withdrawn = true;
        } else if (fact instanceof BreedingSignNoted noted) {
            new BreedingSign(entry, noted).persist();
        } else if (fact instanceof BreedingSignCorrected corrected) {
            BreedingSign.of(entry.populationId(), corrected.signId()).set(entry, corrected.seen());
        } else if (fact instanceof BreedingSignWithdrawn withdrawn) {
            var sign = BreedingSign.of(entry.populationId(), withdrawn.signId());
            sign.withdrawn = true;
            sign.revision = entry.seq();
        }
        // what is read next has to find it
        BreedingSign.flush();
    }

    private static Introduction introduction(Entry entry, UUID introductionId) {
        var introduction = Introduction.of(entry.populationId(), introductionId);
        introduction.revision = entry.seq();
        return introduction;
    }
}
