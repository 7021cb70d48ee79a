package org.demebook.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TransponderTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "276098102345678",
                " 276 0981 0234 5678 ",
                "276-098102345678",
                "276.098.102.345.678",
                "276–098–102–345–678",
                "276\u00A0098102345678",
            })
    void spaces_dashes_and_dots_do_not_count(String text) {
        assertThat(Transponder.parse(text)).isEqualTo(new Transponder("276098102345678"));
    }

    // ISO 11784: 10 bits of country or manufacturer code, 38 bits of identification, hence at most 2^38 - 1.
    @ParameterizedTest
    @ValueSource(strings = {"001000000000000", "998274877906943", "900274877906943"})
    void the_whole_range_of_the_standard_is_taken(String code) {
        assertThat(Transponder.parse(code)).hasToString(code);
    }

    @ParameterizedTest
    @CsvSource({
        "998274877906944, at most 274877906943",
        "276999999999999, at most 274877906943",
        "999000000000001, test tag",
        "000000000000001, not 000",
        "27609810234567, this has 14",
        "2760981023456789, this has 16",
        "'', this has 0",
        "0A1B2C3D4G, A to F",
        "0A1B2C3D, A to F",
        "0A1B2C3D4E5, A to F",
        "12345678, this has 8",
        "12345678901, this has 11",
        "٢٧٦٠٩٨١٠٢٣٤٥٦٧٨, no letters",
    })
    void what_is_no_code_of_the_standard_is_refused_with_the_reason(String text, String reason) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Transponder.parse(text))
                .withMessageContaining(reason);
    }

    @Test
    void cannot_be_made_from_a_code_that_is_not_clean() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Transponder("276 098102345678"));
    }

    @ParameterizedTest
    @CsvSource({
        "276098102345679, true, last digit",
        "376098102345678, true, first digit",
        "276098102346578, true, neighbours swapped",
        "267098102345678, true, neighbours swapped at the front",
        "276098102345687, true, neighbours swapped at the end",
        "276098102345678, false, the same code",
        "276098102345689, false, two digits",
        "276098102543678, false, swapped across a third",
        "267098102345687, false, swapped twice",
        "377098102345678, false, two digits apart",
    })
    void one_slip_away_is_one_digit_or_two_neighbours_swapped(String other, boolean expected, String what) {
        var code = new Transponder("276098102345678");
        assertThat(code.oneDigitOff(new Transponder(other))).as(what).isEqualTo(expected);
        assertThat(new Transponder(other).oneDigitOff(code))
                .as(what + ", the other way")
                .isEqualTo(expected);
    }

    // 9 or 10 characters, some of them hexadecimal: from memory, no source
    @ParameterizedTest
    @CsvSource({
        "0A1B2C3D4E, 0A1B2C3D4E",
        "0a-1b 2c.3d 4e, 0A1B2C3D4E",
        "123456789, 123456789",
        "1234567890, 1234567890",
    })
    void the_code_of_an_older_tag_is_kept_in_one_form_and_told_from_one_of_the_standard(String text, String code) {
        assertThat(Transponder.parse(text)).hasToString(code);
        assertThat(Transponder.parse(text).scheme()).isEqualTo("older");
        assertThat(Transponder.parse("276098102345678").scheme()).isEqualTo("iso-11784");
        assertThat(Transponder.parse(text).oneDigitOff(Transponder.parse("276098102345678")))
                .isFalse();
    }

    // 15 places with nine other digits each, and 13 pairs of neighbours that differ: counted by hand
    @Test
    void the_neighbours_of_a_code_are_the_codes_one_slip_away() {
        var code = new Transponder("276098102345677");

        assertThat(code.neighbours())
                .hasSize(15 * 9 + 13)
                .contains("267098102345677", "276098102345678")
                .doesNotContain(code.code());
        assertThat(code.neighbours().stream()
                        .filter(text -> text.matches("(?!000|999)[0-9]{3}[01].*"))
                        .map(Transponder::new))
                .allMatch(code::oneDigitOff);
        assertThat(Transponder.parse("0A1B2C3D4E").neighbours()).hasSize(10 * 15 + 9);
    }

    @Test
    void is_a_plain_string_in_json() throws JsonProcessingException {
        var json = new ObjectMapper();
        assertThat(json.writeValueAsString(new Transponder("276098102345678"))).isEqualTo("\"276098102345678\"");
        assertThat(json.readValue("\"276 098102345678\"", Transponder.class))
                .isEqualTo(new Transponder("276098102345678"));
    }
}
