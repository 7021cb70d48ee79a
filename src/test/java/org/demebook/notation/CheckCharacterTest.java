package org.demebook.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheckCharacterTest {
    private static final String ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

    // Donation identification numbers of ISBT 128, which uses ISO/IEC 7064 MOD 37-2. The first from the UK blood
    // services' Red Book, annexe 2; the others from ICCBBA guides, as quoted in open-source test suites.
    @ParameterizedTest
    @CsvSource({
        "G123498654321, H",
        "G123417654321, A",
        "A999917123456, 9",
        "A999916123456, Q",
        "A999914123456, N",
        "C000307001466, 6",
        "A999922123459, H",
        "A999922654321, S",
        "A999922123458, J",
        "A999922012346, *",
    })
    void agrees_with_published_blood_donation_numbers(String characters, char check) {
        assertThat(CheckCharacter.of(characters)).isEqualTo(check);
    }

    // ISO/IEC 7064, definition of a pure system: the sum of value times 2 to the power of its place, counted from the
    // right and from 0 at the check character, leaves 1 when divided by 37.
    @ParameterizedTest
    @ValueSource(strings = {"MCH1", "MCH101", "A1Z9123456", "ZZZZZZZZZZ999999999999"})
    void satisfies_the_definition_as_a_weighted_sum(String characters) {
        String whole = characters + CheckCharacter.of(characters);
        var sum = BigInteger.ZERO;
        for (int place = 0; place < whole.length(); place++) {
            int value = ALPHABET.indexOf(whole.charAt(whole.length() - 1 - place));
            sum = sum.add(BigInteger.TWO.pow(place).multiply(BigInteger.valueOf(value)));
        }
        assertThat(sum.mod(BigInteger.valueOf(37))).isEqualTo(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"mc1", "M*1", "Ä1", "M-1"})
    void checks_only_digits_and_upper_case_letters(String characters) {
        assertThatIllegalArgumentException().isThrownBy(() -> CheckCharacter.of(characters));
    }

    @Test
    void fits_only_the_one_character() {
        assertThat(ALPHABET.chars().filter(check -> CheckCharacter.fits("MCH101", (char) check)))
                .hasSize(1);
    }
}
