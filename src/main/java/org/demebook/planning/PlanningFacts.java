package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/**
 * What the journal says of which animals are to breed, and of what collections can bear; that something without a sire is on
 * hold needs no word.
 */
@ApplicationScoped
class PlanningFacts implements FactBook {
    record BreedingHoldSet(
            UUID animalId,
            @Words(required = true) String reason,
            @Nullable Long supersedes) implements Fact {}

    /** It may breed, whatever spoke against it before. */
    record BreedingHoldLifted(
            UUID animalId,
            @Words(required = true) String reason,
            @Nullable Long supersedes) implements Fact {}

    /**
     * What a collection can bear in the coming season, all that is stated of it.
     *
     * @param withinRegion animals are exchanged within the collection's own region alone
     * @param exchangeWith null: nothing is said, or within the region
     */
    record PairingTermsStated(
            UUID collectionId,
            @Nullable Integer littersAtMost,
            @Nullable Integer malesAwayAtMost,
            @Nullable Integer farthestKilometres,
            @Nullable Boolean mayCrossBorders,
            @Nullable Boolean withinRegion,
            @Nullable List<String> exchangeWith,
            @Words @Nullable String notes,
            @Nullable Long supersedes)
            implements Fact {
        static PairingTermsStated of(UUID collectionId, PairingTerms terms, @Nullable Long supersedes) {
            return new PairingTermsStated(
                    collectionId,
                    terms.littersAtMost(),
                    terms.malesAwayAtMost(),
                    terms.farthestKilometres(),
                    terms.mayCrossBorders(),
                    terms.exchangeWith() != null && terms.exchangeWith().isEmpty() ? true : null,
                    terms.exchangeWith() == null || terms.exchangeWith().isEmpty() ? null : terms.exchangeWith(),
                    terms.notes(),
                    supersedes);
        }

        PairingTerms terms() {
            return new PairingTerms(
                    littersAtMost,
                    malesAwayAtMost,
                    farthestKilometres,
                    mayCrossBorders,
                    Boolean.TRUE.equals(withinRegion) ? List.of() : exchangeWith,
                    notes);
        }
    }

    /** Nothing is stated of it any more. */
    record PairingTermsWithdrawn(
            UUID collectionId, @Nullable Long supersedes) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                BreedingHoldSet.class, BreedingHoldLifted.class, PairingTermsStated.class, PairingTermsWithdrawn.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof BreedingHoldSet set) {
            BreedingHold.forget(forgotten.entry(), set.animalId(), set.reason());
        } else if (forgotten.left() instanceof BreedingHoldLifted lifted) {
            BreedingHold.forget(forgotten.entry(), lifted.animalId(), lifted.reason());
        } else if (forgotten.left() instanceof PairingTermsStated stated) {
            if (forgotten.sharedCollections().contains(stated.collectionId())) {
                return false;
            }
            StatedTerms.forget(forgotten.entry(), stated.collectionId(), stated.notes());
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof BreedingHoldSet set) {
            BreedingHold.say(entry, set.animalId(), true, set.reason());
        } else if (fact instanceof BreedingHoldLifted lifted) {
            BreedingHold.say(entry, lifted.animalId(), false, lifted.reason());
        } else if (fact instanceof PairingTermsStated stated) {
            StatedTerms.state(entry, stated.collectionId(), stated.terms());
        } else if (fact instanceof PairingTermsWithdrawn withdrawn) {
            StatedTerms.withdraw(entry.populationId(), withdrawn.collectionId());
        }
    }
}
