package org.demebook.telling;

import java.time.Instant;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A claim that an animal of yours and one that another node registered are one.
 *
 * @param animal studbook number of your animal
 * @param animalBetweenNodes what it is called between nodes, {@code uuid@node}: tell it to the other's keeper, who may not see its number
 * @param other studbook number of the other; absent where it is not shown to you
 * @param otherBetweenNodes what the other is called between nodes
 * @param node code of the node that registered the other; its id where it has no seat
 * @param claimedHere whether this node claims it, and the other one may confirm; false: the other way round
 * @param claimedAt by the clock of the node that claims it
 * @param state {@code claimed}, {@code confirmed} or {@code reversed}, as far as this node has heard
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record SameAnimalElsewhereView(
        UUID id,
        String animal,
        String animalBetweenNodes,
        @Nullable String other,
        String otherBetweenNodes,
        String node,
        boolean claimedHere,
        Instant claimedAt,
        String state) {}
