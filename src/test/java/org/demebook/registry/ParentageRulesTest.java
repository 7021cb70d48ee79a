package org.demebook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.problem.Finding.Level.BLOCK;
import static org.demebook.problem.Finding.Level.ERROR;
import static org.demebook.problem.Finding.Level.NOTICE;
import static org.demebook.problem.Finding.Level.WARNING;

import java.time.LocalDate;
import java.util.List;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.problem.Finding;
import org.demebook.problem.Rule;
import org.demebook.registry.LocalityClaim.Certainty;
import org.demebook.registry.SexDetermination.Confidence;
import org.demebook.registry.SexDetermination.Method;
import org.demebook.taxon.TaxonProfile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Grades of the catalogue of data errors: common practice, no source, where none is named. */
class ParentageRulesTest {
    private static final ParentageRules RULES =
            new ParentageRules(TaxonProfile.BOAS, "Marrowfin Cay", LocalDate.of(2026, 11, 25));

    private static final Kin DAM = new Kin("013", Sex.FEMALE, date("2020-06-01"), null);
    private static final Kin SIRE = new Kin("014", Sex.MALE, date("2020-06-01"), null);

    // ── sex ──────────────────────────────────────────────────────────────────────────────────────────────────────────

    @ParameterizedTest
    @CsvSource({
        "LOOKS, PRESUMED, WARNING",
        "PROBING, PRESUMED, WARNING",
        "PROBING, EXAMINED, BLOCK",
        "DNA, CONFIRMED, BLOCK",
        ", , BLOCK",
    })
    void a_dam_that_is_male_is_blocked_unless_its_sex_is_only_presumed(
            @Nullable Method method, @Nullable Confidence confidence, Finding.Level level) {
        var how = method == null || confidence == null ? null : new SexDetermination(method, confidence);
        var male = new Kin("013", Sex.MALE, date("2020-06-01"), null, how, false);
        var female = new Kin("014", Sex.FEMALE, date("2020-06-01"), null, how, false);

        assertThat(only(check(young("2026-06-29"), male, null))).satisfies(found -> {
            assertThat(found.rule()).isEqualTo(Rule.DAM_NOT_FEMALE);
            assertThat(found.level()).isEqualTo(level);
            assertThat(found.message()).contains("013", "101", "male");
        });
        assertThat(only(check(young("2026-06-29"), null, female)).level()).isEqualTo(level);
    }

    @Test
    void which_of_sex_and_parentage_is_likelier_wrong_follows_from_how_the_sex_was_determined() {
        var looks = new SexDetermination(Method.LOOKS, Confidence.PRESUMED);
        var dna = new SexDetermination(Method.DNA, Confidence.CONFIRMED);

        assertThat(only(check(young("2026"), new Kin("013", Sex.MALE, null, null, looks, false), null))
                        .likelier())
                .startsWith("The sex");
        assertThat(only(check(young("2026"), new Kin("013", Sex.MALE, null, null, dna, false), null))
                        .likelier())
                .startsWith("The dam");
    }

    // ── ages ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    @ParameterizedTest
    @CsvSource({
        "2026-06-29, BORN_BEFORE_PARENT, BLOCK", // the very day
        "2025-12-01, DAM_TOO_YOUNG, BLOCK", // 210 days
        "2025-06-30, DAM_TOO_YOUNG, BLOCK", // 364 days
        "2025-06-29, DAM_YOUNG, WARNING", // 365 days
        "2024-06-30, DAM_YOUNG, WARNING", // 729 days
        "2001-06-28, PARENT_OLD, WARNING",
    })
    void a_dam_is_blocked_under_a_year_and_warned_of_under_two_and_over_twenty_five(
            String damBorn, Rule rule, Finding.Level level) {
        var found = only(check(young("2026-06-29"), new Kin("013", Sex.FEMALE, date(damBorn), null), null));

        assertThat(found.rule()).isEqualTo(rule);
        assertThat(found.level()).isEqualTo(level);
        assertThat(found.message()).contains(damBorn, "2026-06-29");
        assertThat(found.why()).isEqualTo(rule.why());
    }

    @ParameterizedTest
    @CsvSource({"2024-06-29", "2001-06-29", "2024", "2001", "../2026-06-28"})
    void a_dam_that_may_have_had_the_age_is_left_in_peace(String damBorn) {
        assertThat(check(young("2026-06-29"), new Kin("013", Sex.FEMALE, date(damBorn), null), null))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"2026, DAM_TOO_YOUNG", "2025, DAM_YOUNG", "2027, BORN_BEFORE_PARENT"})
    void a_year_alone_stands_for_every_day_of_it(String damBorn, Rule rule) {
        var dam = new Kin("013", Sex.FEMALE, date(damBorn), null);
        assertThat(only(check(young("2026"), dam, null)).rule()).isEqualTo(rule);
    }

    @Test
    void of_two_dates_the_one_that_is_not_known_to_the_day_is_likelier_wrong() {
        var dam = new Kin("013", Sex.FEMALE, date("2026"), null);
        assertThat(only(check(young("2026-06-29"), dam, null)).likelier()).contains("013's birth", "2026");
    }

    // ── deaths ───────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_dam_that_died_before_the_birth_is_blocked_and_a_notice_where_the_young_was_removed_from_her() {
        var dead = new Kin("013", Sex.FEMALE, date("2020-06-01"), date("2026-06-28"));
        var removed = new Kin("101", Sex.UNKNOWN, date("2026-06-29"), null, null, true);

        assertThat(only(check(young("2026-06-29"), dead, null)))
                .satisfies(found -> assertThat(found.level()).isEqualTo(BLOCK))
                .satisfies(found -> assertThat(found.message()).contains("2026-06-28", "2026-06-29"));
        assertThat(only(check(removed, dead, null)).level()).isEqualTo(NOTICE);
        assertThat(check(young("2026-06-28"), dead, null)).isEmpty();
    }

    // conceived 123 days before the birth of 2026-06-29, on 2026-02-26; the longest storage known is 71 months, 2 160
    // days:
    // Levine, Schuett & Booth (2021), PLoS ONE 16: e0252049
    @ParameterizedTest
    @CsvSource({
        "2026-02-26, , 0",
        "2026-06-01, , 0",
        "2026-02-25, WARNING, 1",
        "2025-11-02, WARNING, 116", // scenario: the dead sire
        "2025-02-26, WARNING, 365",
        "2025-02-25, WARNING, 366",
        "2020-03-29, WARNING, 2160",
        "2020-03-28, WARNING, 2161",
    })
    void a_sire_that_died_before_the_conception_is_warned_of_in_words_graded_by_the_days_and_never_blocked(
            String died, Finding.@Nullable Level level, int days) {
        var dead = new Kin("014", Sex.MALE, date("2015-06-01"), date(died));
        var found = check(young("2026-06-29"), null, dead);

        if (level == null) {
            assertThat(found).isEmpty();
        } else {
            assertThat(only(found).rule()).isEqualTo(Rule.STORED_SPERM);
            assertThat(only(found).level()).isEqualTo(level);
            assertThat(only(found).message()).contains("2026-02-26, %d days after the death".formatted(days));
            assertThat(only(found).message()).contains("71 months (2160 days)");
            assertThat(only(found).message().contains("beyond every published case"))
                    .isEqualTo(days > 2160);
            assertThat(only(found).message().contains("low confidence; a DNA test is advised"))
                    .isEqualTo(days > 365 && days <= 2160);
        }
    }

    @Test
    void nothing_dies_before_it_is_born_whatever_is_said() {
        var young = new Kin("101", Sex.UNKNOWN, date("2026-06-29"), date("2026-06-28"));
        assertThat(only(check(young, null, null)).level()).isEqualTo(ERROR);
    }

    // ── origin ───────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_founder_has_no_registered_parents_unless_it_is_left_so() {
        var found = RULES.check(young("2026-06-29"), Origin.WILD_CAUGHT, DAM, List.of(SIRE));
        assertThat(only(found.stream().map(Breach::finding).toList()).rule()).isEqualTo(Rule.FOUNDER_WITH_PARENTS);
        assertThat(found.get(0).finding().level()).isEqualTo(BLOCK);
    }

    // ── dates ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_day_and_month_that_resolve_another_finding_when_swapped_are_warned_of() {
        var dam = new Kin("013", Sex.FEMALE, date("2020-06-01"), date("2026-05-01"));
        var swapped = check(young("2026-11-03"), dam, null);

        assertThat(swapped)
                .extracting(Finding::rule)
                .containsExactly(Rule.DAM_DIED_BEFORE_BIRTH, Rule.DAY_MONTH_SWAPPED);
        assertThat(swapped.get(1).level()).isEqualTo(WARNING);
        assertThat(swapped.get(1).message()).contains("2026-11-03", "2026-03-11");
        // the 29th is no month, and a swap that resolves nothing is no hint
        assertThat(check(young("2026-06-29"), dam, null)).hasSize(1);
        assertThat(check(young("2026-06-07"), dam, null)).hasSize(1);
        assertThat(check(young("2026-03-11"), dam, null)).isEmpty();
    }

    @Test
    void a_day_that_has_not_come_yet_is_an_error_and_says_when_a_swap_would_have_come() {
        var dates = new DateRules(LocalDate.of(2026, 11, 25));

        assertThat(only(findings(dates.check("born", date("2026-12-03")))).level())
                .isEqualTo(ERROR);
        assertThat(only(findings(dates.check("born", date("2026-12-03")))).likelier())
                .contains("2026-03-12");
        assertThat(only(findings(dates.check("born", date("2027")))).likelier()).isNull();
        assertThat(dates.check("born", date("2026"))).isEmpty();
        // it may be tomorrow already where the keeper lives
        assertThat(dates.check("born", date("2026-11-26"))).isEmpty();
        assertThat(dates.check("born", date("2026-11-27"))).hasSize(1);
    }

    @Test
    void the_first_of_january_1900_is_taken_for_no_date_at_all() {
        var dates = new DateRules(LocalDate.of(2026, 11, 25));

        assertThat(only(findings(dates.check("born", date("1900-01-01")))).rule())
                .isEqualTo(Rule.DATE_PLACEHOLDER);
        assertThat(only(findings(dates.check("born", date("1900-01-01")))).level())
                .isEqualTo(WARNING);
        assertThat(dates.check("born", date("1900"))).isEmpty();
        assertThat(dates.check("born", date("1900-01-02"))).isEmpty();
    }

    // ─────────────────────────────────────────────────────────────────────────────────────────────────────────────────

    // the rules of the localities: 16 and 17 of the trade's catalogue, common practice, no source
    @Test
    void young_of_parents_from_two_localities_are_mixed_and_never_pure() {
        var skerry = of("014", Sex.MALE, "Tern Skerry", Certainty.DOCUMENTED);
        var found = only(check(young("2026"), DAM, skerry));
        assertThat(found.rule()).isEqualTo(Rule.LOCALITY_MIXED);
        assertThat(found.level()).isEqualTo(WARNING);
        assertThat(found.message())
                .contains("013 is of Marrowfin Cay (stated), 014 of Tern Skerry (documented)")
                .contains("mixed (Marrowfin Cay/Tern Skerry), and never pure");
        assertThat(found.likelier()).contains("013");

        assertThat(check(young("2026"), DAM, of("014", Sex.MALE, " marrowfin cay", Certainty.STATED)))
                .isEmpty();
        var both = of("013", Sex.FEMALE, "Tern Skerry", Certainty.DOCUMENTED);
        assertThat(check(young("2026"), both, skerry)).isEmpty();
        var claimed = of("101", Sex.UNKNOWN, "Marrowfin Cay", Certainty.STATED);
        assertThat(only(check(claimed, both, skerry)).message())
                .contains("101 is claimed to be of Marrowfin Cay (stated), but its parent 013 is of Tern Skerry");
    }

    @Test
    void a_claim_is_no_surer_than_those_of_the_parents() {
        var documented = of("101", Sex.UNKNOWN, "Marrowfin Cay", Certainty.DOCUMENTED);
        var doubtful = of("014", Sex.MALE, "Marrowfin Cay", Certainty.DOUBTFUL);
        var paper = of("013", Sex.FEMALE, "Marrowfin Cay", Certainty.DOCUMENTED);
        var found = only(check(documented, paper, doubtful));
        assertThat(found.rule()).isEqualTo(Rule.LOCALITY_SURER_THAN_PARENT);
        assertThat(found.message()).contains("101 is claimed as documented, that of its parent 014 as doubtful");
        // of whom nothing is said, it is stated
        assertThat(only(check(documented, DAM, null)).message()).contains("parent 013 as stated");
        assertThat(check(of("101", Sex.UNKNOWN, "Marrowfin Cay", Certainty.STATED), DAM, SIRE))
                .isEmpty();
        assertThat(check(of("101", Sex.UNKNOWN, "Marrowfin Cay", Certainty.DOUBTFUL), paper, doubtful))
                .isEmpty();
        assertThat(check(documented, null, null)).isEmpty();
    }

    private static Kin of(String label, Sex sex, String locality, Certainty certainty) {
        return new Kin(
                label,
                sex,
                date(sex == Sex.UNKNOWN ? "2026" : "2020-06-01"),
                null,
                null,
                false,
                new LocalityClaim(locality, certainty));
    }

    private static List<Finding> check(Kin young, @Nullable Kin dam, @Nullable Kin sire) {
        return findings(RULES.check(young, Origin.CAPTIVE_BRED, dam, sire == null ? List.of() : List.of(sire)));
    }

    private static List<Finding> findings(List<Breach> breaches) {
        return breaches.stream().map(Breach::finding).toList();
    }

    private static Finding only(List<Finding> findings) {
        assertThat(findings).hasSize(1);
        return findings.get(0);
    }

    private static Kin young(String born) {
        return new Kin("101", Sex.UNKNOWN, date(born), null);
    }

    private static RoughDate date(String text) {
        return RoughDate.parse(text);
    }
}
