package org.demebook.consent;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A grant as the keepers of its collection see it.
 *
 * @param givenBy sign-in name; absent when that keeper is gone
 * @param recipient the name is absent when that keeper is gone
 * @param animals studbook numbers; absent for all that the collection holds or owns
 * @param from the first moment at which it holds
 * @param until the first moment at which it holds no longer
 * @param noticeVersion of the notice that stood when it was given
 * @param choice the ready choice that it came with; absent when it was written by hand
 * @param renews the grant in whose place it stands
 * @param state what it is now: not-yet, live, withdrawn, expired or superseded
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record GrantView(
        UUID id,
        UUID collection,
        @Nullable String givenBy,
        Instant givenAt,
        StatedRecipient recipient,
        @Nullable List<String> animals,
        List<FieldGroup> fieldGroups,
        List<Purpose> purposes,
        List<Action> actions,
        Instant from,
        Instant until,
        @Nullable String conditions,
        String noticeVersion,
        @Nullable ReadyChoice choice,
        @Nullable UUID renews,
        GrantState state,
        @Nullable Instant withdrawnAt,
        @Nullable Instant supersededAt,
        long revision) {}
