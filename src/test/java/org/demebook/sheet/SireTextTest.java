package org.demebook.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.List;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SireTextTest {
    @Test
    void an_empty_cell_and_the_word_unknown_say_nothing_of_the_sire() {
        assertThat(SireText.parse("")).isNull();
        assertThat(SireText.parse("Unknown")).isNull();
        assertThat(SireText.parse("?")).isNull();
    }

    @Test
    void one_name_alone_is_the_known_sire() {
        assertThat(SireText.parse("Moss 3")).isEqualTo(StatedSire.known("Moss 3"));
    }

    @Test
    void names_with_bars_between_are_candidates_with_equal_shares() {
        assertThat(SireText.parse("A | B")).isEqualTo(candidates(false, one("A", "0.5"), one("B", "0.5")));
        assertThat(SireText.parse("A|B|C"))
                .isEqualTo(candidates(false, one("A", "0.33333333"), one("B", "0.33333333"), one("C", "0.33333333")));
    }

    @Test
    void a_probability_stands_behind_a_colon_with_point_or_comma() {
        assertThat(SireText.parse("A:0.6|B:0,4")).isEqualTo(candidates(false, one("A", "0.6"), one("B", "0.4")));
        assertThat(SireText.parse("A:.6")).isEqualTo(candidates(false, one("A", "0.6")));
    }

    @Test
    void one_of_means_the_same_male_for_the_whole_litter() {
        assertThat(SireText.parse("one of A|B")).isEqualTo(candidates(true, one("A", "0.5"), one("B", "0.5")));
    }

    @Test
    void doubtful_is_a_known_sire_of_low_confidence() {
        assertThat(SireText.parse("doubtful A")).isEqualTo(StatedSire.doubted("A"));
        assertThat(SireText.parse("Doubtful  Moss 3")).isEqualTo(StatedSire.doubted("Moss 3"));
        assertThat(SireText.parse("\\doubtful A")).isEqualTo(StatedSire.known("doubtful A"));
        assertThat(SireText.parse("doubtful")).isEqualTo(StatedSire.known("doubtful"));
    }

    @Test
    void none_is_parthenogenesis_by_terminal_fusion_without_second_division_unless_said_otherwise() {
        assertThat(SireText.parse("none")).isEqualTo(none("terminal", "0"));
        assertThat(SireText.parse("None terminal 0")).isEqualTo(none("terminal", "0"));
        assertThat(SireText.parse("none central 0.50")).isEqualTo(none("central", "0.5"));
    }

    @Test
    void a_backslash_makes_a_bar_or_colon_part_of_a_reference_and_a_word_a_name() {
        assertThat(SireText.parse("2019\\:3")).isEqualTo(StatedSire.known("2019:3"));
        assertThat(SireText.parse("A\\|B|C")).isEqualTo(candidates(false, one("A|B", "0.5"), one("C", "0.5")));
        assertThat(SireText.parse("\\none")).isEqualTo(StatedSire.known("none"));
        assertThat(SireText.parse("\\one of us")).isEqualTo(StatedSire.known("one of us"));
        assertThat(SireText.parse("back\\slash")).isEqualTo(StatedSire.known("back\\slash"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "A:0",
                "A:1.2",
                "A:many",
                "A:",
                "A:0.123456789",
                "A:0.5|B",
                "A|",
                "|",
                "A:1:2",
                "none central 2",
                "doubtful A|B",
                "doubtful A:0.5"
            })
    void what_cannot_be_meant_is_refused(String cell) {
        assertThatIllegalArgumentException().isThrownBy(() -> SireText.parse(cell));
    }

    @Test
    void what_is_written_is_read_back_as_it_was() {
        var a = new StudbookNumber("MC", "H", 2).toString();
        var b = new StudbookNumber("MC", "H", 10).toString();
        for (var sire : List.of(
                StatedSire.known(a),
                StatedSire.doubted(a),
                candidates(false, one(a, "0.5"), one(b, "0.5")),
                candidates(true, one(b, "0.6"), one(a, "0.3")),
                candidates(false, one(a, "1")),
                candidates(true, one(a, "1")),
                none("central", "0.25"))) {
            assertThat(SireText.parse(SireText.of(sire))).isEqualTo(sire);
        }
        assertThat(SireText.of(StatedSire.UNKNOWN)).isEmpty();
    }

    @Test
    void candidates_are_written_likeliest_first_then_by_number() {
        var two = new StudbookNumber("MC", "H", 2).toString();
        var ten = new StudbookNumber("MC", "H", 10).toString();
        assertThat(SireText.of(candidates(false, one(ten, "0.5"), one(two, "0.5"))))
                .isEqualTo(two + "|" + ten);
        assertThat(SireText.of(candidates(false, one(two, "0.1"), one(ten, "0.9"))))
                .isEqualTo(ten + ":0.9|" + two + ":0.1");
    }

    private static StatedCandidate one(String animal, String probability) {
        return new StatedCandidate(animal, new BigDecimal(probability));
    }

    private static StatedSire candidates(boolean wholeLitter, StatedCandidate... candidates) {
        return StatedSire.candidates(List.of(candidates), wholeLitter);
    }

    private static StatedSire none(String fusion, String secondDivision) {
        return StatedSire.none(fusion, new BigDecimal(secondDivision));
    }
}
