package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.FieldGroup.BREEDING_RESULTS;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.consent.Purpose.PEDIGREE_VIEW;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.demebook.planning.Keeping.TODAY;
import static org.demebook.planning.Keeping.breeding;
import static org.demebook.planning.Keeping.partners;
import static org.demebook.planning.Keeping.test;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;
import org.demebook.consent.Recipient;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Who is not paired, and in what words. That a test counts 180 days, and 300 days between litters, are common practice, no
 * source; days are counted on a calendar. Each rule is seen by an animal that is proposed until the rule says no.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class WhoMayBreedTest {
    private static final String ON_HOLD_TEST =
            "on hold: test. One that the pairing needs is missing, not in date or not negative; its keeper knows which";

    // scenario D3
    @Test
    void an_animal_whose_test_is_fourteen_months_old_is_on_hold_and_nothing_else_is_told_of_it() {
        var marrowfin = Marrowfin.settled();
        var colony = marrowfin.colony;
        var m014 = marrowfin.number(14);
        asks(colony, WREN, marrowfin.number(13)).body("pairings.sire.number", hasItem(m014));
        var sampledOn = TODAY.minusMonths(14);

        test(colony, INES, m014, "reptarenavirus", "negative", sampledOn);

        var answer = asks(colony, WREN, marrowfin.number(13))
                .body("excluded.find { it.number == '%s' }.reason".formatted(m014), equalTo(ON_HOLD_TEST));
        assertThat(answer.extract().<List<String>>path("pairings.sire.number")).doesNotContain(m014);
        assertThat(answer.extract().asString())
                .doesNotContain(sampledOn.toString(), "reptarenavirus", "RT-PCR", "negative,", INES);

        // her own keeper reads which, and until when it counted
        colony.get(INES, "/pairings?for=" + m014)
                .statusCode(409)
                .body("type", equalTo("/problems/on-hold"))
                .body("detail", containsString("reptarenavirus, of " + sampledOn))
                .body("detail", containsString("counts until " + sampledOn.plusDays(180)));

        test(colony, INES, m014, "Reptarenavirus", "negative", TODAY.minusDays(20));
        asks(colony, WREN, marrowfin.number(13)).body("pairings.sire.number", hasItem(m014));
    }

    @Test
    void whatever_is_wrong_with_a_test_others_are_told_the_same() {
        var told = new HashSet<String>();
        var own = new HashSet<String>();
        for (var result : List.of("negative", "positive", "unclear")) {
            var colony = Colony.found();
            var female = colony.female(WREN);
            var male = colony.male(INES);
            var sampledOn = result.equals("negative") ? TODAY.minusDays(181) : TODAY.minusDays(3);
            test(colony, INES, male, "nidovirus", result, sampledOn);
            told.add(partners(colony, WREN, female).replace(male, "HIM").replace(female, "HER"));
            own.add(colony.get(INES, "/pairings?for=" + male)
                    .statusCode(409)
                    .extract()
                    .<String>path("detail")
                    .replace(male, "HIM"));
        }
        assertThat(told).hasSize(1).first().asString().contains(ON_HOLD_TEST);
        assertThat(own)
                .hasSize(3)
                .filteredOn(words -> words.contains("positive") || words.contains("unclear"))
                .hasSize(2)
                .allMatch(words -> words.contains("reptile veterinarian"));
    }

    @Test
    void a_test_counts_up_to_its_last_day_seen_from_the_day_of_the_pairing() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        var male = colony.male(INES);
        test(colony, INES, male, "nidovirus", "negative", TODAY.minusDays(80));
        asks(colony, WREN, female + "&pairOn=" + TODAY.plusDays(100)).body("pairings.sire.number", contains(male));
        asks(colony, WREN, female + "&pairOn=" + TODAY.plusDays(101))
                .body("excluded.number", contains(male))
                .body("excluded[0].reason", equalTo(ON_HOLD_TEST));
    }

    @Test
    void where_the_population_says_which_agents_each_of_them_is_needed_and_no_other() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        var male = colony.male(INES);
        test(colony, INES, male, "mites", "negative", TODAY.minusYears(2));
        test(colony, WREN, female, "Nidovirus", "negative", TODAY.minusDays(9));
        asks(colony, WREN, female).body("excluded[0].reason", equalTo(ON_HOLD_TEST));

        breeding(colony, figures -> figures.put("testsBeforePairing", List.of("nidovirus")));
        asks(colony, WREN, female).body("excluded[0].reason", equalTo(ON_HOLD_TEST));
        colony.get(INES, "/pairings?for=" + male)
                .statusCode(409)
                .body("detail", containsString("no test for nidovirus is written down"));

        test(colony, INES, male, "nidovirus", "negative", TODAY.minusDays(9));
        asks(colony, WREN, female).body("pairings.sire.number", contains(male));
    }

    @Test
    void a_test_is_looked_at_only_where_its_keeper_lets_health_be_computed_with() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        var female = colony.female(WREN);
        var male = colony.male(INES);
        var before = partners(colony, WREN, female);
        assertThat(before).contains(male);

        test(colony, INES, male, "nidovirus", "positive", TODAY.minusDays(3));
        assertThat(partners(colony, WREN, female)).isEqualTo(before);

        var granted = grants.members(INES, PAIRING_COMPUTATION, List.of(HEALTH), COMPUTE);
        asks(colony, WREN, female).body("excluded[0].reason", equalTo(ON_HOLD_TEST));
        grants.withdraw(INES, granted);
        assertThat(partners(colony, WREN, female)).isEqualTo(before);
    }

    @Test
    void a_test_of_an_earlier_keeper_counts_for_others_as_far_as_that_keeper_grants_it() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        grants.open(DOV);
        grants.members(INES, PAIRING_COMPUTATION, List.of(HEALTH), COMPUTE);
        var female = colony.female(WREN);
        var male = colony.male(DOV);
        test(colony, DOV, male, "nidovirus", "positive", TODAY.minusDays(3));
        String id = colony.post(DOV, "/transfers", Map.of("animal", male, "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);

        asks(colony, WREN, female).body("pairings.sire.number", contains(male));
        colony.get(INES, "/pairings?for=" + male).statusCode(409).body("detail", containsString("was positive"));
        grants.members(DOV, PAIRING_COMPUTATION, List.of(HEALTH), COMPUTE);
        asks(colony, WREN, female).body("excluded[0].reason", equalTo(ON_HOLD_TEST));
    }

    // ── rest ─────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_dam_rests_until_the_next_litter_could_come_300_days_after_the_last() {
        var colony = Colony.found();
        var male = colony.male(WREN);
        var dam = colony.female(INES);
        var born = TODAY.minusDays(40);
        asks(colony, WREN, male).body("pairings.dam.number", contains(dam));

        colony.post(INES, "/litters", litter(dam, born.toString(), 0, 2, 9)).statusCode(201);

        // young conceived on the day of the pairing are born 123 days later
        var from = born.plusDays(300 - 123);
        asks(colony, WREN, male)
                .body("excluded.number", contains(dam))
                .body("excluded[0].reason", containsString("pair her from " + from + " on"));
        asks(colony, WREN, male + "&pairOn=" + from.minusDays(1)).body("excluded.number", contains(dam));
        asks(colony, WREN, male + "&pairOn=" + from).body("pairings.dam.number", contains(dam));
        colony.get(INES, "/pairings?for=" + dam)
                .statusCode(422)
                .body("type", equalTo("/problems/no-candidates"))
                .body("detail", containsString("pair her from " + from + " on. Ask for that day (pairOn)."));

        breeding(colony, figures -> figures.put("daysBetweenLittersUsual", 163));
        asks(colony, WREN, male).body("pairings.dam.number", contains(dam));
    }

    @Test
    void a_litter_without_young_is_looked_at_only_where_breeding_results_are_granted() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        var male = colony.male(WREN);
        var dam = colony.female(INES);
        var before = partners(colony, WREN, male);
        assertThat(before).contains(dam);

        colony.post(INES, "/litters", litter(dam, TODAY.minusDays(40).toString(), 0, 2, 9))
                .statusCode(201);
        assertThat(partners(colony, WREN, male)).isEqualTo(before);

        var granted = grants.members(INES, PAIRING_COMPUTATION, List.of(BREEDING_RESULTS), COMPUTE);
        // computed with, not read: no day is told
        asks(colony, WREN, male).body("excluded[0].reason", equalTo("rests after a litter"));
        grants.withdraw(INES, granted);
        assertThat(partners(colony, WREN, male)).isEqualTo(before);
    }

    @Test
    void young_whose_dam_may_be_seen_tell_of_her_litter() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        var male = colony.male(WREN);
        var dam = colony.female(INES);
        var undated = colony.female(INES);
        var born = TODAY.minusDays(40);
        asks(colony, WREN, male).body("pairings.dam.number", contains(dam, undated));

        colony.register(INES, with(animal("male", born.toString()), "dam", dam));
        colony.register(INES, with(animal("male", "../" + TODAY), "dam", undated));

        asks(colony, WREN, male)
                .body("excluded.find { it.number == '%s' }.reason".formatted(dam), containsString("rests: "))
                .body("pairings.dam.number", contains(undated))
                .body("pairings[0].notes", hasItem(containsString("make sure that she has rested (300 days")));
    }

    // ── locality ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void what_is_of_another_or_a_doubtful_locality_is_on_hold_with_all_its_young_until_a_coordinator_lifts_it() {
        var colony = Colony.found();
        var male = colony.male(WREN);
        var foreign = colony.register(INES, animal("female", "2014-06-01"));
        var young = colony.register(INES, with(animal("female", "2019-06-01"), "dam", foreign));
        var doubtful = colony.female(INES);
        asks(colony, WREN, male).body("excluded", nullValue());

        locality(colony, foreign, Map.of("locality", "Tern Skerry", "certainty", "documented"));
        locality(colony, doubtful, Map.of("certainty", "doubtful"));

        var excluded = asks(colony, WREN, male).body("pairings", equalTo(List.of()));
        assertThat(Set.copyOf(excluded.extract().<List<String>>path("excluded.number")))
                .isEqualTo(Set.of(foreign, young, doubtful));
        excluded.body("excluded[0].reason", containsString("of another locality"));
        colony.get(INES, "/animals/" + young + "/breeding-hold")
                .body("onHold", equalTo(true))
                .body("basis", equalTo("locality"));
        colony.get(INES, "/pairings?for=" + young).statusCode(409).body("type", equalTo("/problems/on-hold"));

        var word = Map.of("reason", "typed, and of the cay");
        colony.post(INES, "/animals/" + young + "/breeding-hold/lifting", word)
                .statusCode(403)
                .body("detail", containsString("Correct the claim if it is wrong"));
        colony.post(WREN, "/animals/" + young + "/breeding-hold/lifting", word).statusCode(200);
        asks(colony, WREN, male).body("pairings.dam.number", contains(young));

        locality(colony, doubtful, Map.of("certainty", "documented"));
        asks(colony, WREN, male).body("pairings.dam.number", hasItem(doubtful));
    }

    @Test
    void a_locality_that_the_asker_may_not_see_changes_nothing() {
        var colony = Colony.foundPrivate();
        var grants = new Granting(colony.code);
        grants.open(INES);
        var male = colony.male(WREN);
        var founder = colony.register(DOV, animal("female", "2014-06-01"));
        grants.computeOnly(DOV);
        var shown = grants.give(
                DOV,
                Recipient.keeper(Granting.keeper(INES)),
                List.of(founder),
                List.of(IDENTITY),
                List.of(PEDIGREE_VIEW),
                List.of(READ));
        assertThat(shown).isNotEmpty();
        colony.register(INES, with(animal("female", "2019-06-01"), "dam", founder));
        var before = partners(colony, WREN, male);

        colony.put(DOV, founder, "/locality", Map.of("certainty", "doubtful")).statusCode(200);

        assertThat(partners(colony, WREN, male)).isEqualTo(before);
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private static ValidatableResponse asks(Colony colony, String keeper, String number) {
        return colony.get(keeper, "/pairings?for=" + number).statusCode(200);
    }

    private static void locality(Colony colony, String number, Map<String, Object> claim) {
        colony.put(INES, number, "/locality", claim).statusCode(200);
    }
}
