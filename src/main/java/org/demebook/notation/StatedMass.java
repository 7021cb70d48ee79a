package org.demebook.notation;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.math.BigDecimal;

/**
 * A mass as it is sent, in the keeper's unit.
 *
 * @param value above 0
 * @param unit {@code g}, {@code oz}, {@code kg} or {@code lb}
 */
public record StatedMass(
        @NotNull @DecimalMin(value = "0", inclusive = false) @DecimalMax("200000") @Digits(integer = 6, fraction = 6)
        BigDecimal value,

        @NotNull @Pattern(regexp = "g|oz|kg|lb", message = "is g, oz, kg or lb")
        String unit) {
    private static final BigDecimal MOST_GRAMS = BigDecimal.valueOf(200_000);

    public Mass mass() {
        return Mass.of(value, Mass.Unit.parse(unit));
    }

    /** Heavier than any snake: 200 kg. */
    public boolean beyondAll() {
        return value.multiply(Mass.Unit.parse(unit).grams()).compareTo(MOST_GRAMS) > 0;
    }
}
