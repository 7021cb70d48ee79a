package org.demebook.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RoughDateTest {

    // Extended Date/Time Format (Library of Congress, 4 February 2019, now ISO 8601-2): dates of level 0, intervals
    // open at one end of level 1, sets open at one end of level 2. 1985-04-12, 1985 and 1760-12-03 are its examples,
    // taken over by year where it is out of our range.
    @ParameterizedTest
    @CsvSource({
        "1985-04-12, 1985-04-12, 1985-04-12, DAY, 1985-04-12",
        "1985-04, 1985-04-01, 1985-04-30, MONTH, 1985-04",
        "1985, 1985-01-01, 1985-12-31, YEAR, 1985",
        "../1985-04-12, , 1985-04-12, BEFORE, ../1985-04-12",
        "../1985-04, , 1985-04-30, BEFORE, ../1985-04-30",
        "../1985, , 1985-12-31, BEFORE, ../1985-12-31",
        "1985-04-12/.., 1985-04-12, , AFTER, 1985-04-12/..",
        "1985-04/.., 1985-04-01, , AFTER, 1985-04-01/..",
        "1985/.., 1985-01-01, , AFTER, 1985-01-01/..",
        "[..1860-12-03], , 1860-12-03, BEFORE, ../1860-12-03",
        "[1860-12..], 1860-12-01, , AFTER, 1860-12-01/..",
        "[..1984], , 1984-12-31, BEFORE, ../1984-12-31",
        "2024-02-29, 2024-02-29, 2024-02-29, DAY, 2024-02-29",
        "2024-02, 2024-02-01, 2024-02-29, MONTH, 2024-02",
    })
    void reads_and_writes_the_extended_date_format(
            String text, LocalDate earliest, LocalDate latest, RoughDate.Precision precision, String written) {
        var date = RoughDate.parse(text);
        assertThat(date).isEqualTo(new RoughDate(earliest, latest, precision));
        assertThat(date).hasToString(written);
        assertThat(RoughDate.parse(written)).isEqualTo(date);
    }

    @ParameterizedTest
    @CsvSource({
        "before 2026-06-29, ../2026-06-29",
        "' Before  2026-06-29 ', ../2026-06-29",
        "on or before 2026-06-29, ../2026-06-29",
        "on or before 2026, ../2026-12-31",
        "after 2026-06-29, 2026-06-29/..",
        "AFTER 2026-06-29, 2026-06-29/..",
        "on or after 2026-06, 2026-06-01/..",
        "2026–06–29, 2026-06-29",
        "' 2026-06-29\u00A0', 2026-06-29",
    })
    void reads_words_and_what_word_processors_make_of_hyphens(String text, String written) {
        assertThat(RoughDate.parse(text)).hasToString(written);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "03/04/2026 | 3 April 2026 or 4 March 2026? Write 2026-04-03 or 2026-03-04",
                "3.4.2026   | 3 April 2026 or 4 March 2026? Write 2026-04-03 or 2026-03-04",
                "03-04-2026 | 3 April 2026 or 4 March 2026? Write 2026-04-03 or 2026-03-04",
                "13/04/2026 | If this is 13 April 2026, write 2026-04-13",
                "04/13/2026 | If this is 13 April 2026, write 2026-04-13",
                "04/04/2026 | If this is 4 April 2026, write 2026-04-04",
                "29/02/2024 | If this is 29 February 2024, write 2024-02-29",
                "2026/04/03 | If this is 3 April 2026, write 2026-04-03",
                "2026.4.3   | If this is 3 April 2026, write 2026-04-03",
                "2026-4-3   | If this is 3 April 2026, write 2026-04-03",
                "before 03/04/2026 | 3 April 2026 or 4 March 2026? Write 2026-04-03 or 2026-03-04",
            })
    void a_day_and_month_in_doubtful_order_are_refused_with_every_reading(String text, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RoughDate.parse(text))
                .withMessage(message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "before 2026    | Before 2026: before it began, or before it ended? Write before 2025-12-31 or before 2026-12-31",
                "after 2026-06  | After 2026-06: after it began, or after it ended? Write after 2026-06-01 or after 2026-07-01",
                "2026-02-29     | 2026-02-29 does not exist: February 2026 has 28 days; look at the date again",
                "1900-02-29     | 1900-02-29 does not exist: February 1900 has 28 days; look at the date again",
                "2026-06-31     | 2026-06-31 does not exist: June 2026 has 30 days; look at the date again",
                "2026-06-00     | 2026-06-00 does not exist: June 2026 has 30 days; look at the date again",
                "2026-13        | 2026-13 does not exist: months go from 01 to 12; look at the date again",
                "../2026-02-30  | 2026-02-30 does not exist: February 2026 has 28 days; look at the date again",
                "1799           | The year 1799 is out of range: a studbook knows the years from 1800 to 2200; read the date again",
                "2201-01-01     | The year 2201 is out of range: a studbook knows the years from 1800 to 2200; read the date again",
                "0000-01        | The year 0 is out of range: a studbook knows the years from 1800 to 2200; read the date again",
            })
    void a_date_that_cannot_be_is_refused_with_the_reason(String text, String message) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RoughDate.parse(text))
                .withMessage(message);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "..",
                "../..",
                "/2026",
                "26",
                "03.04.26",
                "June 2026",
                "2026~",
                "2020/2023",
                "20260629",
                "31/02/2026",
                "../../2026",
                "[..2026-01-01..]",
                "before",
                "before before 2026-01-01",
                "on or 2026-01-01",
                "٢٠٢٦"
            })
    void whatever_else_is_refused_with_the_ways_to_write_a_date(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RoughDate.parse(text))
                .withMessageContaining("Write the date like 2026-06-29");
    }

    @Test
    void the_first_and_the_last_year_are_in_range() {
        assertThat(RoughDate.parse("1800")).isEqualTo(RoughDate.ofYear(1800));
        assertThat(RoughDate.parse("2200-12-31")).isEqualTo(RoughDate.of(LocalDate.of(2200, 12, 31)));
    }

    @ParameterizedTest
    @CsvSource({
        "2026-06-28, 2026-06-29, true",
        "2026-06-29, 2026-06-29, false",
        "2026-05, 2026-06, true",
        "2026-05, 2026-05-31, false",
        "2025, 2026-01-01, true",
        "2026, 2026-12-31, false",
        "../2026-06-28, 2026-06-29, true",
        "../2026-06-29, 2026-06-29, false",
        "2025, 2026-01-01/.., true",
        "../2025-12-31, 2026-01-01/.., true",
        "2020-01-01/.., 2026, false",
        "2020, ../2026-01-01, false",
    })
    void is_surely_before_only_if_no_reading_overlaps(String first, String second, boolean expected) {
        var one = RoughDate.parse(first);
        var other = RoughDate.parse(second);
        assertThat(one.surelyBefore(other)).isEqualTo(expected);
        assertThat(other.surelyAfter(one)).isEqualTo(expected);
        assertThat(other.surelyBefore(one)).isFalse();
    }

    @Test
    void compares_with_a_single_day() {
        assertThat(RoughDate.parse("2026-05").surelyBefore(LocalDate.of(2026, 6, 1)))
                .isTrue();
        assertThat(RoughDate.parse("2026-05").surelyBefore(LocalDate.of(2026, 5, 31)))
                .isFalse();
        assertThat(RoughDate.parse("2026-05-01/..").surelyBefore(LocalDate.of(2100, 1, 1)))
                .isFalse();
    }

    @Test
    void has_a_day_only_if_known_to_the_day() {
        assertThat(RoughDate.parse("2026-06-29").day()).contains(LocalDate.of(2026, 6, 29));
        assertThat(RoughDate.parse("2026-06").day()).isEmpty();
        assertThat(RoughDate.parse("2026-06-29/..").day()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2026-06-01, 2026-06-02, DAY",
        "2026-06-02, 2026-06-30, MONTH",
        "2026-06-01, 2026-06-29, MONTH",
        "2026-01-01, 2026-12-30, YEAR",
        "2026-01-01, 2027-12-31, YEAR",
        "2026-01-01, 2026-01-01, BEFORE",
        "2026-01-01, , BEFORE",
        ", 2026-01-01, AFTER",
        ", 2026-01-01, DAY",
        ", , AFTER",
    })
    void cannot_be_made_with_a_precision_that_its_days_deny(
            LocalDate earliest, LocalDate latest, RoughDate.Precision precision) {
        assertThatIllegalArgumentException().isThrownBy(() -> new RoughDate(earliest, latest, precision));
    }

    @Test
    void is_a_plain_string_in_json() throws JsonProcessingException {
        var json = new ObjectMapper();
        assertThat(json.writeValueAsString(RoughDate.parse("before 2026-06-29")))
                .isEqualTo("\"../2026-06-29\"");
        assertThat(json.readValue("\"2026-06\"", RoughDate.class)).isEqualTo(RoughDate.parse("2026-06"));
    }
}
