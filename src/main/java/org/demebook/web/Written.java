package org.demebook.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.demebook.notation.Mass;
import org.demebook.notation.RoughDate;
import org.jspecify.annotations.Nullable;

/** Days, masses, lengths and numbers, written as somebody wants them. What is not there is written as nothing. */
final class Written {
    private static final BigDecimal MM_PER_INCH = new BigDecimal("25.4"); // exact, international inch of 1959
    private static final BigDecimal MM_PER_CM = BigDecimal.TEN;

    private Written() {}

    static String day(@Nullable LocalDate day, Preferences wanted) {
        if (day == null) {
            return "";
        }
        return switch (wanted.dates()) {
            case ISO -> day.toString();
            case MONTH_FIRST -> day.format(DateTimeFormatter.ofPattern("MM/dd/uuuu"));
            case WORDS ->
                day.format(DateTimeFormatter.ofPattern(
                        wanted.language() == Preferences.Language.DE ? "d. MMM uuuu" : "d MMM uuuu",
                        wanted.language().locale()));
        };
    }

    static String day(@Nullable RoughDate date, Preferences wanted) {
        if (date == null) {
            return "";
        }
        return switch (date.precision()) {
            case DAY -> day(date.earliest(), wanted);
            case MONTH -> month(date, wanted);
            case YEAR -> date.toString();
            case BEFORE -> "≤ " + day(date.latest(), wanted);
            case AFTER -> "≥ " + day(date.earliest(), wanted);
        };
    }

    private static String month(RoughDate date, Preferences wanted) {
        return wanted.dates() == Preferences.Dates.WORDS && date.earliest() != null
                ? YearMonth.from(date.earliest())
                        .format(DateTimeFormatter.ofPattern(
                                "MMM uuuu", wanted.language().locale()))
                : date.toString();
    }

    static String mass(@Nullable BigDecimal grams, Preferences wanted) {
        if (grams == null) {
            return "";
        }
        var unit = wanted.mass();
        var value = grams.divide(unit.grams(), unit == Mass.Unit.G ? 1 : 2, RoundingMode.HALF_UP);
        return plain(value, wanted.language().locale()) + " " + unit.word();
    }

    static String length(@Nullable BigDecimal millimetres, Preferences wanted) {
        if (millimetres == null) {
            return "";
        }
        var inches = wanted.length() == Preferences.LengthUnit.IN;
        var value = millimetres.divide(inches ? MM_PER_INCH : MM_PER_CM, 1, RoundingMode.HALF_UP);
        return plain(value, wanted.language().locale()) + (inches ? " in" : " cm");
    }

    static String number(@Nullable Number value, int digits, Locale locale) {
        if (value == null || value instanceof Double d && d.isNaN()) {
            return "";
        }
        var format = NumberFormat.getNumberInstance(locale);
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(digits);
        format.setRoundingMode(RoundingMode.HALF_UP);
        return format.format(value);
    }

    private static String plain(BigDecimal value, Locale locale) {
        var format = NumberFormat.getNumberInstance(locale);
        format.setMaximumFractionDigits(2);
        return format.format(value);
    }
}
