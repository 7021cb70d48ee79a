package org.demebook.gestation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/**
 * How the day of a breeding sign is known, and by how many days it may be off.
 *
 * <p>The doubt is that of a day drawn evenly from a span: its standard deviation is the length of the span by √12. Spans are
 * common practice, no source; the day itself is taken as it was noted.
 */
public enum HowKnown {
    /** Seen on that day. */
    SEEN(0),
    /** The skin was found on that day; it may have lain there for up to a week. */
    SKIN_FOUND(7),
    /** Reckoned from other signs: two weeks before or after. */
    GUESSED(28);

    private final int spanDays;

    HowKnown(int spanDays) {
        this.spanDays = spanDays;
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static HowKnown parse(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "seen" -> SEEN;
            case "skin-found" -> SKIN_FOUND;
            case "guessed" -> GUESSED;
            default -> throw new IllegalArgumentException("Write seen, skin-found or guessed");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Variance of the day, in days². */
    double variance() {
        return ofSpan(spanDays);
    }

    /** Variance, in days², of a day drawn evenly from a span of so many days. */
    static double ofSpan(double days) {
        return days * days / 12;
    }
}
