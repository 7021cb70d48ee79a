package org.demebook.telling;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Fact;
import org.demebook.journal.FactBook;

/**
 * Which keeper here had this node say that two animals are one. What follows from it follows from the journals of both nodes, which
 * alone say how it stands: it leaves no row.
 */
@ApplicationScoped
class SameAnimalFacts implements FactBook {
    /** @param other what it is called between nodes */
    record SameAnimalClaimedElsewhere(UUID claimId, UUID animalId, String other) implements Fact {}

    /** @param other what it is called between nodes */
    record SameAnimalConfirmedElsewhere(UUID claimId, UUID animalId, String other) implements Fact {}

    record SameAnimalReversedElsewhere(UUID claimId, UUID animalId) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(
                SameAnimalClaimedElsewhere.class,
                SameAnimalConfirmedElsewhere.class,
                SameAnimalReversedElsewhere.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        // who said it stands in the entry, and what became of it in the federated journals
    }
}
