package org.demebook.care;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Something to do, as those who act for the collection see it.
 *
 * @param key of its address; the same as long as it is the same task
 * @param animal studbook number; absent when it is about no single animal
 * @param litter absent when it is about no litter
 * @param collection whose task it is
 * @param dueOn the day on which it is to be done, as it was moved
 * @param fromOn first day on which it may be; absent when it is one day
 * @param untilOn last day on which it may be; absent when it is one day
 * @param overdueDays how many days ago its last day was; 0 when it is not overdue
 * @param why the reason, with the event and the figure that it follows from
 * @param movedFrom the day on which it was due by itself; absent when it was not moved
 * @param timesMoved how often it was moved, or moved back
 * @param doneOn absent while it is to be done
 * @param doneBy sign-in name; absent while it is to be done, or when the keeper is gone from this node
 * @param silenced how far the silence goes that it lies under; absent when it is to be heard of
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record CareTaskView(
        String key,
        CareKind kind,
        @Nullable String animal,
        @Nullable UUID litter,
        UUID collection,
        LocalDate dueOn,
        @Nullable LocalDate fromOn,
        @Nullable LocalDate untilOn,
        int overdueDays,
        String what,
        String why,
        @Nullable LocalDate movedFrom,
        int timesMoved,
        @Nullable LocalDate doneOn,
        @Nullable String doneBy,
        @Nullable SilenceScope silenced) {}
