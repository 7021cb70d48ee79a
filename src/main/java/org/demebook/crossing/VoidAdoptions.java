package org.demebook.crossing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Objects;
import java.util.UUID;
import org.demebook.crossing.CrossingFacts.AdoptedAnimalLost;
import org.demebook.federation.Federations;
import org.demebook.journal.Journal;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Leavers;
import org.demebook.protocol.Participant;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;
import org.demebook.transfer.Transfers;

/**
 * Adoptions that turn out to be void, since the node that was taken for gone had given the animal away before: another node holds it, so
 * here it goes from its keeper as one does that was sold to that node. One that is on offer, lent or in dispute goes once that has ended.
 */
@ApplicationScoped
class VoidAdoptions {
    @Inject
    Journal journal;

    @Inject
    Keepers keepers;

    @Inject
    Leavers leavers;

    @Inject
    Animals animals;

    @Inject
    Transfers transfers;

    @Inject
    Federations federations;

    void follow(UUID population, Participant participant) {
        participant.adoptedInVain().keySet().forEach(animal -> federations
                .localId(population, animal)
                .map(id -> animals.custody(population, id))
                .filter(row -> isWithItsKeeper(population, row))
                .ifPresent(row -> lose(population, row)));
    }

    private boolean isWithItsKeeper(UUID population, Custody row) {
        var home = row.collectionId();
        return home != null
                && home.equals(row.ownerCollectionId())
                && row.died() == null
                && !row.merged()
                && row.disputeId() == null
                && !keepers.keepersOf(population, home).isEmpty()
                && !transfers.isUnderWay(population, row.id())
                && Crossing.lastGiven(population, row.id())
                        .filter(crossing -> crossing.state.open())
                        .isEmpty();
    }

    private void lose(UUID population, Custody row) {
        var keeper = keepers.keepersOf(population, Objects.requireNonNull(row.collectionId())).stream()
                .sorted()
                .findFirst()
                .orElseThrow();
        var holder = UUID.randomUUID(); // random: not even the time of its making is in it
        leavers.openUnnamed(population, keeper, holder);
        journal.record(population, keeper, new AdoptedAnimalLost(row.id(), holder));
    }

    /** Whether the animal of a record went from here since its adoption was void. */
    boolean isLost(UUID population, UUID animalId) {
        var home = animals.custody(population, animalId).collectionId();
        return home != null
                && keepers.keepersOf(population, home).isEmpty()
                && federations.isShared(population)
                && federations
                        .animalId(population, animalId)
                        .filter(animal -> federations.reading(
                                population,
                                participant -> participant.adoptedInVain().containsKey(animal)))
                        .isPresent();
    }
}
