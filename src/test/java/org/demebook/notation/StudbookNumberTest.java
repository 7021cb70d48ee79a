package org.demebook.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StudbookNumberTest {
    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

    static Stream<StudbookNumber> samples() {
        return Stream.of(
                new StudbookNumber("MC", "H", 1),
                new StudbookNumber("MC", "H", 101), // its check character is the asterisk
                new StudbookNumber("MC", "H", 102),
                new StudbookNumber("B1CAYE", "N7", 20_311),
                new StudbookNumber("OO0", "0", 100_000),
                new StudbookNumber("ZZZZZZ", "ZZZZ", 999_999_999_999L));
    }

    // The number G1234-98-654321 with check character H: UK blood services' Red Book, annexe 2 (ISBT 128).
    @Test
    void is_written_with_hyphens_and_its_check_character() {
        assertThat(new StudbookNumber("G1234", "98", 654_321)).hasToString("G1234-98-654321-H");
    }

    @Test
    void is_written_the_same_where_digits_look_different() {
        var before = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
        try {
            assertThat("%d".formatted(1)).isEqualTo("١");
            assertThat(new StudbookNumber("G1234", "98", 654_321)).hasToString("G1234-98-654321-H");
        } finally {
            Locale.setDefault(before);
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void reads_back_what_it_writes(StudbookNumber number) {
        assertThat(StudbookNumber.parse(number.toString())).isEqualTo(number);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "g1234-98-654321-h",
                " G1234 - 98 - 654321 - H ",
                "G1234–98—654321−H",
                "G1234 98 654321 H",
                "G1234-98 654321-H",
                "G1234-98-654 321-H",
                "G1234--98-654321-H",
                "G1234\u00A098\u00A0654321\u00A0H",
            })
    void is_read_in_every_form_that_can_mean_only_one_number(String text) {
        assertThat(StudbookNumber.parse(text)).isEqualTo(new StudbookNumber("G1234", "98", 654_321));
    }

    @ParameterizedTest
    @MethodSource("samples")
    void every_single_wrong_character_is_caught(StudbookNumber number) {
        String text = number.toString();
        for (int at = 0; at < text.length(); at++) {
            for (char other : ALPHABET.toCharArray()) {
                if (text.charAt(at) != '-' && text.charAt(at) != other) {
                    requireRefused(text.substring(0, at) + other + text.substring(at + 1));
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("samples")
    void every_swap_of_two_neighbours_is_caught(StudbookNumber number) {
        String text = number.toString();
        for (int at = 0; at < text.length() - 1; at++) {
            int next = text.charAt(at + 1) == '-' ? at + 2 : at + 1;
            if (text.charAt(at) != '-' && text.charAt(at) != text.charAt(next)) {
                var swapped = new StringBuilder(text);
                swapped.setCharAt(at, text.charAt(next));
                swapped.setCharAt(next, text.charAt(at));
                requireRefused(swapped.toString());
            }
        }
    }

    private static void requireRefused(String text) {
        assertThatIllegalArgumentException().as(text).isThrownBy(() -> StudbookNumber.parse(text));
    }

    @Test
    void a_typo_is_told_without_a_guess_at_the_right_number() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudbookNumber.parse("g1234-98-654312-h"))
                .withMessage("G1234-98-654312-H does not fit its check character: one character was mistyped or two"
                        + " were swapped; read it again");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "G123498654321H      | hyphens",
                "''                  | hyphens",
                "G1234-98-654321     | check character",
                "G1234-98-654321-HH  | exactly one check character",
                "G1234-98-654321-    | exactly one check character",
                "G1234-98-0654321-H  | no zero in front",
                "G1234-98-65432O-H   | digits only",
                "G1234-98-0-H        | no zero in front",
                "G1234-98-1234567890123-H | at most 12",
                "1G234-98-654321-H   | starts with a letter",
                "G-98-654321-H       | 2 to 6",
                "G123456-98-654321-H | 2 to 6",
                "G1234-98765-654321-H | 1 to 4",
                "ſG234-98-654321-H   | only digits",
                "G1234-98-654321-ß   | only digits",
                "G1234-98-654321-H-X | does not read",
            })
    void what_cannot_be_read_is_refused_with_a_hint(String text, String hint) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudbookNumber.parse(text))
                .withMessageContaining(hint);
    }

    @Test
    void the_example_in_the_hint_is_itself_a_good_number() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudbookNumber.parse("?"))
                .satisfies(refusal -> {
                    String message = refusal.getMessage();
                    String example = message.substring(message.lastIndexOf(' ') + 1);
                    assertThat(StudbookNumber.parse(example)).hasToString(example);
                });
    }

    @Test
    void endless_text_is_not_repeated_in_the_refusal() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StudbookNumber.parse("X".repeat(100_000)))
                .satisfies(refusal -> assertThat(refusal.getMessage()).hasSizeLessThan(200));
    }

    @Test
    void sorts_by_population_then_node_then_serial_as_a_number() {
        var sorted = List.of(
                new StudbookNumber("MC", "A", 10),
                new StudbookNumber("MC", "H", 9),
                new StudbookNumber("MC", "H", 10),
                new StudbookNumber("MD", "A", 1));
        assertThat(sorted.stream().sorted(Comparator.reverseOrder()).sorted()).containsExactlyElementsOf(sorted);
    }

    @Test
    void is_a_plain_string_in_json() throws JsonProcessingException {
        var json = new ObjectMapper();
        var number = new StudbookNumber("G1234", "98", 654_321);
        assertThat(json.writeValueAsString(number)).isEqualTo("\"G1234-98-654321-H\"");
        assertThat(json.readValue("\"G1234-98-654321-H\"", StudbookNumber.class))
                .isEqualTo(number);
    }
}
