package org.demebook.litter;

import java.time.Instant;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * The outcome of a litter as it was stated once.
 *
 * @param revision that the litter had with it
 * @param by sign-in name of who stated it, for those who act for the collection that it was born in; absent for others
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record LitterVersionView(
        long revision, Instant statedAt, @Nullable String by, Outcome outcome) {}
