package org.demebook.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.breeding.DueWindowScenarioTest.id;
import static org.demebook.breeding.DueWindowScenarioTest.standing;
import static org.demebook.breeding.Notes.introduce;
import static org.demebook.breeding.Notes.litter;
import static org.demebook.breeding.Notes.noted;
import static org.demebook.breeding.Notes.sign;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.demebook.Colony;
import org.demebook.litter.Mate;
import org.demebook.notation.RoughDate;
import org.demebook.problem.Finding.Level;
import org.demebook.registry.Animals;
import org.demebook.registry.Breach;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Whose the young may be, and whether a birth agrees with what was recorded before it. Gaps as the trade grades them: common
 * practice, no source, but for the 71 months of Levine, Schuett &amp; Booth (2021), PLoS ONE 16: e0252049 (abstract).
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CandidateSiresScenarioTest {
    @Inject
    Sires record;

    @Inject
    Animals animals;

    /** Scenario A9. */
    @Test
    void given_a_dam_who_met_two_males_then_both_are_candidates_with_shares_that_sum_to_one() {
        var colony = Colony.found();
        var m013 = colony.female(WREN);
        var m014 = colony.male(WREN);
        var m022 = colony.male(WREN);
        introduce(colony, WREN, m013, m014, "2026-01-05", "2026-01-31");
        introduce(colony, WREN, m013, m022, "2026-02-01", "2026-02-28");
        noted(colony, WREN, m013, sign("ovulation", "2026-02-24"));

        colony.get(WREN, "/animals/" + m013 + "/candidate-sires?bornOn=2026-06-29")
                .statusCode(200)
                .body("conceivedOn", equalTo("2026-02-24"))
                .body("fromOvulation", equalTo(true))
                .body("candidates.male", contains(m022, m014))
                .body("candidates.grade", contains("in time", "stored sperm"))
                .body("candidates.lastMetOn", contains("2026-02-28", "2026-01-31"))
                .body("candidates.daysBeforeConception", contains(0, 24))
                .body("note", containsString("common practice, no source"));
        var mates = mates(colony, m013, "2026-06-29");
        assertThat(mates).extracting(Mate::maleId).containsExactly(id(colony, m022), id(colony, m014));
        assertThat(mates.stream().map(Mate::share).reduce(BigDecimal.ZERO, BigDecimal::add))
                .isEqualByComparingTo(BigDecimal.ONE);
        // what is proposed can be sent as it stands
        var litter = new HashMap<String, Object>(litter(m013, "2026-06-29"));
        litter.put(
                "sire",
                Map.of(
                        "kind",
                        "candidates",
                        "candidates",
                        List.of(
                                Map.of(
                                        "animal",
                                        m022,
                                        "probability",
                                        mates.get(0).share()),
                                Map.of(
                                        "animal",
                                        m014,
                                        "probability",
                                        mates.get(1).share()))));
        colony.post(WREN, "/litters", litter).statusCode(201);
    }

    /** Scenario A7: birth less 123 days is 26 February 2026, 116 days after his death. */
    @Test
    void a_dead_sire_last_met_her_on_the_day_of_his_death() {
        var colony = Colony.found();
        var m013 = colony.female(WREN);
        var m014 = colony.male(WREN);
        introduce(colony, WREN, m013, m014, "2025-09-01", null);
        colony.put(WREN, m014, "/death", Map.of("on", "2025-11-02")).statusCode(200);

        colony.get(WREN, "/animals/" + m013 + "/candidate-sires?bornOn=2026-06-29")
                .body("conceivedOn", equalTo("2026-02-26"))
                .body("fromOvulation", equalTo(false))
                .body("candidates", hasSize(1))
                .body("candidates[0].lastMetOn", equalTo("2025-11-02"))
                .body("candidates[0].daysBeforeConception", equalTo(116))
                .body("candidates[0].grade", equalTo("stored sperm"));
    }

    @Test
    void a_male_that_was_sold_last_met_her_on_the_day_of_the_handing_over() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        introduce(colony, WREN, female, male, "2025-09-01", null);
        String transfer = colony.post(
                        WREN,
                        "/transfers",
                        Map.of("animal", male, "kind", "sale", "to", DOV, "handedOverOn", "2025-10-10"))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        String collection = colony.get(DOV, "/collections").extract().path("[0].id");
        colony.post(DOV, "/transfers/" + transfer + "/acceptance", Map.of("collection", collection))
                .statusCode(200);

        colony.get(WREN, "/animals/" + female + "/candidate-sires?bornOn=2026-06-29")
                .body("candidates[0].lastMetOn", equalTo("2025-10-10"));
    }

    @Test
    void a_copulation_seen_counts_twice_and_makes_a_candidate_of_a_male_that_was_never_introduced() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        var introduced = colony.male(WREN);
        var visitor = colony.male(DOV);
        introduce(colony, WREN, female, introduced, "2026-01-05", "2026-02-26");
        noted(colony, WREN, female, sign("copulation", "2026-02-26", Map.of("male", visitor)));

        colony.get(WREN, "/animals/" + female + "/candidate-sires?bornOn=2026-06-29")
                .body("candidates.male", contains(visitor, introduced))
                .body("candidates.copulationSeen", contains(true, false))
                .body("candidates.share", contains(0.6667f, 0.3333f));
    }

    @Test
    void days_from_the_shed_are_those_to_the_birth_of_the_same_cycle() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14"));

        // 14 March to 29 June 2026: 107 days, counted by hand
        assertThat(daysFromShed(colony, female, "2026-06-29")).hasValue(107);
        colony.post(WREN, "/litters", litter(female, "2026-06-29")).statusCode(201);
        assertThat(daysFromShed(colony, female, "2026-06-29")).hasValue(107);
        assertThat(daysFromShed(colony, female, "2026-06")).isEmpty();
        assertThat(daysFromShed(colony, colony.female(WREN), "2026-06-29")).isEmpty();
    }

    // ── rule 6 of the catalogue ──────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_birth_before_the_first_pairing_is_a_warning_and_with_stored_sperm_possible_it_says_so() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        introduce(colony, WREN, female, colony.male(WREN), "2026-07-10", null);

        assertThat(check(colony, female, "2026-06-29")).singleElement().satisfies(breach -> {
            assertThat(breach.finding().level()).isEqualTo(Level.WARNING);
            assertThat(breach.finding().message())
                    .contains("2026-06-29", "2026-07-10", "Check both days")
                    .doesNotContain("stored");
        });

        var earlier = colony.male(WREN);
        introduce(colony, WREN, female, earlier, "2024-01-01", "2024-03-01");
        assertThat(check(colony, female, "2026-06-29")).singleElement().satisfies(breach -> {
            assertThat(breach.finding().level()).isEqualTo(Level.NOTICE);
            assertThat(breach.finding().message()).contains("sperm stored from " + earlier, "2024-03-01");
        });
    }

    @Test
    void a_birth_too_soon_after_the_first_pairing_is_a_warning_and_an_ordinary_one_is_not() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        introduce(colony, WREN, female, colony.male(WREN), "2026-03-13", null);

        // 108 days: 90 from the shed, which follows 18 days after the ovulation
        assertThat(check(colony, female, "2026-06-29")).isEmpty();
        assertThat(check(colony, female, "2026-06-28")).hasSize(1);
        assertThat(check(colony, colony.female(WREN), "2026-06-29")).isEmpty();
    }

    // ── rule 7 of the catalogue ──────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_birth_less_than_90_or_more_than_150_days_after_the_shed_is_a_warning() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14"));

        assertThat(check(colony, female, "2026-06-11")).singleElement().satisfies(breach -> {
            assertThat(breach.finding().level()).isEqualTo(Level.WARNING);
            assertThat(breach.finding().message()).contains("89 days after the shed of 2026-03-14");
        });
        assertThat(check(colony, female, "2026-06-12")).isEmpty();
        assertThat(check(colony, female, "2026-08-11")).isEmpty();
        assertThat(check(colony, female, "2026-08-12")).hasSize(1);
    }

    @Test
    void a_birth_before_the_shed_is_held_back_unless_the_shed_was_guessed() {
        var colony = Colony.found();
        var seen = colony.female(WREN);
        noted(colony, WREN, seen, sign("post-ovulation-shed", "2026-07-01"));
        var guessed = colony.female(WREN);
        noted(colony, WREN, guessed, sign("post-ovulation-shed", "2026-07-01", Map.of("howKnown", "guessed")));

        assertThat(check(colony, seen, "2026-06-29")).singleElement().satisfies(breach -> {
            assertThat(breach.finding().level()).isEqualTo(Level.BLOCK);
            assertThat(breach.finding().message()).contains("2026-06-29", "2026-07-01");
        });
        assertThat(check(colony, guessed, "2026-06-29")).singleElement().satisfies(breach -> {
            assertThat(breach.finding().level()).isEqualTo(Level.WARNING);
            assertThat(breach.finding().likelier()).contains("it was guessed");
        });
    }

    private List<Mate> mates(Colony colony, String dam, String born) {
        return record.mates(standing(colony, WREN).populationId(), id(colony, dam), RoughDate.parse(born));
    }

    private OptionalInt daysFromShed(Colony colony, String dam, String born) {
        return record.daysFromShed(standing(colony, WREN).populationId(), id(colony, dam), RoughDate.parse(born));
    }

    private List<Breach> check(Colony colony, String dam, String born) {
        var by = standing(colony, WREN);
        return record.check(by, animals.custody(by, dam), RoughDate.parse(born));
    }
}
