package org.demebook.plot;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/** Ticks of a calendar: days, the first of months, the first of years, at steps that go evenly into the next unit. */
final class DayTicks {
    private static final int[] DAYS = {1, 2, 5, 10};
    private static final int[] MONTHS = {1, 2, 3, 6};

    private DayTicks() {}

    /** At most so many, in the finest step that allows it. */
    static List<Tick> within(LocalDate from, LocalDate to, int atMost, Dates dates) {
        long days = ChronoUnit.DAYS.between(from, to);
        for (int step : DAYS) {
            if (days / step + 1 <= atMost) {
                return every(from, step, to, ChronoUnit.DAYS, dates);
            }
        }
        var month = from.getDayOfMonth() == 1 ? from : from.withDayOfMonth(1).plusMonths(1);
        for (int step : MONTHS) {
            var first = month.plusMonths(Math.floorMod(1 - month.getMonthValue(), step));
            if (!first.isAfter(to) && ChronoUnit.MONTHS.between(first, to) / step + 1 <= atMost) {
                return every(first, step, to, ChronoUnit.MONTHS, dates);
            }
        }
        var year = from.getDayOfYear() == 1 ? from : from.withDayOfYear(1).plusYears(1);
        for (int power = 1; ; power *= 10) {
            for (int step : new int[] {power, 2 * power, 5 * power}) {
                var first = year.plusYears(Math.floorMod(-year.getYear(), step));
                if (first.isAfter(to) || ChronoUnit.YEARS.between(first, to) / step + 1 <= atMost) {
                    return every(first, step, to, ChronoUnit.YEARS, dates);
                }
            }
        }
    }

    private static List<Tick> every(LocalDate first, int step, LocalDate to, ChronoUnit unit, Dates dates) {
        var write =
                switch (unit) {
                    case DAYS -> dates.day();
                    case MONTHS -> dates.month();
                    default -> dates.year();
                };
        var ticks = new ArrayList<Tick>();
        for (var day = first; !day.isAfter(to); day = day.plus(step, unit)) {
            ticks.add(new Tick(day.toEpochDay(), write.apply(day)));
        }
        return ticks;
    }
}
