package org.demebook.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Against CLDR as the JDK has it. */
class NumbersTest {
    @Test
    void numbers_are_written_as_the_language_does() {
        assertThat(Numbers.of(Locale.ENGLISH).write(1234.5, 2)).isEqualTo("1,234.50");
        assertThat(Numbers.of(Locale.GERMAN).write(1234.5, 2)).isEqualTo("1.234,50");
        assertThat(Numbers.of(Locale.GERMAN).write(1 / 16., 3)).isEqualTo("0,063");
        assertThat(Numbers.of(Locale.ENGLISH).write(-0.0, 0)).isEqualTo("0");
        assertThat(Numbers.years(Locale.ENGLISH).write(2026, 0)).isEqualTo("2026");
        assertThat(Numbers.percent(Locale.ENGLISH).write(.125, 3)).isEqualTo("12.5%");
        assertThat(Numbers.percent(Locale.GERMAN).write(.125, 3)).isEqualTo("12,5\u00a0%");
    }

    @Test
    void days_are_written_as_the_language_does() {
        var dates = Dates.of(Locale.GERMAN);
        var day = LocalDate.of(2026, 6, 29);
        assertThat(dates.day().apply(day)).isEqualTo("29.06.2026");
        assertThat(dates.month().apply(day)).isEqualTo("Juni 2026");
        assertThat(dates.year().apply(day)).isEqualTo("2026");
    }
}
