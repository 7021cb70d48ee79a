package org.demebook.web.breeding;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.demebook.breeding.CycleView;
import org.jspecify.annotations.Nullable;

/** A cycle as pages show it: with a picture of its days, where a day is told. */
public record Awaited(CycleView cycle, @Nullable Days days) {

    public static Awaited of(CycleView cycle) {
        return new Awaited(
                cycle,
                Optional.ofNullable(cycle.due())
                        .map(due -> Days.of(due, cycle.onDay()))
                        .orElse(null));
    }

    public boolean isOverdue() {
        return cycle.due() != null && !cycle.onDay().isBefore(cycle.due().overdueOn());
    }

    public boolean isInLabour() {
        return cycle.stage() == CycleView.Stage.IN_LABOUR;
    }

    /** Days until the expected one; negative when it is past. */
    public long getDaysLeft() {
        return cycle.due() == null
                ? 0
                : ChronoUnit.DAYS.between(cycle.onDay(), cycle.due().expectedOn());
    }

    public long getDaysPast() {
        return -getDaysLeft();
    }

    /**
     * The likely days drawn along a line: places from its left end, in a picture that is {@value #WIDTH} wide.
     *
     * @param from where the likely days begin
     * @param length how long they are
     * @param innerFrom where the days begin in which half of the births fall
     * @param innerLength how long these are
     */
    public record Days(int from, int length, int innerFrom, int innerLength, int expected, int today) {
        private static final int WIDTH = 320;
        private static final int MARGIN = 10;
        private static final int DAYS_AROUND = 7;

        static Days of(CycleView.Due due, LocalDate today) {
            var first = earlier(due.earliestOn(), today).minusDays(DAYS_AROUND);
            var last = later(due.overdueOn(), today).plusDays(DAYS_AROUND);
            double perDay = (WIDTH - 2.0 * MARGIN) / ChronoUnit.DAYS.between(first, last);
            return new Days(
                    at(first, due.likely().fromOn(), perDay),
                    length(due.likely().fromOn(), due.likely().untilOn(), perDay),
                    at(first, due.halfOfBirths().fromOn(), perDay),
                    length(due.halfOfBirths().fromOn(), due.halfOfBirths().untilOn(), perDay),
                    at(first, due.expectedOn(), perDay),
                    at(first, today, perDay));
        }

        private static LocalDate earlier(LocalDate one, LocalDate other) {
            return one.isBefore(other) ? one : other;
        }

        private static LocalDate later(LocalDate one, LocalDate other) {
            return one.isAfter(other) ? one : other;
        }

        private static int at(LocalDate first, LocalDate day, double perDay) {
            return MARGIN + (int) Math.round(ChronoUnit.DAYS.between(first, day) * perDay);
        }

        private static int length(LocalDate from, LocalDate until, double perDay) {
            return Math.max(2, (int) Math.round((ChronoUnit.DAYS.between(from, until) + 1) * perDay));
        }
    }
}
