package org.demebook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.Arrays;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.SourceCode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class VocabularyTest {
    private final ObjectMapper json = new ObjectMapper();

    // Common practice, no source.
    @ParameterizedTest
    @CsvSource({
        "F, FEMALE",
        "♀, FEMALE",
        "♀\uFE0F, FEMALE",
        "Female, FEMALE",
        "' female ', FEMALE",
        "0.1, FEMALE",
        "w, FEMALE",
        "m, MALE",
        "♂, MALE",
        "♂\uFE0F, MALE",
        "MALE, MALE",
        "1.0, MALE",
        "männlich, MALE",
        "u, UNKNOWN",
        "?, UNKNOWN",
        "unsexed, UNKNOWN",
        "0.0.1, UNKNOWN",
        "unknown, UNKNOWN",
    })
    void the_trades_signs_for_a_sex_are_understood(String text, Sex sex) {
        assertThat(Sex.parse(text)).isEqualTo(sex);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "-", "1.1", "2.0", "mf", "hermaphrodite"})
    void what_is_no_sex_of_one_animal_is_refused(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Sex.parse(text))
                .withMessageContaining("write female, male or unknown");
    }

    // Common practice, no source.
    @ParameterizedTest
    @CsvSource({
        "WC, WILD_CAUGHT",
        "wild caught, WILD_CAUGHT",
        "Wild-Caught, WILD_CAUGHT",
        "wild–caught, WILD_CAUGHT",
        "WILD_CAUGHT, WILD_CAUGHT",
        "WF, WILD_CAUGHT",
        "CB, CAPTIVE_BRED",
        "cbb, CAPTIVE_BRED",
        "captive bred, CAPTIVE_BRED",
        "NZ, CAPTIVE_BRED",
        "U, UNKNOWN",
        "?, UNKNOWN",
    })
    void the_trades_signs_for_an_origin_are_understood(String text, Origin origin) {
        assertThat(Origin.parse(text)).isEqualTo(origin);
    }

    @ParameterizedTest
    @ValueSource(strings = {"CH", "captive hatched", "captive-born", "farmed"})
    void an_origin_that_may_hide_a_wild_mating_is_asked_back(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Origin.parse(text))
                .withMessageContaining("already gravid");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "W C", "captive"})
    void what_is_no_origin_is_refused(String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Origin.parse(text))
                .withMessageContaining("write wild-caught, captive-bred or unknown");
    }

    // The codes of Resolution Conf. 12.3 for animals; A, D, C, F, I and O as in 50 CFR 23.24, the others from memory.
    @Test
    void the_source_codes_are_those_for_animals() {
        assertThat(Arrays.stream(SourceCode.values()).map(SourceCode::letter))
                .containsExactlyInAnyOrder("C", "D", "F", "I", "O", "R", "U", "W", "X");
        assertThat(SourceCode.parse("f")).isEqualTo(SourceCode.BORN_IN_CAPTIVITY);
        assertThat(SourceCode.parse(" C ")).isEqualTo(SourceCode.BRED_IN_CAPTIVITY);
    }

    @Test
    void the_source_code_of_plants_and_unknown_letters_are_refused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SourceCode.parse("A"))
                .withMessageContaining("plants");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SourceCode.parse("Z"))
                .withMessageContaining("W, R, C, F, D, I, O, X, U");
    }

    @ParameterizedTest
    @EnumSource
    void a_sex_goes_through_json_as_a_lower_case_word(Sex sex) throws JsonProcessingException {
        assertThat(json.writeValueAsString(sex)).matches("\"[a-z]+\"");
        assertThat(json.readValue(json.writeValueAsString(sex), Sex.class)).isEqualTo(sex);
    }

    @ParameterizedTest
    @EnumSource
    void an_origin_goes_through_json_in_lower_case_with_hyphens(Origin origin) throws JsonProcessingException {
        assertThat(json.writeValueAsString(origin)).matches("\"[a-z]+(-[a-z]+)*\"");
        assertThat(json.readValue(json.writeValueAsString(origin), Origin.class))
                .isEqualTo(origin);
    }

    @ParameterizedTest
    @EnumSource
    void a_source_code_goes_through_json_as_its_letter(SourceCode source) throws JsonProcessingException {
        assertThat(json.writeValueAsString(source)).isEqualTo("\"" + source.letter() + "\"");
        assertThat(json.readValue(json.writeValueAsString(source), SourceCode.class))
                .isEqualTo(source);
        assertThat(source.meaning()).isNotBlank();
    }
}
