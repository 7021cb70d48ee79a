package org.demebook.handover;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.demebook.handover.HandoverSheet.Measures;
import org.demebook.notation.RoughDate;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.junit.jupiter.api.Test;

class InWordsTest {
    @Test
    void a_birth_is_told_as_precisely_as_it_is_known_and_no_more() {
        assertThat(InWords.born(RoughDate.parse("2026-06-29"))).isEqualTo("29 June 2026");
        assertThat(InWords.born(RoughDate.parse("2026-06"))).isEqualTo("June 2026 (the day is not known)");
        assertThat(InWords.born(RoughDate.parse("2026"))).isEqualTo("2026 (the month is not known)");
        assertThat(InWords.born(RoughDate.parse("../2026-06-29"))).isEqualTo("on or before 29 June 2026");
        assertThat(InWords.born(RoughDate.parse("2026-06-29/.."))).isEqualTo("on or after 29 June 2026");
        assertThat(InWords.born(null)).isEqualTo("unknown");
    }

    @Test
    void an_unknown_an_uncertain_and_no_sire_are_three_things() {
        assertThat(InWords.sire(StatedSire.known("MC-H-14-Z"))).isEqualTo("MC-H-14-Z");
        assertThat(InWords.sire(StatedSire.doubted("MC-H-14-Z"))).isEqualTo("MC-H-14-Z (doubtful)");
        assertThat(InWords.sire(StatedSire.UNKNOWN)).isEqualTo("unknown");
        assertThat(InWords.sire(StatedSire.none("terminal", null)))
                .isEqualTo("none: young of the dam alone (parthenogenesis)");
        assertThat(InWords.sire(either("0.6", "0.125")))
                .isEqualTo("uncertain: MC-H-1 (60 %) or MC-H-2 (12.5 %) or a male not named (27.5 %)");
        assertThat(InWords.sire(either("0.75", "0.25"))).isEqualTo("uncertain: MC-H-1 (75 %) or MC-H-2 (25 %)");
    }

    private static StatedSire either(String one, String other) {
        return StatedSire.candidates(
                List.of(
                        new StatedCandidate("MC-H-1", new BigDecimal(one)),
                        new StatedCandidate("MC-H-2", new BigDecimal(other))),
                true);
    }

    @Test
    void figures_are_rounded_for_people() {
        assertThat(InWords.coefficient(0.15625)).isEqualTo("0.1562");
        assertThat(InWords.coefficient(0)).isEqualTo("0");
        assertThat(InWords.percent(1.0 / 3)).isEqualTo("33.3 %");
        assertThat(InWords.percent(1.0)).isEqualTo("100 %");
    }

    @Test
    void measures_name_their_units_and_their_day() {
        var day = LocalDate.of(2026, 6, 29);
        assertThat(InWords.measures(new Measures(day, new BigDecimal("28.4"), 412, "snout-vent")))
                .isEqualTo("28.4 g, 41.2 cm snout-vent on 29 June 2026");
        assertThat(InWords.measures(new Measures(day, null, 400, null))).isEqualTo("40 cm on 29 June 2026");
        assertThat(InWords.measures(null)).isEqualTo("none");
    }
}
