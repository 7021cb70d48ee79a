package org.demebook.planning;

import java.time.Instant;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Whether an animal is on hold: not to be bred for now.
 *
 * @param animal studbook number
 * @param basis {@code no-sire}: it has no sire, so it carries nothing that its dam lacks; {@code locality}: it, or an
 *     ancestor, is of another locality or of none that is sure; {@code stated}: somebody said so; {@code lifted}: a word lifted the hold; absent where nothing was ever said and nothing speaks against it
 * @param reason what was said; only for its holder and for coordinators
 * @param statedAt when it was said; absent where nothing was
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record BreedingHoldView(
        String animal,
        boolean onHold,
        @Nullable String basis,
        @Nullable String reason,
        @Nullable Instant statedAt) {}
