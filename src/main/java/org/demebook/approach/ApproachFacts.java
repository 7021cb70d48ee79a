package org.demebook.approach;

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

/** What the journal says of approaches; the grants of an agreement are facts of their own. */
@ApplicationScoped
class ApproachFacts implements FactBook {
    /**
     * @param pseudonym under which the asked side knows the animal that asks
     * @param partnerPseudonym under which the partner was proposed to the asking side
     */
    record ApproachProposed(
            UUID approachId,
            UUID collectionId,
            UUID animalId,
            String pseudonym,
            UUID partnerCollectionId,
            UUID partnerId,
            String partnerPseudonym,
            @Nullable @Words String words)
            implements Fact {}

    record ApproachAgreed(UUID approachId, List<UUID> grantIds) implements Fact {}

    record ApproachRefused(UUID approachId) implements Fact {}

    record ApproachWithdrawn(UUID approachId) implements Fact {}

    @Override
    public Set<Class<? extends Fact>> facts() {
        return Set.of(ApproachProposed.class, ApproachAgreed.class, ApproachRefused.class, ApproachWithdrawn.class);
    }

    @Override
    public void apply(Entry entry, Fact fact) {
        if (fact instanceof ApproachProposed proposed) {
            new Approach(entry, proposed).persist();
        } else if (fact instanceof ApproachAgreed agreed) {
            touched(entry, agreed.approachId()).agreed(entry, agreed.grantIds());
        } else if (fact instanceof ApproachRefused refused) {
            touched(entry, refused.approachId()).refused(entry);
        } else if (fact instanceof ApproachWithdrawn withdrawn) {
            touched(entry, withdrawn.approachId()).withdrawn(entry);
        }
    }

    @Override
    public boolean forget(Forgotten forgotten) {
        if (forgotten.left() instanceof ApproachProposed proposed) {
            if (forgotten.sharedCollections().contains(proposed.collectionId())) {
                return false;
            }
            touched(forgotten.entry(), proposed.approachId()).forgetWords();
        }
        return true;
    }

    private static Approach touched(Entry entry, UUID approachId) {
        return Approach.of(entry.populationId(), approachId);
    }
}
