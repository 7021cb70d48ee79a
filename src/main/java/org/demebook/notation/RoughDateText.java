package org.demebook.notation;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Month;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a {@link RoughDate}, and says of what it refuses how to write it. */
final class RoughDateText {
    private static final int LONGEST_TEXT = 40;
    private static final Pattern DASH = Pattern.compile("[\\p{Pd}\\u2212\\u00AD]");
    private static final Pattern SPACE = Pattern.compile("[\\s\\p{Z}\\u200B\\uFEFF]+");

    private static final Pattern DATE = Pattern.compile("([0-9]{4})(?:-([0-9]{2})(?:-([0-9]{2}))?)?");
    // A set open at one end, "this day or one before it", says the same as the interval and is read as well.
    private static final Pattern OPEN_START =
            Pattern.compile("(?:\\.\\./(?<interval>[^\\[\\]]+)|\\[\\.\\.(?<set>.+)])");
    private static final Pattern OPEN_END = Pattern.compile("(?:(?<interval>[^\\[\\]]+)/\\.\\.|\\[(?<set>.+)\\.\\.])");
    private static final Pattern WORDS = Pattern.compile("(?<or>on or )?(?<side>before|after) (?<date>.+)");

    private static final Pattern YEAR_FIRST = Pattern.compile("([0-9]{4})[-./ ]+([0-9]{1,2})[-./ ]+([0-9]{1,2})");
    private static final Pattern YEAR_LAST = Pattern.compile("([0-9]{1,2})[-./ ]+([0-9]{1,2})[-./ ]+([0-9]{4})");

    private static final DateTimeFormatter IN_WORDS = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final String HOW_TO_WRITE_IT =
            "Write the date like 2026-06-29, or 2026-06 or 2026 if no more is known, or before 2026-06-29,"
                    + " or after 2026-06-29";

    private RoughDateText() {}

    static RoughDate read(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new IllegalArgumentException("This is too long for a date. " + HOW_TO_WRITE_IT);
        }
        String plain = SPACE.matcher(DASH.matcher(text).replaceAll("-"))
                .replaceAll(" ")
                .strip();
        String lower = plain.toLowerCase(Locale.ROOT);

        var words = WORDS.matcher(lower);
        if (words.matches()) {
            return bound(words.group("side").equals("before"), date(words.group("date")), words.group("or") != null);
        }
        var openStart = OPEN_START.matcher(lower);
        if (openStart.matches()) {
            return bound(true, date(eitherOf(openStart)), true);
        }
        var openEnd = OPEN_END.matcher(lower);
        if (openEnd.matches()) {
            return bound(false, date(eitherOf(openEnd)), true);
        }
        return date(lower);
    }

    private static String eitherOf(Matcher bound) {
        return Optional.ofNullable(bound.group("interval")).orElseGet(() -> bound.group("set"));
    }

    private static RoughDate bound(boolean before, RoughDate date, boolean inclusive) {
        var first = Objects.requireNonNull(date.earliest());
        var last = Objects.requireNonNull(date.latest());
        if (!inclusive && date.precision() != RoughDate.Precision.DAY) {
            throw new IllegalArgumentException(
                    before
                            ? "Before %s: before it began, or before it ended? Write before %s or before %s"
                                    .formatted(date, first.minusDays(1), last)
                            : "After %s: after it began, or after it ended? Write after %s or after %s"
                                    .formatted(date, first, last.plusDays(1)));
        }
        return before ? RoughDate.onOrBefore(last) : RoughDate.onOrAfter(first);
    }

    private static RoughDate date(String text) {
        var match = DATE.matcher(text);
        if (!match.matches()) {
            throw new IllegalArgumentException(refusal(text));
        }
        int year = Integer.parseInt(match.group(1));
        if (match.group(2) == null) {
            return RoughDate.ofYear(year);
        }
        int month = Integer.parseInt(match.group(2));
        if (month < 1 || month > 12) {
            throw new IllegalArgumentException(
                    "%s does not exist: months go from 01 to 12; look at the date again".formatted(text));
        }
        if (match.group(3) == null) {
            return RoughDate.ofMonth(year, Month.of(month));
        }
        int day = Integer.parseInt(match.group(3));
        var wholeMonth = YearMonth.of(year, month);
        if (!wholeMonth.isValidDay(day)) {
            throw new IllegalArgumentException("%s does not exist: %s %d has %d days; look at the date again"
                    .formatted(text, nameOf(wholeMonth), year, wholeMonth.lengthOfMonth()));
        }
        return RoughDate.of(wholeMonth.atDay(day));
    }

    private static String nameOf(YearMonth month) {
        return month.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private static String refusal(String text) {
        var yearFirst = YEAR_FIRST.matcher(text);
        if (yearFirst.matches()) {
            return suggestion(
                    existing(number(yearFirst, 1), number(yearFirst, 2), number(yearFirst, 3)), Optional.empty());
        }
        var yearLast = YEAR_LAST.matcher(text);
        if (yearLast.matches()) {
            int year = number(yearLast, 3);
            return suggestion(
                    existing(year, number(yearLast, 2), number(yearLast, 1)),
                    existing(year, number(yearLast, 1), number(yearLast, 2)));
        }
        return "This does not read as a date. " + HOW_TO_WRITE_IT;
    }

    private static int number(MatchResult match, int group) {
        return Integer.parseInt(match.group(group));
    }

    private static Optional<LocalDate> existing(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException noSuchDay) {
            return Optional.empty();
        }
    }

    private static String suggestion(Optional<LocalDate> first, Optional<LocalDate> second) {
        if (first.isPresent() && second.isPresent() && !first.equals(second)) {
            return "%s or %s? Write %s or %s"
                    .formatted(inWords(first.get()), inWords(second.get()), first.get(), second.get());
        }
        return first.or(() -> second)
                .map(day -> "If this is %s, write %s".formatted(inWords(day), day))
                .orElse("There is no such day. " + HOW_TO_WRITE_IT);
    }

    private static String inWords(LocalDate day) {
        return IN_WORDS.format(day);
    }
}
