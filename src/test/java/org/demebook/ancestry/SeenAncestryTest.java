package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.demebook.Marrowfin.OYELARAN;
import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.PARENTAGE;
import static org.demebook.consent.Purpose.PEDIGREE_VIEW;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.Arrays;
import java.util.List;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;
import org.demebook.consent.Purpose;
import org.demebook.consent.Recipient;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Ancestry as consent lets it be told, on the worked pedigree ({@link Marrowfin}: exact fractions, computed apart from this
 * code). 013 and 023 are with wren, 012 and 014 with ines, 006 with oyelaran, all others with dov.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeenAncestryTest {

    // scenario C1
    @Test
    void an_ancestry_is_told_by_number_as_far_as_it_is_granted() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        grants.open(WREN);
        grants.open(INES);
        grants.computeOnly(DOV);
        var shown = grants.give(
                DOV,
                Recipient.MEMBERS,
                numbers(own, 2, 3, 4, 5),
                List.of(IDENTITY),
                List.of(PEDIGREE_VIEW),
                List.of(READ));
        var young = own.colony.young(WREN, "female", "2024-06-29", own.number(13), own.number(14));

        var answer = get(own, OYELARAN, "/animals/" + young + "/ancestry?generations=3")
                .statusCode(200)
                .body("inbreedingCoefficient", equalTo(0.0))
                .body("founders.animal", contains(array(own, 2, 3, 4, 5)))
                .body("founders.contribution", contains(.25, .25, .25, .25))
                .body("ancestors.number", contains(array(own, 13, 14, 3, 4, 5, 2)))
                .body("throughAncestorsNotShown", nullValue())
                .extract()
                .asString();
        assertThat(answer).doesNotContain(WREN, INES, DOV, "journalHead");

        // without their numbers: what young and parents state is told, and the figures stay
        grants.withdraw(DOV, shown);
        get(own, OYELARAN, "/animals/" + young + "/ancestry?generations=3")
                .body("founders", empty())
                .body("unnamedContribution", equalTo(1.0))
                .body("knownAncestry", equalTo(1.0))
                .body("ancestors.number", contains(array(own, 13, 14)))
                .body("ancestors.dam", contains(array(own, 3, 5)))
                .body("ancestors.sire.animal", contains(array(own, 4, 2)))
                .body("throughAncestorsNotShown", equalTo(true));
        get(own, OYELARAN, "/animals/" + own.number(2) + "/ancestry").statusCode(404);
    }

    // scenario C2: 5/32, since 014 and 010 share the father 002, and 1/8, that of half-siblings, for who may not know
    // it
    @Test
    void kinship_is_computed_through_ancestors_that_are_not_shown_and_only_as_far_as_they_may_be() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        grants.open(WREN);
        var shown = grants.members(INES, PEDIGREE_VIEW, List.of(IDENTITY, PARENTAGE), READ);
        var young = own.colony.young(WREN, "female", "2024-06-29", own.number(13), own.number(14));
        var kinship = "/animals/" + young + "/kinship/" + own.number(22);

        get(own, DOV, kinship)
                .body("kinship", equalTo(5 / 32.0))
                .body("commonAncestors", contains(array(own, 14, 2, 5)))
                .body("throughAncestorsNotShown", nullValue());

        grants.withdraw(INES, shown);
        var computed = grants.computeOnly(INES);
        get(own, DOV, kinship)
                .body("kinship", equalTo(5 / 32.0))
                .body("commonAncestors", empty())
                .body("throughAncestorsNotShown", equalTo(true));

        // that both have 014 for a sire is theirs to tell, who his father is is not
        grants.withdraw(INES, computed);
        get(own, DOV, kinship).body("kinship", equalTo(1 / 8.0)).body("throughAncestorsNotShown", equalTo(true));
    }

    // scenario C3, of parents that are withheld: to the asker nobody knows them
    @Test
    void an_animal_whose_parentage_is_withheld_looks_like_one_of_unknown_parents() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        grants.members(DOV, PEDIGREE_VIEW, List.of(IDENTITY), READ);
        var bought = own.colony.register(DOV, animal("male", "2019-07-01"));
        var plain = get(own, WREN, "/animals/" + bought + "/ancestry")
                .statusCode(200)
                .extract()
                .asString();
        get(own, WREN, "/animals/" + own.number(22) + "/ancestry")
                .statusCode(200)
                .body("animal.dam", nullValue())
                .body("animal.sire.kind", equalTo("unknown"))
                .body("founders", empty())
                .body("knownAncestry", equalTo(0.0))
                .body("throughAncestorsNotShown", nullValue());
        assertThat(get(own, WREN, "/animals/" + own.number(22) + "/ancestry")
                        .extract()
                        .asString())
                .isEqualTo(plain.replace(bought, own.number(22)));
    }

    // scenario F3
    @Test
    void a_withdrawal_holds_from_the_next_answer_on() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        for (var keeper : List.of(INES, OYELARAN)) {
            grants.open(keeper);
        }
        grants.open(WREN);
        var shown = grants.members(DOV, PEDIGREE_VIEW, List.of(IDENTITY, PARENTAGE), READ);
        var computed = grants.members(DOV, PEDIGREE_VIEW, List.of(IDENTITY, PARENTAGE), COMPUTE);
        get(own, WREN, "/gene-pool")
                .body("living", equalTo(9))
                .body("meanKinship", equalTo(97 / 648.0))
                .body("founders.animal", containsInAnyOrder(array(own, 1, 2, 3, 4, 5, 6)))
                .body("throughAncestorsNotShown", nullValue());

        grants.withdraw(DOV, shown);
        get(own, WREN, "/animals/" + own.number(22) + "/ancestry").statusCode(404);
        get(own, WREN, "/gene-pool")
                .body("living", equalTo(9))
                .body("meanKinship", equalTo(97 / 648.0))
                .body("founders.animal", contains(own.number(6)))
                .body("throughAncestorsNotShown", equalTo(true));

        // what is left: 006, 012, 013, 014, 023; 012 and 013 are full siblings by the numbers that they state, 023 and
        // 014
        // share nothing that may be known. By hand: 5 · 1/2 + 2 · 1/4 = 3, by 25 pairs
        grants.withdraw(DOV, computed);
        get(own, WREN, "/gene-pool").body("living", equalTo(5)).body("meanKinship", equalTo(3 / 25.0));
        // its own keeper sees all that is his, and what the others grant
        get(own, DOV, "/gene-pool").body("living", equalTo(9)).body("meanKinship", equalTo(97 / 648.0));
    }

    @Test
    void who_coordinates_sees_what_was_granted_and_not_everything() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        get(own, WREN, "/gene-pool").body("living", equalTo(2)).body("founders", empty());
        grants.give(
                DOV, Recipient.COORDINATORS, null, List.of(IDENTITY, PARENTAGE), List.of(PEDIGREE_VIEW), List.of(READ));
        get(own, WREN, "/gene-pool").body("living", equalTo(6));
        get(own, INES, "/gene-pool").body("living", equalTo(2));
    }

    @Test
    void what_happens_to_animals_that_are_not_shown_does_not_show_in_the_etag() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        for (var path : List.of(
                "/animals/" + own.number(13) + "/ancestry",
                "/animals/" + own.number(13) + "/kinship/" + own.number(23),
                "/gene-pool")) {
            var first = get(own, WREN, path).statusCode(200).extract();
            own.colony.female(DOV);
            own.colony.young(DOV, "female", "2023-06-29", own.number(20), own.number(22));
            as(WREN).header("If-None-Match", first.header("ETag"))
                    .get(own.colony.path(path))
                    .then()
                    .statusCode(304);
            assertThat(get(own, WREN, path).extract().asString()).isEqualTo(first.asString());
        }
        var etag = get(own, WREN, "/gene-pool").extract().header("ETag");
        grants.members(INES, PEDIGREE_VIEW, List.of(IDENTITY), COMPUTE);
        as(WREN).header("If-None-Match", etag)
                .get(own.colony.path("/gene-pool"))
                .then()
                .statusCode(200)
                .body("living", equalTo(4));
    }

    @Test
    void pairs_are_proposed_among_animals_that_are_granted_for_it() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        var all = List.of(IDENTITY, PARENTAGE);
        for (var keeper : List.of(WREN, INES, OYELARAN)) {
            grants.open(keeper);
        }
        grants.members(DOV, PEDIGREE_VIEW, all, READ, COMPUTE);
        var path = "/pairings?for=" + own.number(13);
        get(own, WREN, path)
                .body("pairings.sire.number", contains(array(own, 6, 14)))
                .body("geneDiversity", equalTo(551 / 648.0))
                .body("excluded.number", contains(own.number(12)))
                .body("throughAncestorsNotShown", nullValue());
        var granted = grants.members(DOV, Purpose.PAIRING_COMPUTATION, all, READ);
        get(own, WREN, path).body("pairings.sire.number", contains(array(own, 6, 14, 22, 24)));
        get(own, WREN, "/pairings").body("scope", equalTo("population"));
        // scenario F3: within one request they leave all lists, and figures are still computed with them
        grants.withdraw(DOV, granted);
        get(own, WREN, path)
                .body("pairings.sire.number", contains(array(own, 6, 14)))
                .body("geneDiversity", equalTo(551 / 648.0));
        get(own, WREN, "/pairings?limit=200").body("pairings.sire.number.flatten().toSet()", hasSize(3));
        get(own, WREN, "/pairings?limit=200&maximumInbreeding=1")
                .body("pairings.findAll { it.sire.number == '%s' }.size()".formatted(own.number(22)), lessThan(1));
    }

    @Test
    void an_animal_that_is_not_shown_answers_as_one_that_does_not_exist() {
        var own = Marrowfin.settledPrivate();
        var nobody = new StudbookNumber(own.colony.code, "H", 999_999).toString();
        for (var below : List.of("/animals/%s/ancestry", "/animals/%s/kinship/" + own.number(13))) {
            var hidden = get(own, WREN, below.formatted(own.number(22))).statusCode(404);
            var absent = get(own, WREN, below.formatted(nobody)).statusCode(404);
            assertThat(hidden.extract().asString().replace(own.number(22), nobody))
                    .isEqualTo(absent.extract().asString());
        }
        get(own, WREN, "/animals/" + own.number(13) + "/kinship/" + own.number(22))
                .statusCode(404);
        get(own, WREN, "/animals/" + own.number(13) + "/ancestry")
                .statusCode(200)
                // the numbers of the parents are what its keeper stated; whatever else there is of them is dov's
                .body("animal.dam", equalTo(own.number(3)))
                .body("animal.sire.animal", equalTo(own.number(4)))
                .body("ancestors", empty())
                .body("founders", empty())
                .body("knownAncestry", equalTo(0.0))
                .body("unnamedContribution", equalTo(1.0))
                .body("throughAncestorsNotShown", equalTo(true));
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    /** With figures read as doubles. */
    private static ValidatableResponse get(Marrowfin in, String keeper, String below) {
        return as(keeper)
                .config(RestAssuredConfig.config()
                        .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
                .get(in.colony.path(below))
                .then();
    }

    private static String[] array(Marrowfin of, int... ids) {
        return Arrays.stream(ids).mapToObj(of::number).toArray(String[]::new);
    }

    private static List<String> numbers(Marrowfin of, int... ids) {
        return Arrays.asList(array(of, ids));
    }
}
