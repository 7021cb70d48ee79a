package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.AgreedGrants;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.registry.Custody;
import org.jspecify.annotations.Nullable;

/** What two households learn of each other's animal when both accept a litter, as the two sides of an approach do. In the caller's transaction. */
@ApplicationScoped
class Agreements {
    private static final int MONTHS_AGREED = 12;

    @Inject
    Keepers keepers;

    @Inject
    AgreedGrants grants;

    @Inject
    Clock clock;

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
        var given = new ArrayList<>(give(by.populationId(), by.keeperId(), mine, other));
        given.addAll(give(by.populationId(), theirs.answeredBy, other, mine));
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

    private List<UUID> give(UUID populationId, UUID givenBy, Custody animal, Custody theirs) {
        return grants.give(
                populationId,
                givenBy,
                animal.collectionId(),
                animal.id(),
                keepers.keepersOfCollections(populationId).getOrDefault(theirs.collectionId(), Set.of()),
                List.of(FieldGroup.IDENTITY, FieldGroup.CUSTODY),
                Purpose.PAIRING_COMPUTATION,
                until());
    }

    private Instant until() {
        return LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC)
                .plusMonths(MONTHS_AGREED)
                .plusDays(1)
                .atStartOfDay(ZoneOffset.UTC)
                .toInstant();
    }
}
