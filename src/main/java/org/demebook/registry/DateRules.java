package org.demebook.registry;

import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.demebook.notation.RoughDate;
import org.demebook.problem.Rule;
import org.jspecify.annotations.Nullable;

/** What a single date shows of itself: that it lies ahead, that it stands for nothing, that day and month may be swapped. */
public final class DateRules {
    private static final LocalDate PLACEHOLDER = LocalDate.of(1900, 1, 1);
    private static final int MONTHS = 12;

    private final LocalDate today;

    public DateRules(LocalDate today) {
        this.today = today;
    }

    /** @param date null when unknown */
    public List<Breach> check(String field, @Nullable RoughDate date) {
        var breaches = new ArrayList<Breach>();
        if (date != null && liesAhead(date)) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE,
                    Rule.DATE_IN_FUTURE,
                    field,
                    date,
                    "%s lies in the future, today is %s; check the year.".formatted(date, today),
                    swapped(date)
                            .map("Day and month may be swapped: %s has been."::formatted)
                            .orElse(null)));
        }
        if (date != null && date.day().filter(PLACEHOLDER::equals).isPresent()) {
            breaches.add(Breach.warning(
                    Rule.DATE_PLACEHOLDER,
                    field,
                    date,
                    "%s is the day that programs write where no date is known. Leave the date out, or write what is known of it: a year, a month, before or after a day."
                            .formatted(date),
                    "The date: nearly no snake of today was born or died on that day."));
        }
        return breaches;
    }

    /** The same date with day and month the other way round; empty when that is none, or a day that has not come yet. */
    public Optional<RoughDate> swapped(@Nullable RoughDate date) {
        var day = date == null ? null : date.day().orElse(null);
        if (day == null || day.getDayOfMonth() > MONTHS || day.getDayOfMonth() == day.getMonthValue()) {
            return Optional.empty();
        }
        return Optional.of(RoughDate.of(LocalDate.of(day.getYear(), day.getDayOfMonth(), day.getMonthValue())))
                .filter(other -> !liesAhead(other));
    }

    private boolean liesAhead(RoughDate date) {
        // a day of grace: it may be tomorrow already where the keeper lives
        return date.earliest() != null && date.earliest().isAfter(today.plusDays(1));
    }
}
