package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountRangeTest {
    @ParameterizedTest
    @CsvSource({
        "0, fewer than 3",
        "2, fewer than 3",
        "3, 3 to 5",
        "5, 3 to 5",
        "6, 6 to 10",
        "10, 6 to 10",
        "11, 11 to 20",
        "50, 21 to 50",
        "51, more than 50"
    })
    void the_number_of_keepers_is_told_as_a_range(int households, String range) {
        assertThat(CountRange.of(households)).isEqualTo(range);
    }
}
