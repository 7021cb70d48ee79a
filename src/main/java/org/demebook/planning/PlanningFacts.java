package org.demebook.planning;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;
import org.demebook.journal.Forgotten;
import org.demebook.journal.Words;
import org.jspecify.annotations.Nullable;

/** What the journal says of which animals are to breed; that something without a sire is on hold needs no word. */
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

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(BreedingHoldSet.class, BreedingHoldLifted.class);
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof BreedingHoldSet set) {
            BreedingHold.forget(forgotten.entry(), set.animalId(), set.reason());
        } else if (forgotten.left() instanceof BreedingHoldLifted lifted) {
            BreedingHold.forget(forgotten.entry(), lifted.animalId(), lifted.reason());
        }
        return true;
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof BreedingHoldSet set) {
            BreedingHold.say(entry, set.animalId(), true, set.reason());
        } else if (fact instanceof BreedingHoldLifted lifted) {
            BreedingHold.say(entry, lifted.animalId(), false, lifted.reason());
        }
    }
}
