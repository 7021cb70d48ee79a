package org.demebook.protocol;

import java.time.Instant;
import java.util.UUID;

/**
 * What became of a claim that two animals, each registered by a node of its own, are one; by the journals that are held here.
 *
 * @param animal registered by the node that claims it
 * @param other registered by the node that may confirm it
 * @param claimedAt by the claiming node's clock; to be shown, never to be decided by
 */
public record SameAnimalClaim(UUID id, AnimalId animal, AnimalId other, Instant claimedAt, State state) {
    public enum State {
        /** The other node has not confirmed it, as far as is known here. */
        CLAIMED,
        CONFIRMED,
        /** Either node took it back. */
        REVERSED
    }
}
