package org.demebook.incubation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotNull;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * A temperature as it was read off.
 *
 * @param unit {@code c} for degrees Celsius, {@code f} for degrees Fahrenheit
 */
public record Temperature(
        @NotNull @DecimalMin("-100") @DecimalMax("200") @Digits(integer = 3, fraction = 2)
        BigDecimal value,

        @NotNull Scale unit) {
    private static final BigDecimal FREEZING = BigDecimal.valueOf(32);
    private static final BigDecimal NINE = BigDecimal.valueOf(9);
    private static final BigDecimal FIVE = BigDecimal.valueOf(5);

    /** Of the scale that a thermometer has. */
    public enum Scale {
        C,
        F;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Scale parse(String letter) {
            return switch (letter.strip().toLowerCase(Locale.ROOT)) {
                case "c" -> C;
                case "f" -> F;
                default -> throw new IllegalArgumentException("Write c or f");
            };
        }

        @JsonValue
        public String letter() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** In °C, to the hundredth. */
    public BigDecimal celsius() {
        return unit == Scale.C
                ? value.setScale(2, RoundingMode.HALF_UP)
                : value.subtract(FREEZING).multiply(FIVE).divide(NINE, 2, RoundingMode.HALF_UP);
    }

    /** In °F, to the tenth. */
    static BigDecimal fahrenheit(BigDecimal celsius) {
        return celsius.multiply(NINE)
                .divide(FIVE, 4, RoundingMode.HALF_UP)
                .add(FREEZING)
                .setScale(1, RoundingMode.HALF_UP);
    }

    String written() {
        return value.toPlainString() + " °" + unit;
    }
}
