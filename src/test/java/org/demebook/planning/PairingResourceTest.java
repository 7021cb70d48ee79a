package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.hamcrest.Matcher;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Fractions are those of the worked pedigree, computed in exact rational arithmetic apart from this code. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class PairingResourceTest {
    static Marrowfin marrowfin;

    @BeforeAll
    static void settle() {
        marrowfin = Marrowfin.settled();
    }

    // scenario D4
    @Test
    void for_a_day_of_pairing_age_and_quarantine_are_counted_to_it() {
        var pairOn = LocalDate.now(ZoneOffset.UTC).plusYears(1);
        partners(WREN, 13, "&pairOn=" + pairOn)
                .statusCode(200)
                .body("arrival.pairOn", equalTo(pairOn.toString()))
                .body("arrival.daysOfQuarantine", equalTo(90))
                .body("arrival.latestOn", equalTo(pairOn.minusDays(90).toString()))
                .body("arrival.reason", containsString("by " + pairOn.minusDays(90)));
        partners(WREN, 13, "").statusCode(200).body("arrival", nullValue());
        partners(WREN, 13, "&pairOn=2026-11-27")
                .statusCode(400)
                .body("type", equalTo("/problems/bad-parameter"))
                .body("detail", containsString("2026-11-27 is over"));
    }

    @Test
    void who_is_old_enough_by_then_is_proposed() {
        var colony = Colony.found();
        var today = LocalDate.now(ZoneOffset.UTC);
        var dam = colony.register(WREN, animal("female", "2019"));
        colony.register(INES, animal("male", today.minusMonths(6).toString()));
        var address = "/pairings?for=" + dam;
        colony.get(WREN, address).statusCode(200).body("pairings", empty());
        colony.get(WREN, address + "&pairOn=" + today.plusYears(5))
                .statusCode(200)
                .body("pairings", hasSize(1));
    }

    // scenario D1
    @Test
    void partners_are_ranked_by_mean_kinship_and_close_relatives_are_excluded_with_the_reason() {
        partners(WREN, 13, "")
                .statusCode(200)
                .body("animal", equalTo(number(13)))
                .body("scope", equalTo("one-animal"))
                .body("maximumInbreeding", equalTo(.125))
                .body("convention", equalTo("unrelated"))
                .body("pairings.dam.number", contains(numbers(13, 13, 13, 13)))
                .body("pairings.sire.number", contains(numbers(6, 14, 22, 24)))
                .body("pairings.inbreedingOfYoung", contains(0.0, 0.0, 0.0, 1 / 8.0))
                .body("excluded.number", contains(numbers(12, 21)))
                .body("excluded.inbreedingOfYoung", contains(1 / 4.0, 1 / 4.0))
                .body("excluded[0].reason", containsString("0.2500, more than 0.1250"));
    }

    @Test
    void a_lower_maximum_of_inbreeding_excludes_more() {
        partners(WREN, 13, "&maximumInbreeding=0.1")
                .body("pairings.sire.number", contains(numbers(6, 14, 22)))
                .body("excluded.number", contains(numbers(24, 12, 21)));
        partners(WREN, 13, "&maximumInbreeding=0.25")
                .body("pairings", hasSize(6))
                .body("excluded", nullValue());
    }

    @Test
    void partners_for_a_male_are_females() {
        partners(OYELARAN, 6, "")
                .body("pairings.sire.number", contains(numbers(6, 6, 6)))
                .body("pairings.dam.number", contains(numbers(13, 23, 20)));
    }

    // scenario D2, with 006 in the pool
    @Test
    void the_unused_founder_is_worth_three_young() {
        partners(WREN, 13, "")
                .body("geneDiversity", close(551 / 648.0))
                .body("pairings[0].sire.meanKinship", close(1 / 18.0))
                .body("pairings[0].sire.knownAncestry", equalTo(1.0))
                .body("pairings[0].ifUnknownAreSiblings", nullValue())
                .body("pairings[0].bySire", nullValue())
                .body("pairings[0].keep", equalTo(3))
                .body("pairings[0].kept[0].geneDiversity", close(551 / 648.0))
                .body("pairings[0].kept[1].geneDiversity", close(.85625))
                .body("pairings[0].kept[3].geneDiversity", close(989 / 1152.0))
                .body("pairings[0].reason", containsString("unrelated"))
                .body("pairings[0].reason", containsString(number(6) + " carries genes that are rare"))
                .body("pairings[0].reason", containsString("Keep 3 of the young: gene diversity 0.8503 → 0.8585"));
    }

    // scenario D2, without 006 in the pool
    @Test
    void the_best_unrelated_pair_of_the_others_is_worth_two_young() {
        var own = Marrowfin.withoutUnusedFounder();
        get(own.colony, WREN, "?for=" + own.number(13))
                .body("geneDiversity", close(419 / 512.0))
                .body("pairings[0].sire.number", equalTo(own.number(14)))
                .body("pairings[0].sire.meanKinship", close(9 / 64.0))
                .body("pairings[0].dam.meanKinship", close(5 / 32.0))
                .body("pairings[0].meanKinship", close((9 / 64.0 + 5 / 32.0) / 2))
                .body("pairings[0].keep", equalTo(2))
                .body("pairings[0].kept.young", contains(0, 1, 2, 3, 4, 5, 6, 7, 8))
                .body("pairings[0].kept[1].geneDiversity", close(133 / 162.0))
                .body("pairings[0].kept[2].geneDiversity", close(657 / 800.0))
                .body(
                        "pairings[0].reason",
                        containsString(
                                "Keep 2 of the young: gene diversity 0.8184 → 0.8213; from 5 on it falls below"));
    }

    @Test
    void where_each_young_lowers_gene_diversity_none_is_to_be_kept() {
        var own = Marrowfin.withoutUnusedFounder();
        // 023 has full siblings for parents, and 022's genes are common
        get(own.colony, WREN, "?maximumInbreeding=0.25&young=3&for=" + own.number(23))
                .body("pairings.sire.number", hasItem(own.number(22)))
                .body("pairings.find { it.sire.number == '%s' }.keep".formatted(own.number(22)), equalTo(0))
                .body(
                        "pairings.find { it.sire.number == '%s' }.reason".formatted(own.number(22)),
                        containsString("Each young kept would lower gene diversity"))
                .body("pairings[0].kept", hasSize(4));
    }

    @Test
    void animals_of_one_collection_are_not_proposed_to_each_other() {
        // 012 and 014 live with ines, who holds no female; 023 and 013 live with wren
        var own = Marrowfin.settled();
        var female = own.colony.female(INES);
        get(own.colony, INES, "?for=" + female)
                .body("pairings.sire.number", not(hasItem(own.number(14))))
                .body("pairings.sire.number", not(hasItem(own.number(12))))
                .body("pairings.sire.number", hasItem(own.number(21)));
    }

    @Test
    void a_coordinator_gets_the_best_pairs_of_the_whole_population() {
        get(marrowfin.colony, WREN, "?limit=4")
                .statusCode(200)
                .body("scope", equalTo("population"))
                .body("animal", nullValue())
                .body("excluded", nullValue())
                .body("pairings.dam.number", contains(numbers(13, 23, 20, 13)))
                .body("pairings.sire.number", contains(numbers(6, 6, 6, 14)));
    }

    @Test
    void a_member_gets_the_best_pairs_with_one_animal_of_their_own() {
        var ofInes = get(marrowfin.colony, INES, "").body("scope", equalTo("your-collections"));
        List<String> sires = ofInes.extract().path("pairings.sire.number");
        assertThat(sires).isNotEmpty().containsOnly(number(12), number(14));
        get(marrowfin.colony, OYELARAN, "").body("pairings.sire.number", contains(numbers(6, 6, 6)));
    }

    @Test
    void who_holds_the_other_animal_is_never_told() {
        var answer = get(marrowfin.colony, WREN, "?for=" + number(13)).extract().asString();
        for (int id : new int[] {6, 14, 22}) {
            var held = as(Marrowfin.holder(id))
                    .get(marrowfin.colony.path("/animals/" + number(id)))
                    .then()
                    .extract();
            assertThat(answer).doesNotContain(held.<String>path("held.collection"), held.<String>path("id"));
        }
        assertThat(answer).doesNotContain(OYELARAN, INES, DOV);
    }

    @Test
    void an_animal_too_young_to_breed_is_excluded_and_one_of_unknown_age_proposed_with_a_note() {
        var own = Colony.found();
        var female = own.female(WREN);
        var lastYear = LocalDate.now(ZoneOffset.UTC).minusYears(1);
        var growing = own.register(INES, animal("male", lastYear.toString()));
        var undated = own.register(DOV, animal("male", null));

        get(own, WREN, "?for=" + female)
                .body("pairings.sire.number", contains(undated))
                .body("pairings[0].notes[0]", containsString(undated + " was born is not known"))
                .body("pairings[0].reason", containsString("Of the ancestry of " + undated + " only 0 % is known"))
                // all unknown parents full siblings of each other: of two such animals ¼, by the tabular method
                .body("pairings[0].inbreedingOfYoung", equalTo(0.0))
                .body("pairings[0].ifUnknownAreSiblings", equalTo(.25))
                .body("excluded.number", contains(growing))
                .body("excluded[0].reason", containsString("before " + lastYear.plusDays(1095)));
    }

    @Test
    void the_figures_of_the_population_say_when_an_animal_is_old_enough() {
        var own = Colony.found();
        var female = own.female(WREN);
        own.register(
                INES,
                animal("male", LocalDate.now(ZoneOffset.UTC).minusDays(400).toString()));
        get(own, WREN, "?for=" + female).body("pairings", empty());
        Map<String, Object> described = as(WREN).get(own.path("")).jsonPath().getMap("");
        described.keySet().retainAll(List.of("code", "name", "taxon", "locality", "birthMode", "profile"));
        var profile = new HashMap<>((Map<String, Object>) described.get("profile"));
        var breeding = new HashMap<>((Map<String, Object>) profile.get("breeding"));
        breeding.put("daysOfAgeToBreed", 400);
        profile.put("breeding", breeding);
        described.put("profile", profile);
        var etag = as(WREN).get(own.path("")).getHeader("ETag");
        as(WREN).header("If-Match", etag)
                .body(described)
                .put(own.path(""))
                .then()
                .statusCode(200);
        get(own, WREN, "?for=" + female).body("pairings", hasSize(1));
    }

    @Test
    void a_population_without_animals_has_no_pairs() {
        get(Colony.found(), WREN, "").statusCode(200).body("pairings", empty()).body("geneDiversity", nullValue());
    }

    @Test
    void partners_are_proposed_to_the_holder_only() {
        partners(INES, 13, "").statusCode(403).body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void an_animal_that_cannot_be_paired_is_refused_with_the_reason() {
        partners(DOV, 10, "").statusCode(409).body("type", equalTo("/problems/animal-dead"));
        var own = Colony.found();
        var unsexed = own.register(WREN, animal("unknown", "2020"));
        get(own, WREN, "?for=" + unsexed)
                .statusCode(422)
                .body("type", equalTo("/problems/no-candidates"))
                .body("detail", containsString("sex"));
        var thisYear = LocalDate.now(ZoneOffset.UTC).minusDays(30);
        var neonate = own.register(WREN, animal("female", thisYear.toString()));
        get(own, WREN, "?for=" + neonate)
                .statusCode(422)
                .body("type", equalTo("/problems/no-candidates"))
                .body("detail", containsString(thisYear.plusDays(1095).toString()));
    }

    @Test
    void what_does_not_exist_is_told() {
        get(Colony.found(), OYELARAN, "").statusCode(404).body("type", equalTo("/problems/no-such-population"));
        get(marrowfin.colony, WREN, "?for=" + new StudbookNumber(marrowfin.colony.code, "H", 999_999))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-animal"));
        get(marrowfin.colony, WREN, "?for=7-7").statusCode(422).body("type", equalTo("/problems/mistyped-number"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "maximumInbreeding=much",
                "maximumInbreeding=1.5",
                "maximumInbreeding=-0.1",
                "maximumInbreeding=NaN",
                "young=0",
                "young=31",
                "limit=0",
                "limit=201"
            })
    void a_parameter_out_of_range_is_refused(String parameter) {
        get(marrowfin.colony, WREN, "?" + parameter).statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private static ValidatableResponse partners(String keeper, int id, String more) {
        return get(marrowfin.colony, keeper, "?for=" + number(id) + more);
    }

    private static ValidatableResponse get(Colony colony, String keeper, String query) {
        return as(keeper)
                .config(RestAssuredConfig.config()
                        .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
                .get(colony.path("/pairings" + query))
                .then();
    }

    private static String number(int id) {
        return marrowfin.number(id);
    }

    private static String[] numbers(int... ids) {
        return Arrays.stream(ids).mapToObj(PairingResourceTest::number).toArray(String[]::new);
    }

    private static Matcher<Double> close(double value) {
        return closeTo(value, 1e-14);
    }
}
