package org.demebook.problem;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class RuleTest {
    @ParameterizedTest
    @EnumSource
    void a_rule_says_in_one_sentence_why_it_matters_and_is_found_by_its_word(Rule rule) {
        assertThat(rule.why()).matches("[A-Z][^\\n]{20,}\\.");
        assertThat(rule.word()).matches("[a-z]+(-[a-z]+)*");
        assertThat(Rule.of(rule.word())).contains(rule);
    }

    @ParameterizedTest
    @EnumSource(names = {"OWN_ANCESTOR", "DIED_BEFORE_BIRTH", "DATE_IN_FUTURE", "LITTER_DOES_NOT_ADD_UP"})
    void what_could_not_be_computed_with_is_never_left(Rule rule) {
        assertThat(rule.grade()).isEqualTo(Finding.Level.ERROR);
    }
}
