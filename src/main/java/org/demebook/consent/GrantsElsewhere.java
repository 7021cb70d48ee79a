package org.demebook.consent;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * What keepers on other nodes granted to members of this one, as far as their nodes told; a room that is told has a bean of this kind.
 * Nobody here gives such a grant, withdraws it, or is told of what was seen on it: the node that told it has that written down.
 */
public interface GrantsElsewhere {
    /** Of collections that are not on this node. Costs no query. */
    List<Grant> grantsOf(UUID populationId);

    /**
     * A grant to members of this node, without end: it goes when what it was told with is withdrawn.
     *
     * @param id another one whenever the animals are others
     * @param collectionId of the keeper elsewhere
     */
    static Grant told(
            UUID id,
            UUID collectionId,
            Set<UUID> animalIds,
            Set<FieldGroup> fieldGroups,
            Set<Purpose> purposes,
            Set<Action> actions) {
        return new Grant(
                id,
                collectionId,
                collectionId,
                Recipient.MEMBERS,
                Scope.animals(animalIds),
                fieldGroups,
                purposes,
                actions,
                Instant.EPOCH,
                Instant.MAX,
                null,
                "",
                null,
                null);
    }
}
