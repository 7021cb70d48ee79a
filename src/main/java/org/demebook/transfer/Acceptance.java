package org.demebook.transfer;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * An offer taken up.
 *
 * @param collection id of the collection that the animal goes into; nothing when you act for one alone. A returned loan
 *     goes back into the collection that owns it
 * @param handedOverOn the day of the hand-over; nothing when it is as the giver said
 */
public record Acceptance(
        @Nullable UUID collection, @Nullable LocalDate handedOverOn) {}
