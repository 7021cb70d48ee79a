package org.demebook.plot;

import java.math.RoundingMode;
import java.text.NumberFormat;
import java.util.Locale;

/** Writes numbers as the reader is used to. */
@FunctionalInterface
public interface Numbers {
    /** Writes a finite value with exactly so many decimals. */
    String write(double value, int decimals);

    /** With the decimal sign and the grouping of a language; halves are rounded away from zero. */
    static Numbers of(Locale locale) {
        return (value, decimals) -> format(NumberFormat.getNumberInstance(locale), value, decimals);
    }

    /** A part of one as per cent: two decimals fewer than the part has. */
    static Numbers percent(Locale locale) {
        return (value, decimals) -> format(NumberFormat.getPercentInstance(locale), value, Math.max(0, decimals - 2));
    }

    /** Without grouping, as years are written. */
    static Numbers years(Locale locale) {
        return (value, decimals) -> {
            var format = NumberFormat.getNumberInstance(locale);
            format.setGroupingUsed(false);
            return format(format, value, decimals);
        };
    }

    private static String format(NumberFormat format, double value, int decimals) {
        format.setMinimumFractionDigits(decimals);
        format.setMaximumFractionDigits(decimals);
        format.setRoundingMode(RoundingMode.HALF_UP);
        return format.format(value + 0.0); // no minus zero
    }
}
