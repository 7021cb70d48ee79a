package org.demebook.planning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.FieldGroup.COARSE_PLACE;
import static org.demebook.consent.FieldGroup.HEALTH;
import static org.demebook.consent.Purpose.PAIRING_COMPUTATION;
import static org.demebook.planning.Keeping.TODAY;
import static org.demebook.planning.Keeping.collection;
import static org.demebook.planning.Keeping.distances;
import static org.demebook.planning.Keeping.fixRegions;
import static org.demebook.planning.Keeping.inRegions;
import static org.demebook.planning.Keeping.partners;
import static org.demebook.planning.Keeping.region;
import static org.demebook.planning.Keeping.standing;
import static org.demebook.planning.Keeping.state;
import static org.demebook.planning.Keeping.terms;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;
import org.demebook.planning.SeasonField.BarrierKind;
import org.demebook.planning.SeasonField.Place;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** What collections can bear, how far apart regions are, and what others are told of it. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class PairingTermsTest {
    private static final Map<String, Object> ALL = Map.of(
            "littersAtMost",
            2,
            "malesAwayAtMost",
            1,
            "farthestKilometres",
            350,
            "mayCrossBorders",
            false,
            "exchangeWith",
            List.of("south"),
            "notes",
            "no room before May");

    @Inject
    SeasonFields fields;

    @Test
    void terms_are_stated_stated_anew_and_withdrawn_by_those_who_act_for_the_collection() {
        var colony = inRegions(Colony.found());
        var address = terms(colony, INES);
        colony.get(INES, address)
                .statusCode(200)
                .body("stated", equalTo(false))
                .body("littersAtMost", nullValue())
                .body("statedAt", nullValue());

        String at = state(colony, INES, ALL)
                .statusCode(200)
                .body("stated", equalTo(true))
                .body("littersAtMost", equalTo(2))
                .body("mayCrossBorders", equalTo(false))
                .body("exchangeWith", contains("South"))
                .body("notes", equalTo("no room before May"))
                .extract()
                .path("statedAt");
        state(colony, INES, ALL).body("statedAt", equalTo(at));
        state(colony, INES, Map.of("littersAtMost", 0))
                .body("littersAtMost", equalTo(0))
                .body("notes", nullValue());

        for (var other : List.of(WREN, DOV)) {
            colony.get(other, address).statusCode(422).body("type", equalTo("/problems/no-such-collection"));
            as(other).body(ALL).put(colony.path(address)).then().statusCode(422);
            as(other).delete(colony.path(address)).then().statusCode(422);
        }
        as(INES).delete(colony.path(address)).then().statusCode(200).body("stated", equalTo(false));
        as(INES).delete(colony.path(address)).then().statusCode(200).body("stated", equalTo(false));
    }

    @Test
    void terms_that_cannot_be_meant_are_refused() {
        var colony = inRegions(Colony.found());
        state(colony, INES, Map.of("exchangeWith", List.of("Atlantis")))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-region"));
        for (var field : List.of("littersAtMost", "malesAwayAtMost", "farthestKilometres")) {
            state(colony, INES, Map.of(field, -1)).statusCode(422).body("type", equalTo("/problems/invalid-values"));
        }
    }

    @Test
    void distances_are_stated_by_coordinators_on_the_revision_that_was_read() {
        var colony = inRegions(Colony.found());
        var present = colony.get(INES, "/regions/distances").statusCode(200).body("pairs.kilometres", contains(420));
        var pair = Map.of("one", "north", "other", "South", "kilometres", 420, "border", false);
        distances(colony, DOV, "\"0\"", List.of(pair)).statusCode(403);
        distances(colony, WREN, "\"0\"", List.of(pair)).statusCode(412);
        var etag = present.extract().header("ETag");
        distances(
                        colony,
                        WREN,
                        etag,
                        List.of(pair, Map.of("one", "South", "other", "North", "kilometres", 1, "border", true)))
                .statusCode(422)
                .body("type", equalTo("/problems/region-names-clash"));
        distances(
                        colony,
                        WREN,
                        etag,
                        List.of(Map.of("one", "North", "other", "north", "kilometres", 1, "border", true)))
                .statusCode(422);
        distances(colony, WREN, etag, List.of(Map.of("one", "North", "other", "East", "kilometres", 1, "border", true)))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-region"));
        distances(colony, WREN, etag, List.of()).statusCode(200).body("pairs", equalTo(List.of()));
        distances(colony, WREN, etag, List.of(pair)).statusCode(412);

        // a region that is no longer fixed is in no distance
        var now = colony.get(WREN, "/regions/distances").extract().header("ETag");
        distances(colony, WREN, now, List.of(pair)).statusCode(200);
        fixRegions(colony, List.of("South"));
        colony.get(INES, "/regions/distances").body("pairs", equalTo(List.of()));
    }

    // scenario D1
    @Test
    void a_partner_is_with_a_keeper_so_far_away_with_tests_in_date_and_nothing_else_is_told() {
        var marrowfin = Marrowfin.settled();
        var colony = inRegions(marrowfin.colony);
        region(colony, WREN, "South");
        region(colony, OYELARAN, "North");
        region(colony, INES, "South");
        Keeping.test(colony, OYELARAN, marrowfin.number(6), "nidovirus", "negative", TODAY.minusDays(30));

        var answer = colony.get(WREN, "/pairings?for=" + marrowfin.number(13)).statusCode(200);
        assertThat(keptBy(answer, marrowfin.number(6))).isEqualTo("a keeper, about 400 km away, tests in date");
        assertThat(keptBy(answer, marrowfin.number(14))).isEqualTo("a keeper, less than 100 km away");
        assertThat(keptBy(answer, marrowfin.number(22))).isEqualTo("a keeper");
        answer.body("pairings.dam.keptBy", everyItem(nullValue()));
        assertThat(answer.extract().asString()).doesNotContain("North", "South", OYELARAN, INES, "nidovirus");

        // of two others, from one to the other
        colony.get(WREN, "/pairings")
                .body(
                        "pairings.find { it.sire.number == '%s' && it.dam.number == '%s' }.sire.keptBy"
                                .formatted(marrowfin.number(6), marrowfin.number(20)),
                        equalTo("a keeper, tests in date"));
        region(colony, DOV, "South");
        colony.get(WREN, "/pairings")
                .body(
                        "pairings.find { it.sire.number == '%s' && it.dam.number == '%s' }.dam.keptBy"
                                .formatted(marrowfin.number(6), marrowfin.number(20)),
                        equalTo("a keeper, about 400 km from the other"));

        // its keeper reads that it was computed with
        var told = colony.get(OYELARAN, "/disclosures?limit=200").statusCode(200);
        assertThat(told.extract()
                        .<List<String>>path("items.findAll { it.action == 'compute' }.collect { it.fieldGroup }"))
                .contains("health", "coarse-place");
    }

    @Test
    void tests_and_distance_are_told_as_far_as_each_is_granted() {
        var colony = inRegions(Colony.foundPrivate());
        var grants = new Granting(colony.code);
        grants.open(INES);
        region(colony, WREN, "South");
        var female = colony.female(WREN);
        var male = colony.male(INES);
        var before = partners(colony, WREN, female);
        assertThat(before).contains("\"keptBy\":\"a keeper\"");

        // nothing that is not granted changes a byte
        region(colony, INES, "North");
        Keeping.test(colony, INES, male, "nidovirus", "negative", TODAY.minusDays(30));
        assertThat(partners(colony, WREN, female)).isEqualTo(before);

        var health = grants.members(INES, PAIRING_COMPUTATION, List.of(HEALTH), COMPUTE);
        assertThat(partners(colony, WREN, female)).contains("\"a keeper, tests in date\"");
        grants.withdraw(INES, health);
        var place = grants.members(INES, PAIRING_COMPUTATION, List.of(COARSE_PLACE), COMPUTE);
        assertThat(partners(colony, WREN, female)).contains("\"a keeper, about 400 km away\"");
        grants.withdraw(INES, place);
        assertThat(partners(colony, WREN, female)).isEqualTo(before);

        // the ready choice for pairing grants both
        colony.share(INES, "pairing-with-members");
        assertThat(partners(colony, WREN, female)).contains("\"a keeper, about 400 km away, tests in date\"");
    }

    @Test
    void each_of_the_terms_keeps_animals_apart_and_without_it_they_are_proposed() {
        var colony = inRegions(Colony.found());
        region(colony, WREN, "South");
        region(colony, INES, "North");
        var female = colony.female(WREN);
        var male = colony.male(INES);
        var free = Map.<String, Object>of(
                "farthestKilometres", 420, "mayCrossBorders", true, "exchangeWith", List.of("South", "North"));
        state(colony, INES, free);
        var before = asks(colony, WREN, female).body("pairings.sire.number", contains(male));

        var words = new HashMap<String, String>();
        for (var strict : List.of(
                Map.<String, Object>of("exchangeWith", List.of()),
                Map.<String, Object>of("farthestKilometres", 419),
                Map.<String, Object>of("mayCrossBorders", false))) {
            var term = strict.keySet().iterator().next();
            state(colony, INES, strict).statusCode(200);
            String told = asks(colony, WREN, female)
                    .body("pairings", equalTo(List.of()))
                    .body("excluded.number", contains(male))
                    .extract()
                    .path("excluded[0].reason");
            String own = asks(colony, INES, male)
                    .body("excluded.number", contains(female))
                    .extract()
                    .path("excluded[0].reason");
            words.put(term, told);
            assertThat(told).contains("one of the two collections");
            assertThat(own).contains("you state");
            colony.get(WREN, "/pairings").body("pairings", equalTo(List.of()));
            colony.get(INES, "/pairings").body("pairings", equalTo(List.of()));
            state(colony, INES, free).statusCode(200);
            assertThat(asks(colony, WREN, female).extract().asString())
                    .isEqualTo(before.extract().asString());
        }
        assertThat(words.get("exchangeWith")).contains("exchanges no animals with the region of the other");
        assertThat(words.get("farthestKilometres")).contains("about 400 km apart, farther than");
        assertThat(words.get("mayCrossBorders")).contains("a border lies between them");
        assertThat(words.values()).noneMatch(told -> told.contains("419") || told.contains("North"));
    }

    @Test
    void where_a_coarse_place_is_not_granted_no_terms_change_an_answer() {
        var colony = inRegions(Colony.foundPrivate());
        new Granting(colony.code).open(INES);
        region(colony, WREN, "South");
        region(colony, INES, "North");
        var female = colony.female(WREN);
        colony.male(INES);
        var before = partners(colony, WREN, female);
        state(colony, INES, ALL).statusCode(200);
        assertThat(partners(colony, WREN, female)).isEqualTo(before);
    }

    @Test
    void a_season_counts_animals_of_a_collection_that_states_terms_as_living_together_and_has_its_limits() {
        var colony = inRegions(Colony.foundPrivate());
        new Granting(colony.code).open(INES);
        colony.male(INES);
        colony.female(INES);
        assertThat(fields.of(standing(colony, WREN), TODAY).places())
                .hasSize(2)
                .extracting(Place::collectionId)
                .containsOnlyNulls();

        state(colony, INES, ALL);

        var ofInes = UUID.fromString(collection(colony, INES));
        assertThat(fields.of(standing(colony, WREN), TODAY).places()).containsExactly(new Place(ofInes, 2, 1));
        as(INES).delete(colony.path(terms(colony, INES))).then().statusCode(200);
        assertThat(fields.of(standing(colony, WREN), TODAY).places()).hasSize(2);
    }

    @Test
    void an_animal_on_loan_lives_with_the_others_only_where_its_owner_states_terms_too() {
        var colony = inRegions(Colony.foundPrivate());
        var grants = new Granting(colony.code);
        grants.open(INES);
        grants.open(DOV);
        colony.female(INES);
        var lent = colony.male(DOV);
        String id = colony.post(DOV, "/transfers", Map.of("animal", lent, "kind", "breeding-loan", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);
        state(colony, INES, Map.of());
        assertThat(fields.of(standing(colony, WREN), TODAY).places()).hasSize(2);
        state(colony, DOV, Map.of());
        assertThat(fields.of(standing(colony, WREN), TODAY).places()).hasSize(1);
    }

    @Test
    void between_two_places_a_season_knows_what_is_in_the_way() {
        var colony = inRegions(Colony.found());
        region(colony, WREN, "South");
        region(colony, INES, "North");
        colony.female(WREN);
        colony.male(INES);
        assertThat(barrier(colony)).isNull();
        state(colony, WREN, Map.of("exchangeWith", List.of("South")));
        assertThat(barrier(colony)).isEqualTo(BarrierKind.REGION);
        state(colony, WREN, Map.of("farthestKilometres", 100));
        assertThat(barrier(colony)).isEqualTo(BarrierKind.DISTANCE);
        state(colony, WREN, Map.of("mayCrossBorders", false));
        assertThat(barrier(colony)).isEqualTo(BarrierKind.BORDER);
        region(colony, INES, "South");
        assertThat(barrier(colony)).isNull();
    }

    private BarrierKind barrier(Colony colony) {
        var field = fields.of(standing(colony, WREN), TODAY.plusDays(100));
        return field.barrier(
                        field.males().get(0).place(), field.females().get(0).place())
                .map(SeasonField.Barrier::kind)
                .orElse(null);
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Two regions, 420 km and a border apart. */
    private static ValidatableResponse asks(Colony colony, String keeper, String number) {
        return colony.get(keeper, "/pairings?for=" + number).statusCode(200);
    }

    private static String keptBy(ValidatableResponse answer, String sire) {
        return answer.extract().path("pairings.find { it.sire.number == '%s' }.sire.keptBy".formatted(sire));
    }
}
