package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Locale;

/**
 * What somebody weighed, and how they wrote it down.
 *
 * @param milligrams rounded to the nearest
 * @param written value and unit, such as {@code 1.1 oz}
 */
public record Mass(int milligrams, String written) {
    /**
     * Units of mass with their exact factors: international yard and pound agreement of 1959, as in NIST Special
     * Publication 811, appendix B.
     */
    public enum Unit {
        G("1"),
        OZ("28.349523125"),
        KG("1000"),
        LB("453.59237");

        private final BigDecimal grams;

        Unit(String grams) {
            this.grams = new BigDecimal(grams);
        }

        public BigDecimal grams() {
            return grams;
        }

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Unit parse(String text) {
            return Arrays.stream(values())
                    .filter(unit -> unit.word().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("A mass is in g, oz, kg or lb"));
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** @throws ArithmeticException beyond two tonnes */
    public static Mass of(BigDecimal value, Unit unit) {
        var milligrams = value.multiply(unit.grams()).movePointRight(3).setScale(0, RoundingMode.HALF_UP);
        return new Mass(milligrams.intValueExact(), value.toPlainString() + " " + unit.word());
    }

    public BigDecimal grams() {
        return grams(milligrams);
    }

    /** Without zeros at the end. */
    public static BigDecimal grams(int milligrams) {
        var grams = BigDecimal.valueOf(milligrams, 3).stripTrailingZeros();
        return grams.scale() < 0 ? grams.setScale(0) : grams;
    }
}
