package org.demebook.planning;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What a collection of yours can bear in the coming season. Nobody else reads it; plans keep to it, and say in words that do
 * not tell whose terms stand in the way.
 *
 * @param stated whether terms are stated: then plans count the collection's animals as living together
 * @param littersAtMost litters that may be born there; absent: no limit
 * @param malesAwayAtMost males of the collection that may be away from it; absent: no limit
 * @param farthestKilometres absent: no limit
 * @param mayCrossBorders absent: nothing was said, and borders stand in nobody's way
 * @param exchangeWith the regions that animals go to and come from, besides the collection's own; absent: any
 * @param statedAt absent where none are stated
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record PairingTermsView(
        UUID collection,
        boolean stated,
        @Nullable Integer littersAtMost,
        @Nullable Integer malesAwayAtMost,
        @Nullable Integer farthestKilometres,
        @Nullable Boolean mayCrossBorders,
        @Nullable List<String> exchangeWith,
        @Nullable String notes,
        @Nullable Instant statedAt) {}
