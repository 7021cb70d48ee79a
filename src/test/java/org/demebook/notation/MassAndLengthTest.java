package org.demebook.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

/**
 * The factors are exact by definition: 1 lb = 453.59237 g, of which an ounce is a sixteenth, and 1 in = 25.4 mm (NIST
 * Special Publication 811, appendix B.8; from memory).
 */
class MassAndLengthTest {
    @Test
    void a_pound_is_453_59237_grams_and_sixteen_ounces() {
        assertThat(Mass.of(BigDecimal.ONE, Mass.Unit.LB).milligrams()).isEqualTo(453_592);
        assertThat(Mass.Unit.OZ.grams().multiply(BigDecimal.valueOf(16))).isEqualByComparingTo(Mass.Unit.LB.grams());
    }

    @Test
    void an_ounce_is_28_349523125_grams_to_the_milligram() {
        assertThat(Mass.of(BigDecimal.ONE, Mass.Unit.OZ).milligrams()).isEqualTo(28_350);
        assertThat(Mass.of(new BigDecimal("1.1"), Mass.Unit.OZ).milligrams()).isEqualTo(31_184);
        assertThat(Mass.of(BigDecimal.valueOf(1000), Mass.Unit.OZ).milligrams()).isEqualTo(28_349_523);
    }

    @Test
    void an_inch_is_25_4_millimetres() {
        assertThat(Length.of(BigDecimal.TEN, Length.Unit.IN).millimetres()).isEqualTo(254);
        assertThat(Length.of(new BigDecimal("15.7"), Length.Unit.IN).millimetres())
                .isEqualTo(399);
        assertThat(Length.of(new BigDecimal("40.5"), Length.Unit.CM).millimetres())
                .isEqualTo(405);
    }

    @Test
    void what_was_written_is_kept_beside_what_it_means() {
        assertThat(Mass.of(new BigDecimal("1.10"), Mass.Unit.OZ).written()).isEqualTo("1.10 oz");
        assertThat(Length.of(new BigDecimal("16"), Length.Unit.IN).written()).isEqualTo("16 in");
    }

    @Test
    void grams_are_told_without_zeros_at_the_end() {
        assertThat(Mass.grams(30_000).toString()).isEqualTo("30");
        assertThat(Mass.grams(31_250).toString()).isEqualTo("31.25");
        assertThat(Mass.grams(1).toString()).isEqualTo("0.001");
    }

    @Test
    void another_unit_is_refused_with_those_that_are_known() {
        assertThatThrownBy(() -> Mass.Unit.parse("st")).hasMessageContaining("g, oz, kg or lb");
        assertThatThrownBy(() -> Length.Unit.parse("ft")).hasMessageContaining("cm, in or mm");
        assertThatThrownBy(() -> Length.Kind.parse("girth")).hasMessageContaining("snout-vent or total");
    }

    @Test
    void what_no_snake_weighs_is_told_apart_in_every_unit() {
        assertThat(new StatedMass(new BigDecimal("200000"), "g").beyondAll()).isFalse();
        assertThat(new StatedMass(new BigDecimal("201"), "kg").beyondAll()).isTrue();
        assertThat(new StatedMass(new BigDecimal("440"), "lb").beyondAll()).isFalse();
        assertThat(new StatedMass(new BigDecimal("441"), "lb").beyondAll()).isTrue();
    }
}
