package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.time.LocalDate;
import java.time.Month;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A date as precisely as it is known: a day, a month, a year, or no more than a bound.
 *
 * <p>Written as in the Extended Date/Time Format of ISO 8601-2: {@code 2026-06-29}, {@code 2026-06}, {@code 2026},
 * on or before {@code ../2026-06-29}, on or after {@code 2026-06-29/..}. Years from 1800 to 2200.
 *
 * @param earliest the first day that it can have been; null: open towards the past
 * @param latest the last day that it can have been; null: open towards the future
 */
public record RoughDate(
        @Nullable LocalDate earliest, @Nullable LocalDate latest, Precision precision) {

    /** How much is known. {@code BEFORE} and {@code AFTER} include the day that they name. */
    public enum Precision {
        DAY,
        MONTH,
        YEAR,
        BEFORE,
        AFTER
    }

    static final int FIRST_YEAR = 1800;
    static final int LAST_YEAR = 2200;

    public RoughDate {
        requireYearInRange(earliest);
        requireYearInRange(latest);
        if (!fits(earliest, latest, precision)) {
            throw new IllegalArgumentException(
                    "From %s to %s is not a date known to the precision %s".formatted(earliest, latest, precision));
        }
    }

    public static RoughDate of(LocalDate day) {
        return new RoughDate(day, day, Precision.DAY);
    }

    public static RoughDate ofMonth(int year, Month month) {
        var first = LocalDate.of(year, month, 1);
        return new RoughDate(first, first.withDayOfMonth(first.lengthOfMonth()), Precision.MONTH);
    }

    public static RoughDate ofYear(int year) {
        return new RoughDate(LocalDate.of(year, 1, 1), LocalDate.of(year, 12, 31), Precision.YEAR);
    }

    public static RoughDate onOrBefore(LocalDate latest) {
        return new RoughDate(null, latest, Precision.BEFORE);
    }

    public static RoughDate onOrAfter(LocalDate earliest) {
        return new RoughDate(earliest, null, Precision.AFTER);
    }

    /**
     * Reads the written form, and also {@code before 2026-06-29} and {@code after 2026-06-29}, both including the day.
     *
     * @throws IllegalArgumentException with a sentence for the keeper; a day and month that could be read in two ways
     *     are refused with both readings
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static RoughDate parse(String text) {
        return RoughDateText.read(text);
    }

    /** The day, if it is known to the day. */
    public Optional<LocalDate> day() {
        return precision == Precision.DAY ? Optional.ofNullable(earliest) : Optional.empty();
    }

    /** Whether every day that this can have been lies before every day that the other can have been. */
    public boolean surelyBefore(RoughDate other) {
        return other.earliest != null && surelyBefore(other.earliest);
    }

    public boolean surelyBefore(LocalDate day) {
        return latest != null && latest.isBefore(day);
    }

    public boolean surelyAfter(RoughDate other) {
        return other.surelyBefore(this);
    }

    private static void requireYearInRange(@Nullable LocalDate day) {
        if (day != null && (day.getYear() < FIRST_YEAR || day.getYear() > LAST_YEAR)) {
            throw new IllegalArgumentException(
                    "The year %d is out of range: a studbook knows the years from %d to %d; read the date again"
                            .formatted(day.getYear(), FIRST_YEAR, LAST_YEAR));
        }
    }

    private static boolean fits(@Nullable LocalDate earliest, @Nullable LocalDate latest, Precision precision) {
        if (earliest == null || latest == null) {
            return earliest == null && latest != null && precision == Precision.BEFORE
                    || earliest != null && latest == null && precision == Precision.AFTER;
        }
        return switch (precision) {
            case DAY -> earliest.equals(latest);
            case MONTH ->
                earliest.getDayOfMonth() == 1
                        && latest.equals(earliest.plusMonths(1).minusDays(1));
            case YEAR ->
                earliest.getDayOfYear() == 1
                        && latest.equals(earliest.plusYears(1).minusDays(1));
            case BEFORE, AFTER -> false;
        };
    }

    /** The written form, which {@link #parse} reads back. */
    @Override
    @JsonValue
    public String toString() {
        return switch (precision) {
            case DAY -> "" + earliest;
            case MONTH -> ("" + earliest).substring(0, "2026-06".length());
            case YEAR -> ("" + earliest).substring(0, "2026".length());
            case BEFORE -> "../" + latest;
            case AFTER -> earliest + "/..";
        };
    }
}
