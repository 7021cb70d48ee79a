package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Round values for the ticks of an axis: steps of 1, 2 or 5 times a power of ten.
 *
 * <p>Source: P. S. Heckbert, "Nice numbers for graph labels", Graphics Gems (1990), p. 61–63; its two
 * examples are in the test.
 */
final class Ticks {
    private Ticks() {}

    /**
     * An axis that encloses all values, its ticks from its beginning to its end.
     *
     * <p>Equal values get an axis around them, of one tick to either side.
     *
     * @param about how many ticks are wanted; up to two more or some fewer come of it
     * @param decimals the step is no finer than this many places show
     */
    static List<Tick> around(double low, double high, int about, int decimals, Numbers numbers) {
        double step = step(low, high, about, decimals);
        double first = Math.floor(low / step + 1e-9);
        double last = Math.ceil(high / step - 1e-9);
        if (first == last) {
            first = low == 0 ? 0 : first - 1;
            last++;
        }
        return ticks(first, last, step, numbers);
    }

    /** Ticks between two values, at most so many, at least one if a round value lies between them. */
    static List<Tick> within(double low, double high, int atMost, int decimals, Numbers numbers) {
        double step = step(low, high, atMost, decimals);
        while (count(low, high, step) > atMost) {
            step = nice(step * 1.5, false);
        }
        return ticks(Math.ceil(low / step - 1e-9), Math.floor(high / step + 1e-9), step, numbers);
    }

    private static double count(double low, double high, double step) {
        return Math.floor(high / step + 1e-9) - Math.ceil(low / step - 1e-9) + 1;
    }

    private static double step(double low, double high, int about, int decimals) {
        double finest = Math.pow(10, -decimals);
        double range = high - low;
        double largest = Math.max(Math.abs(low), Math.abs(high));
        if (range <= 1e-9 * largest) { // what rounding leaves between equal values is no range
            return largest == 0 ? finest : Math.max(finest, nice(1e-6 * largest, false));
        }
        return Math.max(finest, nice(nice(range, false) / Math.max(1, about - 1), true));
    }

    /** Heckbert's nicenum: 1, 2, 5 or 10 times a power of ten, the nearest if rounded, else the next above. */
    private static double nice(double value, boolean rounded) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        double fraction = value / power;
        double nice;
        if (rounded) {
            nice = fraction < 1.5 ? 1 : fraction < 3 ? 2 : fraction < 7 ? 5 : 10;
        } else {
            nice = fraction <= 1 ? 1 : fraction <= 2 ? 2 : fraction <= 5 ? 5 : 10;
        }
        return nice * power;
    }

    private static List<Tick> ticks(double first, double last, double step, Numbers numbers) {
        int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
        var ticks = new ArrayList<Tick>();
        for (double at = first; at <= last; at++) {
            double value = at * step + 0.0; // no minus zero
            ticks.add(new Tick(value, numbers.write(value, decimals)));
        }
        return ticks;
    }
}
