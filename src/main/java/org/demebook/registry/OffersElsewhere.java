package org.demebook.registry;

import java.util.Optional;
import java.util.UUID;
import org.demebook.keeper.Standing;

/** How animals stand with other nodes; a room that knows such things has a bean of this kind, without one every animal is here. */
public interface OffersElsewhere {
    /**
     * @param held whether this node holds it still: it is offered; false: it is on its way to another node, or kept there
     * @param sentence what to do; where it is offered, for its keeper alone; where it is held no more, for whoever may come upon it
     */
    record Elsewhere(boolean held, String sentence) {}

    /** Empty while it is here and offered to no other node. */
    Optional<Elsewhere> of(UUID populationId, UUID animalId);

    /** Whether the asker is who gives, or last gave, an animal to another node. */
    boolean isGiver(Standing by, UUID animalId);

    /**
     * Takes an offer back, if there is one, since something else became of the animal. Refuses with ANIMAL_ELSEWHERE where another node
     * may hold it already, and with NODE_FENCED while this node may not write to others.
     *
     * @param reason told to nobody but the giver
     */
    void takeBack(Standing by, UUID animalId, String reason);
}
