package org.demebook.notation;

import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.math.BigDecimal;

/**
 * A length as it is sent, in the keeper's unit.
 *
 * @param value above 0
 * @param unit {@code cm}, {@code in} or {@code mm}
 */
public record StatedLength(
        @NotNull @DecimalMin(value = "0", inclusive = false) @DecimalMax("20000") @Digits(integer = 5, fraction = 4)
        BigDecimal value,

        @NotNull @Pattern(regexp = "cm|in|mm", message = "is cm, in or mm")
        String unit) {
    public Length length() {
        return Length.of(value, Length.Unit.parse(unit));
    }
}
