package org.demebook.web.rearing;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.demebook.diary.CareRecord.Meal.Outcome;
import org.demebook.notation.Sex;
import org.demebook.rearing.LitterBoard.BoardRow;
import org.jspecify.annotations.Nullable;

/**
 * A young on the board.
 *
 * @param sex null where the asker does not see it
 * @param photo its last photograph; null where there is none to see
 * @param daysSinceMeal since one was offered last; null before the first
 * @param today whether one was offered today
 */
public record YoungCard(
        BoardRow row,
        @Nullable Sex sex,
        @Nullable UUID photo,
        @Nullable Integer daysSinceMeal,
        boolean today) {
    static YoungCard of(BoardRow row, @Nullable Sex sex, @Nullable UUID photo, LocalDate on) {
        var last = row.lastMealOn();
        var days = last == null ? null : (int) ChronoUnit.DAYS.between(last, on);
        return new YoungCard(row, sex, photo, days, days != null && days <= 0);
    }

    /** Those first that need somebody most: behind, then those that were offered nothing for longest; last those that live elsewhere, and the dead. */
    static Comparator<YoungCard> byNeed() {
        return Comparator.comparing((YoungCard card) -> !card.isInHand())
                .thenComparing(card -> !card.row.alive())
                .thenComparing(card -> card.row.behind().isEmpty())
                .thenComparing(
                        card -> card.daysSinceMeal == null ? Integer.MAX_VALUE : card.daysSinceMeal,
                        Comparator.reverseOrder())
                .thenComparing(card -> card.row.animal());
    }

    /** Whether the asker may write of it. */
    public boolean isInHand() {
        return row.alive() && row.held();
    }

    public boolean isBehind() {
        return !row.behind().isEmpty();
    }

    public boolean isRefusedLast() {
        return row.lastMeal() == Outcome.REFUSED;
    }

    public boolean isAssistedLast() {
        return row.lastMeal() == Outcome.ASSISTED;
    }

    /** What it waits for before it may leave. */
    public List<LeavingReason> missing() {
        return row.missing().stream().map(LeavingReason::of).toList();
    }
}
