package org.demebook.transfer;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A dispute over where an animal is, as one of its sides or a coordinator sees it. No side is told who the other is.
 *
 * @param animal studbook number
 * @param reportedByYou true for the side that reported it, false for everybody else
 * @param seenOn the day on which it was seen where it was reported
 * @param note what was said for it
 * @param transfer the transfer that does not agree with the report; only for the two sides of that transfer
 * @param collection where it was reported; only for the side that reported it
 * @param sides who to ask; only for a coordinator who is on no side
 * @param reason why it was taken back, conceded or settled so
 */
@ShownTo(ShownTo.Whom.BOTH_SIDES)
public record DisputeView(
        UUID id,
        String animal,
        DisputeState state,
        boolean reportedByYou,
        LocalDate seenOn,
        @Nullable String note,
        @Nullable UUID transfer,
        @Nullable UUID collection,
        @Nullable Sides sides,
        Instant reportedAt,
        @Nullable Instant endedAt,
        @Nullable String reason,
        long revision) {

    /**
     * Sign-in names of the keepers of the two collections.
     *
     * @param reporters where it was reported
     * @param holders where the register has it
     */
    public record Sides(List<String> reporters, List<String> holders) {}
}
