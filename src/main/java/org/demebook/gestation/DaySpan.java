package org.demebook.gestation;

import java.time.LocalDate;

/** From a first to a last day, both included. */
public record DaySpan(LocalDate fromOn, LocalDate untilOn) {
    /**
     * The days that hold the middle of a normal distribution. A day takes up half a day on both sides of its noon, so that
     * the window holds, on average, just the share that is asked for.
     *
     * @param z half-width in standard deviations
     */
    static DaySpan around(LocalDate start, double meanDays, double spreadDays, double z) {
        long first = Math.round(meanDays - z * spreadDays + 0.5);
        long last = Math.round(meanDays + z * spreadDays - 0.5);
        return new DaySpan(start.plusDays(Math.min(first, last)), start.plusDays(Math.max(first, last)));
    }

    public boolean contains(LocalDate day) {
        return !day.isBefore(fromOn) && !day.isAfter(untilOn);
    }
}
