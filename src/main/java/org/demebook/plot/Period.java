package org.demebook.plot;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;

/** What frequent events are counted by. */
enum Period {
    WEEK,
    MONTH,
    YEAR;

    /** The finest of which a picture holds some ninety beside each other. */
    static Period forDays(long days) {
        return days <= 400 ? WEEK : days <= 8 * 366 ? MONTH : YEAR;
    }

    LocalDate begin(LocalDate day) {
        return switch (this) {
            case WEEK -> day.with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
            case MONTH -> day.withDayOfMonth(1);
            case YEAR -> day.withDayOfYear(1);
        };
    }

    LocalDate end(LocalDate begin) {
        return switch (this) {
            case WEEK -> begin.plus(1, ChronoUnit.WEEKS);
            case MONTH -> begin.plusMonths(1);
            case YEAR -> begin.plusYears(1);
        };
    }

    String write(LocalDate begin, Dates dates) {
        return switch (this) {
            case WEEK -> dates.day().apply(begin) + " – " + dates.day().apply(begin.plusDays(6));
            case MONTH -> dates.month().apply(begin);
            case YEAR -> dates.year().apply(begin);
        };
    }

    /** As HTML's {@code time} takes it: a day for a week, since readers know days better than numbers of weeks. */
    String machine(LocalDate begin) {
        var day = begin.toString();
        return switch (this) {
            case WEEK -> day;
            case MONTH -> day.substring(0, 7);
            case YEAR -> day.substring(0, 4);
        };
    }
}
