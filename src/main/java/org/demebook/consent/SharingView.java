package org.demebook.consent;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What a collection shares by a ready choice.
 *
 * @param choice the one that was made last; absent when none was, which shares nothing
 * @param chosenAt absent when none was
 * @param grants those of the choice that are live; one that was withdrawn, or has run out, is not there
 * @param nodes other nodes that a ready choice was made for, in the order of their codes; what is public they are told anyway
 * @param otherGrants how many live grants stand beside it that were written by hand
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record SharingView(
        UUID collection,
        @Nullable ReadyChoice choice,
        @Nullable Instant chosenAt,
        List<GrantView> grants,
        List<NodeChoice> nodes,
        int otherGrants) {

    /** @param node its code */
    public record NodeChoice(String node, ReadyChoice choice) {}
}
