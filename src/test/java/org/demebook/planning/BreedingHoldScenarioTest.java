package org.demebook.planning;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Which animals are not to be bred for now. That fatherless young are on hold as breeding stock, since they carry nothing
 * that their dam lacks, is common practice, no source; F and kinships are (1 + F of the dam) / 2, worked by hand.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class BreedingHoldScenarioTest {
    /** Scenario A8: 023 (F = 1/4) met no male for 30 months and bears 3 live females and 9 slugs. */
    @Test
    void fatherless_young_are_suspected_and_when_the_keeper_says_so_they_are_on_hold() {
        var marrowfin = Marrowfin.withoutUnusedFounder();
        var colony = marrowfin.colony;
        var m023 = marrowfin.number(23);
        var female = Map.of("sex", "female");
        var registered = colony.post(
                        WREN,
                        "/litters",
                        with(litter(m023, "2026-06-29", 3, 0, 9), "young", List.of(female, female, female)))
                .statusCode(201);
        String id = registered.extract().path("litter.id");
        List<String> young = registered.extract().path("young.number");
        colony.get(WREN, "/litters/" + id + "/fatherless-signs?noMale=true&onlyRecessives=true")
                .body("suspected", equalTo(true))
                .body("sentence", containsString("Fatherless young suspected"));
        hold(colony, WREN, young.get(0)).body("onHold", equalTo(false)).body("basis", nullValue());

        for (var number : young) {
            colony.put(WREN, number, "/parentage", Map.of("dam", m023, "sire", Map.of("kind", "none")))
                    .statusCode(200);
        }

        colony.get(WREN, "/animals/" + young.get(0) + "/ancestry").body("inbreedingCoefficient", equalTo(1f));
        colony.get(WREN, "/animals/" + young.get(0) + "/kinship/" + m023).body("kinship", equalTo(5 / 8f));
        hold(colony, WREN, young.get(0))
                .body("onHold", equalTo(true))
                .body("basis", equalTo("no-sire"))
                .body("statedAt", nullValue());
        colony.get(WREN, "/pairings?for=" + young.get(0))
                .statusCode(409)
                .body("type", equalTo("/problems/on-hold"))
                .body("detail", containsString("carries nothing that its dam lacks"))
                .body("detail", containsString("ask a coordinator to lift the hold"));
        // they are alive, and count among the genes that are there: the pool is as it was, and three more
        colony.get(WREN, "/gene-pool").body("living", equalTo(11));
    }

    @Test
    void what_has_no_sire_is_excluded_as_a_partner_until_a_coordinator_lifts_the_hold() {
        var colony = Colony.found();
        var male = colony.male(INES);
        var fatherless = fatherless(colony, DOV);
        var other = colony.female(DOV);

        partners(colony, INES, male)
                .body("pairings.dam.number", contains(other))
                .body("excluded.number", contains(fatherless))
                .body("excluded[0].reason", containsString("on hold: it has no sire"));
        colony.get(WREN, "/pairings").body("pairings.dam.number", not(hasItem(fatherless)));

        lift(colony, DOV, fatherless, "she is fine")
                .statusCode(403)
                .body("detail", containsString("Ask a coordinator"));
        lift(colony, WREN, fatherless, "the last of her line")
                .statusCode(200)
                .body("onHold", equalTo(false))
                .body("basis", equalTo("lifted"))
                .body("reason", equalTo("the last of her line"));

        partners(colony, INES, male)
                .body("pairings.dam.number", hasItem(fatherless))
                .body("excluded", nullValue());
        colony.get(WREN, "/pairings").body("pairings.dam.number", hasItem(fatherless));
        lift(colony, WREN, fatherless, "again").statusCode(409).body("type", equalTo("/problems/not-on-hold"));
    }

    @Test
    void a_sire_that_is_found_later_ends_the_hold_by_itself() {
        var colony = Colony.found();
        var young = fatherless(colony, DOV);
        String dam = colony.get(DOV, "/animals/" + young).extract().path("dam");
        var found = Map.of("kind", "known", "animal", older(colony, DOV));
        colony.put(DOV, young, "/parentage", Map.of("dam", dam, "sire", found)).statusCode(200);
        hold(colony, DOV, young).body("onHold", equalTo(false)).body("basis", nullValue());
        partners(colony, INES, colony.male(INES)).body("excluded", nullValue());
    }

    @Test
    void a_holder_sets_an_animal_on_hold_and_others_are_not_told_why() {
        var colony = Colony.found();
        var male = colony.male(INES);
        var female = colony.female(DOV);

        set(colony, INES, female, "I do not like her").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        set(colony, DOV, female, "retained slugs in June")
                .statusCode(200)
                .body("onHold", equalTo(true))
                .body("basis", equalTo("stated"))
                .body("reason", equalTo("retained slugs in June"));

        hold(colony, INES, female).body("onHold", equalTo(true)).body("reason", nullValue());
        hold(colony, WREN, female).body("reason", equalTo("retained slugs in June"));
        partners(colony, INES, male)
                .body("excluded.number", contains(female))
                .body("excluded.reason", everyItem(not(containsString("slugs"))));
        partners(colony, DOV, female)
                .statusCode(409)
                .body("type", equalTo("/problems/on-hold"))
                .body("detail", containsString("retained slugs in June. Lift the hold"));

        lift(colony, DOV, female, "the veterinarian found nothing").statusCode(200);
        partners(colony, DOV, female).statusCode(200).body("pairings.sire.number", contains(male));
    }

    @Test
    void a_coordinators_word_is_not_the_holders_to_change_and_the_same_word_again_changes_nothing() {
        var colony = Colony.found();
        var female = colony.female(DOV);
        String at = set(colony, WREN, female, "enough young of hers")
                .statusCode(200)
                .extract()
                .path("statedAt");
        set(colony, WREN, female, "enough young of hers").body("statedAt", equalTo(at));
        set(colony, DOV, female, "mine").statusCode(403);
        lift(colony, DOV, female, "mine").statusCode(403).body("detail", containsString("somebody else"));
        lift(colony, WREN, female, "a line is lost").statusCode(200).body("onHold", equalTo(false));
        hold(colony, Colony.OUTSIDER, female).statusCode(404);
    }

    @Test
    void a_dead_animal_is_not_set_on_hold() {
        var colony = Colony.found();
        var female = colony.female(DOV);
        colony.put(DOV, female, "/death", Map.of("on", "2026-01-03")).statusCode(200);
        set(colony, DOV, female, "old").statusCode(409).body("type", equalTo("/problems/animal-dead"));
    }

    @Test
    void a_hold_of_a_record_that_was_merged_holds_the_animal() {
        var colony = Colony.found();
        var male = colony.male(INES);
        var older = colony.female(DOV);
        var alias = colony.female(DOV);
        set(colony, DOV, alias, "too thin").statusCode(200);
        colony.post(DOV, "/animals/" + alias + "/same-animal-claims", Map.of("other", older))
                .statusCode(201);

        hold(colony, DOV, older).body("onHold", equalTo(true));
        partners(colony, INES, male).body("excluded.number", contains(older));
    }

    // scenario A7, where a plan rests on it
    @Test
    void a_pairing_that_rests_on_a_doubtful_sire_names_whose() {
        var colony = Colony.found();
        var male = colony.male(INES);
        var assumed = Colony.animal("female", "2020-06-01");
        assumed.put("sire", Map.of("kind", "known", "animal", older(colony, DOV), "doubtful", true));
        var doubtful = colony.register(DOV, assumed);
        var young = colony.register(DOV, with(Colony.animal("female", "2022-06-01"), "dam", doubtful));
        var other = colony.female(DOV);

        partners(colony, INES, male)
                .body("pairings.find { it.dam.number == '%s' }.doubtfulSiresOf".formatted(young), contains(doubtful))
                .body(
                        "pairings.find { it.dam.number == '%s' }.notes[0]".formatted(doubtful),
                        containsString("The sire of " + doubtful + " is doubtful"))
                .body("pairings.find { it.dam.number == '%s' }.doubtfulSiresOf".formatted(other), nullValue());
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private static String fatherless(Colony colony, String keeper) {
        var animal = Colony.animal("female", "2020-06-01");
        var dam = Colony.animal("female", "2014-06-01");
        dam.put("died", "2024");
        animal.put("dam", colony.register(keeper, dam));
        animal.put("sire", Map.of("kind", "none"));
        return colony.register(keeper, animal);
    }

    private static String older(Colony colony, String keeper) {
        return colony.register(keeper, Colony.animal("male", "2014-06-01"));
    }

    private static ValidatableResponse partners(Colony colony, String keeper, String number) {
        return colony.get(keeper, "/pairings?for=" + number);
    }

    private static ValidatableResponse hold(Colony colony, String keeper, String number) {
        return colony.get(keeper, "/animals/" + number + "/breeding-hold");
    }

    private static ValidatableResponse set(Colony colony, String keeper, String number, String reason) {
        return Colony.as(keeper)
                .body(Map.of("reason", reason))
                .put(colony.path("/animals/" + number + "/breeding-hold"))
                .then();
    }

    private static ValidatableResponse lift(Colony colony, String keeper, String number, String reason) {
        return colony.post(keeper, "/animals/" + number + "/breeding-hold/lifting", Map.of("reason", reason));
    }
}
