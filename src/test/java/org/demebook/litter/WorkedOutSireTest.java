package org.demebook.litter;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.gestation.Grade;
import org.demebook.problem.Finding.Level;
import org.demebook.problem.Rule;
import org.demebook.registry.StatedSire;
import org.demebook.registry.StatedSire.StatedCandidate;
import org.junit.jupiter.api.Test;

class WorkedOutSireTest {
    private static final UUID JANUARY = UUID.randomUUID();
    private static final UUID FEBRUARY = UUID.randomUUID();
    private static final Map<UUID, String> NUMBERS = Map.of(JANUARY, "M-014", FEBRUARY, "M-022");

    @Test
    void the_only_male_that_she_met_in_time_is_the_sire() {
        var workedOut = workedOut(true, mate(JANUARY, -6, Grade.IN_TIME, "1"));

        assertThat(workedOut.sire()).isEqualTo(StatedSire.known("M-014"));
        assertThat(workedOut.findings()).hasSize(1);
        assertThat(workedOut.findings().get(0).finding().level()).isEqualTo(Level.NOTICE);
        assertThat(workedOut.findings().get(0).finding().message())
                .contains("the only male on record with M-013", "in time");
    }

    @Test
    void of_two_males_each_is_a_candidate_with_his_share() {
        var workedOut = workedOut(
                false, mate(FEBRUARY, -6, Grade.IN_TIME, "0.7"), mate(JANUARY, 24, Grade.STORED_SPERM, "0.3"));

        assertThat(workedOut.sire().kind()).isEqualTo("candidates");
        assertThat(workedOut.sire().wholeLitter()).isFalse();
        assertThat(workedOut.sire().candidates())
                .containsExactly(
                        new StatedCandidate("M-022", new BigDecimal("0.7")),
                        new StatedCandidate("M-014", new BigDecimal("0.3")));
        assertThat(workedOut(true, mate(FEBRUARY, -6, Grade.IN_TIME, "0.7"), mate(JANUARY, 24, Grade.RARE, "0.3"))
                        .sire()
                        .wholeLitter())
                .isTrue();
    }

    @Test
    void shares_that_do_not_end_are_cut_so_that_they_never_sum_to_more_than_one() {
        var third = BigDecimal.ONE.divide(new BigDecimal(3), new java.math.MathContext(20));
        var shares = workedOut(
                        true,
                        mate(FEBRUARY, 0, Grade.IN_TIME, third.toString()),
                        mate(JANUARY, 0, Grade.IN_TIME, "0.6"))
                .sire()
                .candidates();
        assertThat(shares.get(0).probability()).isEqualTo(new BigDecimal("0.33333333"));
    }

    @Test
    void sperm_stored_up_to_a_year_is_told_and_longer_is_warned_of_and_doubtful() {
        var usual = workedOut(true, mate(JANUARY, 116, Grade.STORED_SPERM, "1"));
        assertThat(usual.sire()).isEqualTo(StatedSire.known("M-014"));
        assertThat(usual.findings().get(0).finding().level()).isEqualTo(Level.NOTICE);
        assertThat(usual.findings().get(0).finding().message()).contains("stored sperm");

        var rare = workedOut(true, mate(JANUARY, 366, Grade.RARE, "1"));
        assertThat(rare.sire()).isEqualTo(StatedSire.doubted("M-014"));
        assertThat(rare.findings().get(0).finding().level()).isEqualTo(Level.WARNING);
        assertThat(rare.findings().get(0).finding().rule()).isEqualTo(Rule.STORED_SPERM);
    }

    @Test
    void nobody_on_record_leaves_the_sire_unknown_and_says_so() {
        assertThat(workedOut(true).sire()).isEqualTo(StatedSire.UNKNOWN);
        assertThat(workedOut(true).findings().get(0).finding().message()).contains("No male is on record with M-013");
    }

    @Test
    void a_male_beyond_every_published_case_is_not_taken_as_the_sire() {
        var workedOut = workedOut(true, mate(JANUARY, 3000, Grade.BEYOND, "0"));
        assertThat(workedOut.sire()).isEqualTo(StatedSire.UNKNOWN);
        assertThat(workedOut.findings().get(0).finding().message())
                .contains("M-014, beyond every published case", "Consider another male, or none");
        assertThat(workedOut(true, mate(FEBRUARY, 0, Grade.IN_TIME, "1"), mate(JANUARY, 3000, Grade.BEYOND, "0"))
                        .sire())
                .isEqualTo(StatedSire.known("M-022"));
    }

    private static WorkedOutSire workedOut(boolean wholeLitter, Mate... mates) {
        return WorkedOutSire.of("M-013", List.of(mates), NUMBERS, wholeLitter);
    }

    private static Mate mate(UUID maleId, int daysBeforeConception, Grade grade, String share) {
        var conceivedOn = LocalDate.of(2026, 2, 26);
        return new Mate(
                maleId,
                conceivedOn.minusDays(daysBeforeConception),
                daysBeforeConception,
                grade,
                new BigDecimal(share));
    }
}
