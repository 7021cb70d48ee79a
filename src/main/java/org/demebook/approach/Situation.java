package org.demebook.approach;

import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.consent.Lens;
import org.demebook.registry.Custody;

/**
 * What the state of approaches follows from.
 *
 * @param animals by id
 * @param ofProposer what each keeper who proposed one may have computed with; who left the population is not there
 * @param ofMembers what every member may
 * @param standingGrants the grants of agreements that are live
 * @param today UTC
 */
record Situation(
        Map<UUID, Custody> animals,
        Map<UUID, Lens> ofProposer,
        Lens ofMembers,
        Set<UUID> standingGrants,
        LocalDate today) {

    /**
     * What a side is told. To the side that asks an approach is open for its thirty days, whatever the other side does short of
     * agreeing, and whatever becomes of the partner: no day on which it would learn more could be laid beside another.
     */
    ApproachState state(Approach approach, ApproachSide side) {
        if (approach.isAgreed()) {
            return holds(approach) ? ApproachState.AGREED : ApproachState.ENDED;
        }
        boolean over = today.isAfter(approach.openUntil());
        if (side == ApproachSide.ASKED && approach.isRefused()) {
            return ApproachState.NO_AGREEMENT;
        }
        if (approach.withdrawnOn != null) {
            return ApproachState.WITHDRAWN;
        }
        if (over) {
            return ApproachState.NO_AGREEMENT;
        }
        return switch (side) {
            case ASKING -> askingSideStands(approach) ? ApproachState.OPEN : ApproachState.ENDED;
            case ASKED ->
                !askingSideStands(approach)
                        ? ApproachState.WITHDRAWN
                        : askedSideStands(approach) ? ApproachState.OPEN : ApproachState.ENDED;
        };
    }

    Custody animal(Approach approach, ApproachSide side) {
        return Objects.requireNonNull(animals.get(approach.animalOf(side)));
    }

    private boolean holds(Approach approach) {
        return approach.withdrawnOn == null
                && !today.isAfter(Objects.requireNonNull(approach.agreedUntil()))
                && standingGrants.containsAll(approach.grants())
                && askingSideStands(approach)
                && askedSideStands(approach);
    }

    /** Whoever looks for a partner lets members compute with the animal, too. */
    private boolean askingSideStands(Approach approach) {
        return ofProposer.containsKey(approach.proposedBy)
                && isThere(approach, ApproachSide.ASKING)
                && Situations.computes(ofMembers, animal(approach, ApproachSide.ASKING));
    }

    private boolean askedSideStands(Approach approach) {
        var proposer = ofProposer.get(approach.proposedBy);
        return proposer != null
                && isThere(approach, ApproachSide.ASKED)
                && Situations.computes(proposer, animal(approach, ApproachSide.ASKED));
    }

    /** Alive, under its number, and with the collection that it was with, which has the only say in it. */
    private boolean isThere(Approach approach, ApproachSide side) {
        var animal = animal(approach, side);
        var collection = approach.collectionOf(side);
        return animal.died() == null
                && !animal.merged()
                && collection.equals(animal.collectionId())
                && collection.equals(animal.ownerCollectionId());
    }
}
