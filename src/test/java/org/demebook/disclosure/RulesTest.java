package org.demebook.disclosure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.demebook.disclosure.Rules.Need;
import org.demebook.disclosure.Rules.Reason;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RulesTest {
    private static final Set<String> NOBODY = Set.of();

    // Handbook on Statistical Disclosure Control (ESSNet), chapter 4: the estimate 51 000 is 2 % above the largest.
    // The rest of 1 000 is taken as one respondent.
    @ParameterizedTest
    @CsvSource({"2, false", "3, true", "10, true"})
    void of_100_000_with_50_000_and_49_000_the_largest_is_estimated_to_2_percent(int percent, boolean sensitive) {
        var shares = Map.of("first", 50_000, "second", 49_000, "rest", 1_000);
        assertThat(new Rules(1, percent).need(shares, NOBODY).isPresent()).isEqualTo(sensitive);
    }

    // same source: the estimate 60 000 is 15.4 % above the largest, safe at p = 10
    @ParameterizedTest
    @CsvSource({"10, false", "15, false", "16, true"})
    void of_110_000_with_52_000_and_50_000_the_largest_is_estimated_to_15_percent(int percent, boolean sensitive) {
        var shares = Map.of("first", 52_000, "second", 50_000, "rest", 8_000);
        assertThat(new Rules(1, percent).need(shares, NOBODY).isPresent()).isEqualTo(sensitive);
    }

    // the table of three regions, p = 15, by hand
    @Test
    void the_protection_level_is_what_is_missing_to_p_percent() {
        var rules = new Rules(3, 15);
        assertThat(rules.upperProtectionHundredths(Map.of("D", 9, "E", 2, "F", 1), NOBODY))
                .isEqualTo(35);
        assertThat(rules.upperProtectionHundredths(Map.of("D", 8), NOBODY)).isEqualTo(120);
        assertThat(rules.upperProtectionHundredths(Map.of("G", 1, "H", 1), NOBODY))
                .isEqualTo(15);
    }

    // the same handbook: unsafe where fewer than n respondents; n = 3 is usual
    @ParameterizedTest
    @CsvSource({"1, true", "2, true", "3, false"})
    void fewer_than_three_respondents_are_too_few(int respondents, boolean sensitive) {
        var shares = new HashMap<String, Integer>();
        for (int i = 0; i < respondents; i++) {
            shares.put("r" + i, 10);
        }
        assertThat(new Rules(3, 20).need(shares, NOBODY).isPresent()).isEqualTo(sensitive);
    }

    @Test
    void whole_units_protect_by_at_least_one_and_never_by_less_than_the_level() {
        var rules = new Rules(3, 15);
        assertThat(rules.need(Map.of("D", 9, "E", 2, "F", 1), NOBODY))
                .isEqualTo(Optional.of(new Need(Reason.DOMINATED, 1, 1)));
        assertThat(rules.need(Map.of("D", 8), NOBODY)).isEqualTo(Optional.of(new Need(Reason.FEW_RESPONDENTS, 2, 2)));
        assertThat(rules.need(Map.of("D", 20, "E", 20), NOBODY))
                .isEqualTo(Optional.of(new Need(Reason.FEW_RESPONDENTS, 3, 3)));
    }

    // scenario of the three regions: D consents; E is then protected against D: 12 − 2 − 9 = 1 ≥ 0.3
    @Test
    void where_the_largest_has_waived_protection_the_next_is_protected_against_them() {
        var rules = new Rules(3, 15);
        assertThat(rules.need(Map.of("D", 9, "E", 2, "F", 1), Set.of("D"))).isEmpty();
        assertThat(rules.need(Map.of("D", 8), Set.of("D"))).isEmpty();
        assertThat(rules.need(Map.of("D", 8, "E", 1), Set.of("D"))).isPresent();
        assertThat(rules.need(Map.of("D", 9, "E", 9, "F", 1), Set.of("D")))
                .isEqualTo(rules.need(Map.of("D", 9, "E", 9, "F", 1), NOBODY));
    }

    @Test
    void what_came_in_and_what_went_out_are_judged_by_their_amounts() {
        var rules = new Rules(3, 20);
        assertThat(rules.need(Map.of("A", 5, "B", -5), NOBODY)).isPresent();
        assertThat(rules.need(Map.of("A", 5, "B", -5, "C", 4), NOBODY)).isEmpty();
        assertThat(rules.need(Map.of("A", -50, "B", 3, "C", -2), NOBODY))
                .isEqualTo(Optional.of(new Need(Reason.DOMINATED, 8, 8)));
    }

    @Test
    void a_figure_of_nobody_is_not_sensitive() {
        assertThat(new Rules(3, 20).need(Map.of(), NOBODY)).isEmpty();
    }

    @Test
    void rules_that_make_no_sense_are_refused() {
        assertThatThrownBy(() -> new Rules(0, 20)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Rules(3, 101)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Rules(3, -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
