package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.demebook.journal.Entry;
import org.demebook.journal.Journal;
import org.demebook.keeper.Leaving;
import org.demebook.keeper.Standing;
import org.demebook.photo.Photos;
import org.demebook.registry.AnimalFacts.AnimalLeftBehind;

/** The animals of keepers who leave. */
@ApplicationScoped
public class LeftAnimals implements Leaving {
    private static final String BORROWED = "populationId = ?1 and collectionId in ?2 and ownerCollectionId not in ?2"
            + " and died is null and sameAsId is null order by number";

    @Inject
    Journal journal;

    @Inject
    Photos photos;

    /** Every record of an animal, dead or alive, that lives in one of the collections or belongs to one. */
    @Transactional
    public List<Custody> of(UUID populationId, Set<UUID> collectionIds) {
        return collectionIds.isEmpty()
                ? List.of()
                : Animal.<Animal>list(
                                "populationId = ?1 and (collectionId in ?2 or ownerCollectionId in ?2)",
                                populationId,
                                collectionIds)
                        .stream()
                        .map(Custody::of)
                        .toList();
    }

    /** Records where an animal stands now that its keeper leaves. */
    @Transactional(TxType.MANDATORY)
    public void leaveBehind(Standing by, UUID animalId, UUID holderId, UUID ownerId) {
        journal.record(by.populationId(), by.keeperId(), new AnimalLeftBehind(animalId, holderId, ownerId));
    }

    @Override
    public List<String> inTheWay(Standing by, Set<UUID> alone) {
        var inTheWay = new ArrayList<String>();
        if (!alone.isEmpty()) {
            for (var animal : Animal.<Animal>list(BORROWED, by.populationId(), alone)) {
                inTheWay.add("%s is on loan to you: give it back first (POST …/transfers, kind loan-return)."
                        .formatted(animal.number));
            }
        }
        return inTheWay;
    }

    @Override
    public void left(Entry entry, UUID keeperId, Set<UUID> shared) {
        photos.takeOut(entry.populationId(), keeperId, shared);
    }

    @Override
    public void cleared(UUID populationId, UUID keeperId, Set<UUID> alone) {
        photos.dropUnused(populationId);
    }
}
