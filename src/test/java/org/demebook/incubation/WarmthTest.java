package org.demebook.incubation;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import org.demebook.incubation.Temperature.Scale;
import org.junit.jupiter.api.Test;

class WarmthTest {
    /** Definition of the Fahrenheit scale; the pairs stand side by side in care sheets (common practice, no source). */
    @Test
    void degrees_fahrenheit_become_degrees_celsius() {
        assertThat(celsius("32", Scale.F)).isEqualByComparingTo("0");
        assertThat(celsius("212", Scale.F)).isEqualByComparingTo("100");
        assertThat(celsius("-40", Scale.F)).isEqualByComparingTo("-40");
        assertThat(celsius("88", Scale.F)).isEqualByComparingTo("31.11");
        assertThat(celsius("92", Scale.F)).isEqualByComparingTo("33.33");
        assertThat(celsius("31.5", Scale.C)).isEqualByComparingTo("31.5");
        assertThat(Temperature.fahrenheit(new BigDecimal("31.11"))).isEqualByComparingTo("88.0");
    }

    @Test
    void more_than_two_degrees_off_the_set_point_is_too_cool_or_too_warm() {
        assertThat(warmth("25.8", "27.8")).isEqualTo(Warmth.AS_SET);
        assertThat(warmth("25.7", "27.8")).isEqualTo(Warmth.TOO_COOL);
        assertThat(warmth("29.8", "27.8")).isEqualTo(Warmth.AS_SET);
        assertThat(warmth("29.9", "27.8")).isEqualTo(Warmth.TOO_WARM);
    }

    /** General pages on ball pythons: above 33.3 °C (92 °F) eggs hatch early and deformed. */
    @Test
    void above_33_3_degrees_eggs_are_overheated_whatever_the_set_point() {
        assertThat(warmth("33.3", "31.5")).isEqualTo(Warmth.AS_SET);
        assertThat(warmth("33.4", "31.5")).isEqualTo(Warmth.OVERHEATED);
        assertThat(Warmth.OVERHEATED.advice()).contains("33.3 °C (92 °F)");
        assertThat(Warmth.AS_SET.advice()).isNull();
    }

    private static BigDecimal celsius(String value, Scale unit) {
        return new Temperature(new BigDecimal(value), unit).celsius();
    }

    private static Warmth warmth(String celsius, String setPoint) {
        return Warmth.of(new BigDecimal(celsius), new BigDecimal(setPoint));
    }
}
