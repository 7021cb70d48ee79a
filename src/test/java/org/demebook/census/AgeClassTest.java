package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.demebook.notation.RoughDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgeClassTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final int DAYS_OF_AGE_TO_BREED = 1095;

    @ParameterizedTest
    @CsvSource({
        "2026-06-01, YOUNG",
        "2025-06-02, YOUNG",
        "2025-06-01, JUVENILE",
        "2023-06-03, JUVENILE",
        "2023-06-02, ADULT",
        "1999-01-01, ADULT"
    })
    void the_classes_begin_on_the_first_birthday_and_on_the_day_of_age_to_breed(LocalDate bornOn, AgeClass expected) {
        assertThat(AgeClass.on(DAY, bornOn, bornOn, DAYS_OF_AGE_TO_BREED)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "2025, UNKNOWN",
        "2024, JUVENILE",
        "2023, UNKNOWN",
        "2022, ADULT",
        "2026, YOUNG",
        "../2020-01-01, ADULT",
        "../2025-01-01, UNKNOWN",
        "2026-01-01/.., YOUNG",
        "2020-01-01/.., UNKNOWN"
    })
    void a_birth_that_is_known_roughly_has_a_class_where_every_possible_day_gives_the_same(
            String born, AgeClass expected) {
        var rough = RoughDate.parse(born);
        assertThat(AgeClass.on(DAY, rough.earliest(), rough.latest(), DAYS_OF_AGE_TO_BREED))
                .isEqualTo(expected);
    }

    @Test
    void an_unknown_birth_has_no_class() {
        assertThat(AgeClass.on(DAY, null, null, DAYS_OF_AGE_TO_BREED)).isEqualTo(AgeClass.UNKNOWN);
    }
}
