package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.consent.AgreedGrants;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Custody;
import org.jspecify.annotations.Nullable;

/** What two households learn of each other's animal when both accept a litter, as the two sides of an approach do. In the caller's transaction. */
@ApplicationScoped
class Agreements {
    @Inject
    Keepers keepers;

    @Inject
    AgreedGrants grants;

    /** Whether an answer is of somebody who acts for the collection that holds the animal now. */
    boolean isOfHolder(LitterAnswer answer, Custody animal) {
        return animal.collectionId() != null
                && keepers.actsFor(answer.populationId, answer.answeredBy, animal.collectionId());
    }

    void end(Standing by, List<UUID> grantIds) {
        if (!grantIds.isEmpty()) {
            grants.withdraw(by.populationId(), by.keeperId(), grantIds);
        }
    }

    /**
     * Nothing is given within a household, of an animal in which two have a say or that died, or while the other side's acceptance is that
     * of somebody who held the animal before.
     *
     * @param side that accepts now
     * @param theirs what the other side answered; null while it did not
     * @return the grants of both sides
     */
    List<UUID> give(Standing by, Side side, Map<Side, Custody> animals, @Nullable LitterAnswer theirs) {
        var mine = animals.get(side);
        var other = animals.get(side.other());
        if (theirs == null
                || theirs.answer != Answer.ACCEPT
                || !isItsHoldersAlone(mine)
                || !isItsHoldersAlone(other)
                || !isOfHolder(theirs, other)
                || isOneHousehold(by, mine, other)) {
            return List.of();
        }
        var given = new ArrayList<>(grants.giveForPair(
                by.populationId(), by.keeperId(), mine.collectionId(), mine.id(), other.collectionId()));
        given.addAll(grants.giveForPair(
                by.populationId(), theirs.answeredBy, other.collectionId(), other.id(), mine.collectionId()));
        return given;
    }

    private static boolean isItsHoldersAlone(Custody animal) {
        return animal.died() == null
                && !animal.merged()
                && animal.collectionId() != null
                && animal.collectionId().equals(animal.ownerCollectionId());
    }

    private boolean isOneHousehold(Standing by, Custody one, Custody other) {
        var households = keepers.households(by.populationId());
        return households
                .getOrDefault(one.collectionId(), one.collectionId())
                .equals(households.getOrDefault(other.collectionId(), other.collectionId()));
    }
}
