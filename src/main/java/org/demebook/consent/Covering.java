package org.demebook.consent;

import java.time.Instant;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.demebook.keeper.Role;

/**
 * What makes a grant cover something, part by part. It stands apart from the records that it is about, so that mutation testing
 * can change it: a record with annotated components cannot be redefined in a running JVM.
 */
final class Covering {
    private Covering() {}

    /** The first end that a grant came to, if it has. */
    static GrantState state(Grant grant, Instant at) {
        var state = at.isBefore(grant.from()) ? GrantState.NOT_YET : GrantState.LIVE;
        var end = at;
        if (!grant.until().isAfter(end)) {
            state = GrantState.EXPIRED;
            end = grant.until();
        }
        if (grant.supersededAt() != null && !grant.supersededAt().isAfter(end)) {
            state = GrantState.SUPERSEDED;
            end = grant.supersededAt();
        }
        if (grant.withdrawnAt() != null && !grant.withdrawnAt().isAfter(end)) {
            state = GrantState.WITHDRAWN;
        }
        return state;
    }

    static boolean actsForOneOf(Audience audience, Set<UUID> parties) {
        for (var party : parties) {
            if (audience.ownCollections().contains(party)) {
                return true;
            }
        }
        return false;
    }

    /** Whether the grant is live, for this purpose, and given to these, among others or alone. */
    static boolean speaksTo(Grant grant, Audience audience, Purpose purpose, Instant at) {
        return grant.purposes().contains(purpose)
                && reaches(grant.recipient(), audience)
                && state(grant, at) == GrantState.LIVE;
    }

    private static boolean reaches(Recipient recipient, Audience audience) {
        return switch (recipient.kind()) {
            case KEEPER -> Objects.equals(recipient.keeperId(), audience.keeperId());
            case MEMBERS -> audience.role() != null;
            case COORDINATORS -> audience.role() == Role.COORDINATOR;
            case PUBLIC -> true;
            case NODE -> Objects.equals(recipient.node(), audience.node());
        };
    }

    /** Whether the grant is about this; that its collection is a party is for the caller to see. */
    static boolean includes(Grant grant, UUID animalId, FieldGroup fieldGroup, Action action) {
        var animalIds = grant.scope().animalIds();
        return grant.actions().contains(action)
                && grant.fieldGroups().contains(fieldGroup)
                && (animalIds == null || animalIds.contains(animalId));
    }
}
