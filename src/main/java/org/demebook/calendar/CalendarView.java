package org.demebook.calendar;

import java.time.Instant;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Your calendar.
 *
 * @param address where a calendar program reads it, relative to this node; whoever has it reads your calendar. Shown once,
 *     when it was made
 * @param openedAt when the present address was made; absent when there is none
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record CalendarView(
        @Nullable String address, @Nullable Instant openedAt) {}
