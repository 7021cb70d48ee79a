package org.demebook.consent;

import java.time.Instant;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A collection's word that somebody may see some of what it has a say in, and do something with it, for a while. It is
 * given by a keeper who acts for the collection, and withdrawn by any of them. It never changes: what comes after it ends it.
 *
 * @param from the first moment at which it holds
 * @param until the first moment at which it holds no longer
 * @param conditions what the grantor asks for in their own words; no decision reads it
 * @param noticeVersion of the notice that the grantor was shown
 * @param withdrawnAt null while it is not withdrawn
 * @param supersededAt null while nothing else stands in its place
 */
public record Grant(
        UUID id,
        UUID collectionId,
        UUID givenBy,
        Recipient recipient,
        Scope scope,
        Set<FieldGroup> fieldGroups,
        Set<Purpose> purposes,
        Set<Action> actions,
        Instant from,
        Instant until,
        @Nullable String conditions,
        String noticeVersion,
        @Nullable Instant withdrawnAt,
        @Nullable Instant supersededAt) {

    public Grant {
        fieldGroups = setOf(FieldGroup.class, fieldGroups);
        purposes = setOf(Purpose.class, purposes);
        actions = setOf(Action.class, actions);
    }

    /** What it is at a moment. A grant that came to several ends came to the first of them. */
    public GrantState state(Instant at) {
        return Covering.state(this, at);
    }

    private static <E extends Enum<E>> Set<E> setOf(Class<E> type, Collection<E> values) {
        var set = EnumSet.noneOf(type);
        set.addAll(values);
        return Collections.unmodifiableSet(set);
    }
}
