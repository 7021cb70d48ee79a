package org.demebook.gestation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.gestation.Landmark.OVULATION;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.demebook.gestation.CandidateSires.Candidate;
import org.demebook.notation.RoughDate;
import org.demebook.taxon.TaxonProfile;
import org.junit.jupiter.api.Test;

/**
 * Who can be the sire. Gaps as the trade grades them (common practice, no source) up to the longest that is published: 71
 * months, Levine, Schuett &amp; Booth (2021), PLoS ONE 16: e0252049 (abstract).
 */
class CandidateSiresTest {
    private static final UUID M014 = new UUID(0, 14);
    private static final UUID M022 = new UUID(0, 22);
    private static final RoughDate BORN = RoughDate.parse("2026-06-29");

    /** Scenario A7: he died on 2 November 2025; birth less 123 days is 26 February 2026, 116 days later. */
    @Test
    void a_male_who_died_116_days_before_the_conception_stands_for_stored_sperm() {
        var candidates = of(BORN, null, met(M014, "2025-09-01", "2025-11-02"));

        assertThat(conception(BORN, null).earliestOn()).isEqualTo("2026-02-26");
        assertThat(candidates).singleElement().satisfies(male -> {
            assertThat(male.daysBeforeConception()).isEqualTo(116);
            assertThat(male.grade().words()).isEqualTo("stored sperm");
            assertThat(male.share()).isEqualByComparingTo("1");
        });
    }

    /** Scenario A9. */
    @Test
    void of_two_males_both_are_candidates_with_shares_that_sum_to_one() {
        var candidates = of(
                BORN,
                ovulation("2026-02-24"),
                met(M014, "2026-01-05", "2026-01-31"),
                met(M022, "2026-02-01", "2026-02-24"));

        assertThat(candidates).extracting(Candidate::maleId).containsExactly(M022, M014);
        assertThat(candidates).extracting(male -> male.grade().words()).containsExactly("in time", "stored sperm");
        assertThat(candidates)
                .extracting(Candidate::share)
                // weights 1 and ½^(24/90) = 0.8312
                .containsExactly(new BigDecimal("0.5461"), new BigDecimal("0.4539"));
    }

    @Test
    void grades_change_at_the_conception_after_a_year_and_after_71_months() {
        var conceived = LocalDate.parse("2026-02-26");
        for (var grade : List.of(
                new Graded(0, "in time"),
                new Graded(1, "stored sperm"),
                new Graded(365, "stored sperm"),
                new Graded(366, "rare"),
                new Graded(2160, "rare"),
                new Graded(2161, "beyond every published case"))) {
            var last = conceived.minusDays(grade.daysBefore());
            assertThat(of(BORN, null, new Meeting(M014, last.minusDays(30), last, false)))
                    .singleElement()
                    .satisfies(male -> assertThat(male.grade().words()).isEqualTo(grade.words()));
        }
    }

    @Test
    void males_who_were_both_with_her_at_the_conception_share_equally_and_a_copulation_seen_doubles() {
        var together = of(
                BORN,
                ovulation("2026-02-24"),
                met(M014, "2026-01-05", "2026-03-20"),
                met(M022, "2026-01-05", "2026-03-20"));
        var seen = of(
                BORN,
                ovulation("2026-02-24"),
                new Meeting(M014, LocalDate.parse("2026-01-05"), LocalDate.parse("2026-03-20"), true),
                met(M022, "2026-01-05", "2026-03-20"));

        assertThat(together).extracting(Candidate::share).allMatch(share -> share.compareTo(half()) == 0);
        assertThat(seen)
                .extracting(Candidate::share)
                .containsExactly(new BigDecimal("0.6667"), new BigDecimal("0.3333"));
    }

    @Test
    void a_male_whom_she_met_only_when_it_was_too_late_is_no_candidate() {
        // 108 days before the birth at the latest: 90 from the shed, which follows 18 days after the ovulation
        assertThat(of(BORN, null, met(M014, "2026-03-14", "2026-04-01"))).isEmpty();
        assertThat(of(BORN, null, met(M014, "2026-03-13", "2026-04-01"))).hasSize(1);
        assertThat(of(BORN, ovulation("2026-02-24"), met(M014, "2026-02-25", "2026-04-01")))
                .isEmpty();
    }

    @Test
    void a_male_beyond_every_published_case_is_named_and_has_no_share() {
        var candidates = of(BORN, null, met(M014, "2015-01-01", "2015-02-01"), met(M022, "2026-01-01", "2026-02-01"));

        assertThat(candidates).extracting(Candidate::maleId).containsExactly(M022, M014);
        assertThat(candidates)
                .extracting(Candidate::share)
                .containsExactly(new BigDecimal("1.0000"), new BigDecimal("0.0000"));
        assertThat(of(BORN, null, met(M014, "2015-01-01", "2015-02-01")).get(0).share())
                .isZero();
    }

    @Test
    void where_the_birth_is_known_to_the_year_a_male_has_the_benefit_of_the_doubt() {
        var year = RoughDate.parse("2026");

        assertThat(of(year, null, met(M014, "2025-08-01", "2025-09-05")).get(0).grade())
                .isEqualTo(Grade.IN_TIME);
        assertThat(of(year, null, met(M014, "2026-09-14", "2026-10-01"))).hasSize(1);
        assertThat(of(year, null, met(M014, "2026-09-15", "2026-10-01"))).isEmpty();
    }

    @Test
    void shares_sum_to_one_whoever_met_her() {
        var random = new Random(20260629);
        for (int run = 0; run < 500; run++) {
            var meetings = new ArrayList<Meeting>();
            for (int i = 0; i <= random.nextInt(9); i++) {
                var last = LocalDate.parse("2026-02-26").minusDays(random.nextInt(2160));
                meetings.add(new Meeting(new UUID(1, random.nextInt(6)), last, last, random.nextBoolean()));
            }
            var candidates = of(BORN, null, meetings.toArray(Meeting[]::new));

            assertThat(candidates.stream().map(Candidate::share).reduce(BigDecimal.ZERO, BigDecimal::add))
                    .as("run %d of seed 20260629", run)
                    .isEqualByComparingTo(BigDecimal.ONE);
            assertThat(candidates).extracting(Candidate::maleId).doesNotHaveDuplicates();
        }
    }

    private record Graded(int daysBefore, String words) {}

    private static BigDecimal half() {
        return new BigDecimal("0.5");
    }

    private static Landmark.Noted ovulation(String on) {
        return new Landmark.Noted(OVULATION, LocalDate.parse(on), HowKnown.SEEN);
    }

    private static Meeting met(UUID maleId, String from, String until) {
        return new Meeting(maleId, LocalDate.parse(from), LocalDate.parse(until), false);
    }

    private static Conception conception(RoughDate born, Landmark.Noted ovulation) {
        return Conception.of(born, ovulation, TaxonProfile.BOAS.gestation());
    }

    private static List<Candidate> of(RoughDate born, Landmark.Noted ovulation, Meeting... meetings) {
        return CandidateSires.of(conception(born, ovulation), List.of(meetings), TaxonProfile.BOAS);
    }
}
