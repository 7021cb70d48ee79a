package org.demebook.incubation;

import com.fasterxml.jackson.annotation.JsonValue;
import java.math.BigDecimal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a reading says against the set point. */
public enum Warmth {
    AS_SET(null),
    TOO_COOL("More than 2 °C below the set point: hatching will be late. Check the thermostat and the lid."),
    TOO_WARM("More than 2 °C above the set point: check the thermostat and where its probe lies."),
    OVERHEATED(
            "Above 33.3 °C (92 °F), at which python eggs hatched early and deformed: cool the eggs down slowly, now, and check the thermostat.");

    /** So far from the set point is worth a look; common practice, no source. */
    static final BigDecimal TOLERANCE_CELSIUS = BigDecimal.valueOf(2);

    /** 92 °F; general pages on ball pythons. */
    static final BigDecimal OVERHEATED_CELSIUS = new BigDecimal("33.3");

    private final @Nullable String advice;

    Warmth(@Nullable String advice) {
        this.advice = advice;
    }

    static Warmth of(BigDecimal celsius, BigDecimal setPointCelsius) {
        if (celsius.compareTo(OVERHEATED_CELSIUS) > 0) {
            return OVERHEATED;
        }
        var above = celsius.subtract(setPointCelsius);
        if (above.abs().compareTo(TOLERANCE_CELSIUS) <= 0) {
            return AS_SET;
        }
        return above.signum() > 0 ? TOO_WARM : TOO_COOL;
    }

    /** What to do; null when nothing. */
    @Nullable
    String advice() {
        return advice;
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
