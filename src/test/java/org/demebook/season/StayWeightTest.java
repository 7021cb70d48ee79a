package org.demebook.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked out by hand: 1 + ¼ + 1/16 + … over the seasons that are left, in parts of those of a young. */
class StayWeightTest {
    @ParameterizedTest
    @CsvSource({
        "0, 4, 0",
        "1, 4, 64/85",
        "2, 4, 16/17",
        "3, 4, 84/85",
        "4, 4, 1/1",
        "9, 4, 1/1",
        "1, 2.5, 32/41",
        "2.5, 4, 82/85",
        "1, 1, 1/1"
    })
    void a_season_further_on_counts_a_quarter(double left, double ofYoung, String expected) {
        var parts = expected.split("/");
        double exact = parts.length == 1 ? 0 : Double.parseDouble(parts[0]) / Double.parseDouble(parts[1]);
        assertThat(StayWeight.of(left, ofYoung)).isCloseTo(exact, within(1e-15));
    }

    @Test
    void no_animal_stays_for_less_than_no_season() {
        assertThatIllegalArgumentException().isThrownBy(() -> StayWeight.of(-1, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> StayWeight.of(Double.NaN, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> StayWeight.of(1, 0));
    }
}
