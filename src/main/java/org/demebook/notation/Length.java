package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Locale;

/**
 * What somebody measured, and how they wrote it down.
 *
 * @param millimetres rounded to the nearest
 * @param written value and unit, such as {@code 18 in}
 */
public record Length(int millimetres, String written) {
    /**
     * Units of length with their exact factors: international yard and pound agreement of 1959, as in NIST Special
     * Publication 811, appendix B.
     */
    public enum Unit {
        CM("10"),
        IN("25.4"),
        MM("1");

        private final BigDecimal millimetres;

        Unit(String millimetres) {
            this.millimetres = new BigDecimal(millimetres);
        }

        public BigDecimal millimetres() {
            return millimetres;
        }

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Unit parse(String text) {
            return Arrays.stream(values())
                    .filter(unit -> unit.word().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("A length is in cm, in or mm"));
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** From where to where a snake was measured. */
    public enum Kind {
        SNOUT_VENT,
        TOTAL;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Kind parse(String text) {
            return Arrays.stream(values())
                    .filter(kind -> kind.word().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new IllegalArgumentException("A length is snout-vent or total"));
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** @throws ArithmeticException beyond 2 000 km */
    public static Length of(BigDecimal value, Unit unit) {
        var millimetres = value.multiply(unit.millimetres()).setScale(0, RoundingMode.HALF_UP);
        return new Length(millimetres.intValueExact(), value.toPlainString() + " " + unit.word());
    }
}
