package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.demebook.planning.PairingsView.Arrival;
import org.junit.jupiter.api.Test;

class ArrivalTest {
    private static final LocalDate PAIR_ON = LocalDate.parse("2027-01-05");

    // scenario D4; 90 days are common practice, no source; counted on a calendar: 7 October to 5 January
    @Test
    void an_animal_that_travels_comes_as_long_before_the_pairing_as_quarantine_lasts() {
        var arrival = Arrival.before(PAIR_ON, 90, LocalDate.parse("2026-09-01"));

        assertThat(arrival.latestOn()).isEqualTo("2026-10-07");
        assertThat(arrival.reason()).contains("arrives by 2026-10-07", "90 days", "2027-01-05");
    }

    @Test
    void it_may_still_come_on_the_last_day() {
        assertThat(Arrival.before(PAIR_ON, 90, LocalDate.parse("2026-10-07")).reason())
                .contains("arrives by 2026-10-07");
    }

    @Test
    void when_it_is_too_late_for_that_it_says_from_when_on_it_could_be_paired() {
        assertThat(Arrival.before(PAIR_ON, 90, LocalDate.parse("2026-11-28")).reason())
                .contains("arrives today", "until 2027-02-26");
    }
}
