package org.demebook.web.animal;

import java.time.LocalDate;
import java.time.Period;
import java.time.temporal.ChronoUnit;
import org.demebook.notation.RoughDate;
import org.jspecify.annotations.Nullable;

/** How old an animal is, or became, in words: as finely as one says it of its age. */
final class Age {
    private static final int DAYS_TOLD = 90;
    private static final int YEARS_WITH_MONTHS = 3;

    private Age() {}

    /** Empty where it is not known. */
    static String of(@Nullable RoughDate born, @Nullable LocalDate until, AnimalMessages words) {
        var from = born == null ? null : born.earliest() == null ? born.latest() : born.earliest();
        if (born == null || from == null || until == null || until.isBefore(from)) {
            return "";
        }
        return born.precision() == RoughDate.Precision.DAY
                ? exactly(from, until, words)
                : words.about(words.years((int) ChronoUnit.YEARS.between(from, until)));
    }

    private static String exactly(LocalDate from, LocalDate until, AnimalMessages words) {
        long days = ChronoUnit.DAYS.between(from, until);
        var period = Period.between(from, until);
        if (days <= DAYS_TOLD) {
            return words.days(days);
        }
        if (period.getYears() == 0) {
            return words.months(period.getMonths());
        }
        return period.getYears() < YEARS_WITH_MONTHS && period.getMonths() > 0
                ? words.years(period.getYears()) + ", " + words.months(period.getMonths())
                : words.years(period.getYears());
    }
}
