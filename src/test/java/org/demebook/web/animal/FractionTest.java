package org.demebook.web.animal;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A kinship is read as a fraction where it is one. Whole and half siblings: Wright (1922), Am. Nat. 56: 330–338; from memory. */
class FractionTest {
    @ParameterizedTest
    @CsvSource({"0.25,1/4", "0.125,1/8", "0.15625,5/32", "0,0", "1,1", "0.625,5/8", "0.00048828125,1/2048"})
    void a_figure_of_whole_parts_is_a_fraction(double figure, String fraction) {
        assertThat(Fraction.of(figure)).isEqualTo(fraction);
    }

    @ParameterizedTest
    @CsvSource({"0.1", "0.3333333333", "0.0851063"})
    void any_other_is_none(double figure) {
        assertThat(Fraction.of(figure)).isEmpty();
    }
}
