package org.demebook.census;

import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Age classes of the published table. */
enum AgeClass {
    /** Not a year old. */
    YOUNG,
    /** A year old, and not old enough to breed. */
    JUVENILE,
    /** Old enough to breed. */
    ADULT,
    /** The birth is not known well enough to tell. */
    UNKNOWN;

    /**
     * @param earliest the first day on which it can have been born; null: open
     * @param latest the last day on which it can have been born; null: open
     */
    static AgeClass on(LocalDate day, @Nullable LocalDate earliest, @Nullable LocalDate latest, int daysOfAgeToBreed) {
        var oldest = earliest == null ? ADULT : born(earliest, day, daysOfAgeToBreed);
        var youngest = latest == null ? YOUNG : born(latest, day, daysOfAgeToBreed);
        return oldest == youngest ? oldest : UNKNOWN;
    }

    private static AgeClass born(LocalDate bornOn, LocalDate day, int daysOfAgeToBreed) {
        if (bornOn.plusYears(1).isAfter(day)) {
            return YOUNG;
        }
        return bornOn.plusDays(daysOfAgeToBreed).isAfter(day) ? JUVENILE : ADULT;
    }

    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
