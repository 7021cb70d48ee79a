package org.demebook.consent;

import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Role;
import org.jspecify.annotations.Nullable;

/**
 * Who would see it.
 *
 * @param keeperId null when nobody is signed in
 * @param role in the population; null for somebody who does not belong to it
 * @param ownCollections the collections of the population that they act for
 * @param node code of the node that asks to have it passed on; null when a person asks
 */
public record Audience(
        UUID populationId,
        @Nullable UUID keeperId,
        @Nullable Role role,
        Set<UUID> ownCollections,
        @Nullable String node) {

    public Audience(UUID populationId, @Nullable UUID keeperId, @Nullable Role role, Set<UUID> ownCollections) {
        this(populationId, keeperId, role, ownCollections, null);
    }

    /** Nobody who is known: whoever reads what is public. */
    public static Audience PUBLIC(UUID populationId) {
        return new Audience(populationId, null, null, Set.of());
    }

    /** Another node, which would have it passed on. */
    public static Audience node(UUID populationId, String code) {
        return new Audience(populationId, null, null, Set.of(), code);
    }
}
