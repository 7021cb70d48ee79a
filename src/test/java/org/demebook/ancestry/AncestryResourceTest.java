package org.demebook.ancestry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.config.JsonConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.path.json.config.JsonPathConfig.NumberReturnType;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AncestryResourceTest {
    static Marrowfin marrowfin;
    static Colony colony;

    @BeforeAll
    static void settle() {
        marrowfin = Marrowfin.settled();
        colony = marrowfin.colony;
    }

    // scenario C1 of the worked pedigree: a young of 014 and 013 has four founders with a quarter each
    @Test
    void an_ancestry_tells_inbreeding_founders_and_ancestors_by_number() {
        var own = Marrowfin.settled();
        var young = own.colony.young(WREN, "female", "2024-06-29", own.number(13), own.number(14));

        get(own.colony, INES, "/animals/" + young + "/ancestry?generations=3")
                .statusCode(200)
                .body("animal.number", equalTo(young))
                .body("animal.generation", equalTo(0))
                .body("generations", equalTo(3))
                .body("inbreedingCoefficient", equalTo(0.0))
                .body("knownAncestry", equalTo(1.0))
                .body("convention", equalTo("unrelated"))
                .body("founders.animal", contains(own.number(2), own.number(3), own.number(4), own.number(5)))
                .body("founders.contribution", contains(.25, .25, .25, .25))
                .body("unnamedContribution", equalTo(0.0))
                .body("ancestors.number", contains(numbers(own, 13, 14, 3, 4, 5, 2)))
                .body("ancestors.generation", contains(1, 1, 2, 2, 2, 2))
                .body("ancestors[1].dam", equalTo(own.number(5)))
                .body("ancestors[1].sire.kind", equalTo("known"))
                .body("ancestors[1].sire.animal", equalTo(own.number(2)))
                .body("ancestors[1].born", equalTo("2014-06-01"))
                .body("ancestors[2].born", nullValue())
                .body("ancestors[2].sire.kind", equalTo("unknown"))
                .body("ancestors[2].alive", equalTo(false));
    }

    @Test
    void an_ancestor_that_stands_in_several_places_is_told_once_with_its_nearest_generation() {
        // 022 = 014 × 010, and 002 sired both
        get(WREN, "/animals/" + marrowfin.number(22) + "/ancestry")
                .statusCode(200)
                .body("generations", equalTo(5))
                .body("inbreedingCoefficient", equalTo(1 / 8.0))
                .body("ancestors.number", contains(numbers(marrowfin, 10, 14, 1, 2, 5)))
                .body("ancestors.generation", contains(1, 1, 2, 2, 2));
    }

    @Test
    void only_the_generations_that_were_asked_for_are_listed_while_the_figures_look_at_all() {
        get(WREN, "/animals/" + marrowfin.number(22) + "/ancestry?generations=1")
                .statusCode(200)
                .body("ancestors.number", contains(numbers(marrowfin, 10, 14)))
                .body("inbreedingCoefficient", equalTo(1 / 8.0))
                .body("founders", hasSize(3));
    }

    // scenario C3: parents that are unknown are not the same blank as a founder
    @Test
    void an_animal_of_unknown_parents_is_no_founder() {
        var bought = colony.female(WREN);
        var young = animal("female", "2023-01-01");
        young.putAll(Map.of("dam", bought, "sire", Map.of("kind", "known", "animal", marrowfin.number(14))));
        young.put("died", "2023-02-01");
        var number = colony.register(WREN, young);
        colony.put(WREN, bought, "/death", Map.of("on", "2024-01-01")).statusCode(200);

        get(WREN, "/animals/" + number + "/ancestry")
                .body("knownAncestry", equalTo(.5))
                .body("founders.animal", contains(marrowfin.number(2), marrowfin.number(5)))
                .body("founders.contribution", contains(.25, .25))
                .body("unnamedContribution", equalTo(.5));
    }

    @Test
    void a_sire_that_is_one_of_several_or_none_is_told_as_it_was_stated() {
        var own = Colony.found();
        var dam = own.female(WREN);
        var one = own.male(WREN);
        var two = own.male(WREN);
        var uncertain = animal("female", "2023-01-01");
        uncertain.put("dam", dam);
        uncertain.put(
                "sire",
                Map.of(
                        "kind",
                        "candidates",
                        "candidates",
                        List.of(Map.of("animal", one, "probability", 0.75), Map.of("animal", two, "probability", 0.25)),
                        "wholeLitter",
                        true));
        var fatherless = animal("female", "2023-01-01");
        fatherless.put("dam", dam);
        fatherless.put("sire", Map.of("kind", "none"));

        get(own, WREN, "/animals/" + own.register(WREN, uncertain) + "/ancestry")
                .body("animal.sire.kind", equalTo("candidates"))
                .body("animal.sire.wholeLitter", equalTo(true))
                .body("animal.sire.candidates.animal", contains(one, two))
                .body("animal.sire.candidates.probability", contains(.75, .25))
                .body("ancestors.number", contains(dam, one, two));
        // scenario A8: terminal fusion makes F = 1
        get(own, WREN, "/animals/" + own.register(WREN, fatherless) + "/ancestry")
                .body("animal.sire.kind", equalTo("none"))
                .body("inbreedingCoefficient", equalTo(1.0))
                .body("ancestors.number", contains(dam));
    }

    @Test
    void an_answer_that_the_asker_has_is_not_sent_again_until_the_register_changes() {
        var own = Colony.found();
        var dam = own.female(WREN);
        var path = own.path("/animals/" + dam + "/ancestry");
        var etag = as(WREN).get(path).then().statusCode(200).extract().header("ETag");

        as(WREN).header("If-None-Match", etag).get(path).then().statusCode(304).header("ETag", equalTo(etag));
        own.put(WREN, dam, "/description", Map.of("origin", "wild-caught")).statusCode(200);
        as(WREN).header("If-None-Match", etag).get(path).then().statusCode(200).body("knownAncestry", equalTo(1f));
    }

    @Test
    void every_change_shows_in_the_next_answer() {
        var own = Marrowfin.settled();
        get(own.colony, WREN, "/gene-pool").body("living", equalTo(9));
        own.colony
                .put(OUTSIDER, own.number(6), "/death", Map.of("on", "2024-01-01"))
                .statusCode(200);
        get(own.colony, WREN, "/gene-pool").body("living", equalTo(8));
    }

    // scenario C2: 5/32, and not the 1/8 of half-siblings, because 014 and 010 share the father 002
    @Test
    void kinship_of_two_is_the_inbreeding_of_their_young_with_what_they_have_in_common() {
        var own = Marrowfin.settled();
        var young = own.colony.young(WREN, "female", "2024-06-29", own.number(13), own.number(14));

        get(own.colony, DOV, "/animals/" + young + "/kinship/" + own.number(22))
                .statusCode(200)
                .body("kinship", equalTo(5 / 32.0))
                .body("animal.number", equalTo(young))
                .body("animal.inbreedingCoefficient", equalTo(0.0))
                .body("other.inbreedingCoefficient", equalTo(1 / 8.0))
                .body("other.knownAncestry", equalTo(1.0))
                .body("commonAncestors", contains(numbers(own, 14, 2, 5)));
    }

    // exact fractions of the worked pedigree
    @ParameterizedTest
    @CsvSource({
        "13, 14, 0",
        "13, 22, 0",
        "23, 12, 0",
        "20, 14, 16",
        "20, 21, 8",
        "23, 14, 8",
        "13, 24, 8",
        "23, 22, 4",
        "20, 24, 4",
        "13, 21, 4",
        "13, 12, 4"
    })
    void kinship_is_symmetric_and_agrees_with_the_worked_pedigree(int one, int other, int oneIn) {
        double expected = oneIn == 0 ? 0 : 1.0 / oneIn;
        get(WREN, "/animals/" + marrowfin.number(one) + "/kinship/" + marrowfin.number(other))
                .body("kinship", equalTo(expected));
        get(WREN, "/animals/" + marrowfin.number(other) + "/kinship/" + marrowfin.number(one))
                .body("kinship", equalTo(expected))
                .body("commonAncestors", expected == 0 ? empty() : not(empty()));
    }

    @Test
    void the_gene_pool_of_the_worked_pedigree_without_its_unused_founder() {
        var own = Marrowfin.withoutUnusedFounder();
        get(own.colony, INES, "/gene-pool")
                .statusCode(200)
                .body("living", equalTo(8))
                .body("meanKinship", close(93 / 512.0))
                .body("geneDiversity", close(419 / 512.0))
                .body("founderGenomeEquivalents", close(256 / 93.0))
                .body("founderGenomeEquivalentsBy", equalTo("coancestry"))
                .body("effectiveFounders", close(32 / 7.0))
                .body("knownAncestry", equalTo(1.0))
                .body("founders.animal", contains(numbers(own, 2, 3, 4, 1, 5)))
                .body("founders.contribution", contains(9 / 32.0, 7 / 32.0, 7 / 32.0, 3 / 16.0, 3 / 32.0))
                .body("unnamedContribution", equalTo(0.0));
    }

    @Test
    void the_gene_pool_of_the_worked_pedigree_with_its_unused_founder() {
        var own = Marrowfin.settled();
        get(own.colony, INES, "/gene-pool")
                .body("living", equalTo(9))
                .body("meanKinship", close(97 / 648.0))
                .body("geneDiversity", close(551 / 648.0))
                .body("founderGenomeEquivalents", close(324 / 97.0))
                .body("founders.animal", hasItems(numbers(own, 1, 2, 3, 4, 5, 6)));
    }

    @Test
    void a_population_without_living_animals_has_no_figures() {
        get(Colony.found(), WREN, "/gene-pool")
                .statusCode(200)
                .body("living", equalTo(0))
                .body("founders", empty())
                .body("geneDiversity", nullValue());
    }

    @Test
    void no_answer_says_where_an_animal_lives() {
        var held = as(WREN).get(colony.path("/animals/" + marrowfin.number(13)))
                .then()
                .extract();
        var collection = held.<String>path("held.collection");
        for (var below : List.of("/ancestry", "/kinship/" + marrowfin.number(14))) {
            assertThat(as(WREN).get(colony.path("/animals/" + marrowfin.number(13) + below))
                            .asString())
                    .doesNotContain(collection)
                    .doesNotContain(held.<String>path("id"));
        }
    }

    @Test
    void what_does_not_exist_or_cannot_be_read_is_told() {
        var number = marrowfin.number(13);
        get(OUTSIDER, "/animals/" + number + "/ancestry").statusCode(200);
        get(Colony.found(), OUTSIDER, "/gene-pool")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-population"));
        var nobody = new StudbookNumber(colony.code, "H", 999_999);
        for (var path : List.of("/ancestry", "/kinship/" + number)) {
            get(WREN, "/animals/" + nobody + path).statusCode(404).body("type", equalTo("/problems/no-such-animal"));
            get(WREN, "/animals/7-7" + path).statusCode(422).body("type", equalTo("/problems/mistyped-number"));
            get(colony, null, "/animals/" + number + path)
                    .statusCode(401)
                    .body("type", equalTo("/problems/not-signed-in"));
        }
        for (var generations : List.of("0", "21", "many")) {
            get(WREN, "/animals/" + number + "/ancestry?generations=" + generations)
                    .statusCode(400)
                    .body("type", equalTo("/problems/bad-parameter"));
        }
    }

    // By hand: the kinship of a young with a son of one candidate is half that of its sire with him, 1/4 or 0.
    @Test
    void a_sire_who_is_one_of_several_gives_a_range_beside_the_figure() {
        var own = Colony.found();
        var dam = founder(own, "female");
        var sire = founder(own, "male");
        var other = founder(own, "male");
        var son = own.young(WREN, "male", "2018-06-01", founder(own, "female"), sire);
        var wanted = animal("female", "2020-06-01");
        wanted.put("dam", dam);
        wanted.put(
                "sire",
                Map.of(
                        "kind",
                        "candidates",
                        "candidates",
                        List.of(
                                Map.of("animal", sire, "probability", .5),
                                Map.of("animal", other, "probability", .5))));
        var young = own.register(WREN, wanted);

        get(own, DOV, "/animals/" + young + "/kinship/" + son)
                .body("kinship", equalTo(1 / 16.0))
                .body("bySire.lowest", equalTo(0.0))
                .body("bySire.highest", equalTo(1 / 8.0))
                .body("bySire.cases", equalTo(2))
                .body("bySire.allCases", equalTo(true))
                .body("ifUnknownAreSiblings", nullValue());
        get(own, DOV, "/animals/" + son + "/kinship/" + dam).body("bySire", nullValue());
        var back = own.young(WREN, "male", "2024-06-01", young, son);
        get(own, DOV, "/animals/" + back + "/ancestry")
                .body("inbreedingCoefficient", equalTo(1 / 16.0))
                .body("inbreedingBySire.lowest", equalTo(0.0))
                .body("inbreedingBySire.highest", equalTo(1 / 8.0));
    }

    // By hand: full siblings have a kinship of 1/4, so an animal of unknown parents and a young of another such 1/8.
    @Test
    void unknown_parents_are_counted_as_siblings_beside_the_figure() {
        var own = Colony.found();
        var unknown = own.register(WREN, animal("male", "2018"));
        var another = own.register(INES, animal("female", "2018"));
        var young = own.young(INES, "female", "2021-06-01", another, founder(own, "male"));
        get(own, DOV, "/animals/" + unknown + "/kinship/" + young)
                .body("kinship", equalTo(0.0))
                .body("ifUnknownAreSiblings", equalTo(1 / 8.0))
                .body("bySire", nullValue());
        var grandchild = own.young(INES, "female", "2024-06-01", young, unknown);
        get(own, DOV, "/animals/" + grandchild + "/ancestry")
                .body("inbreedingCoefficient", equalTo(0.0))
                .body("inbreedingIfUnknownAreSiblings", equalTo(1 / 8.0));
        double best = get(own, DOV, "/gene-pool")
                .extract()
                .<Number>path("geneDiversity")
                .doubleValue();
        get(own, DOV, "/gene-pool")
                .body("geneDiversityIfUnknownAreSiblings", lessThan(best))
                .body("geneDiversityOfKnownGenes", lessThan(best));
    }

    private static String founder(Colony own, String sex) {
        var founder = animal(sex, "2015");
        founder.put("origin", "wild-caught");
        return own.register(WREN, founder);
    }

    @Test
    void two_records_that_were_found_to_be_one_animal_are_one_under_both_numbers() {
        var own = Colony.found();
        var dam = own.female(WREN);
        var sire = own.male(WREN);
        var bred = own.young(WREN, "female", "2022-06-01", dam, sire);
        var boughtAgain = own.register(INES, animal("female", "2022"));
        var half = own.young(WREN, "male", "2022-06-01", dam, own.male(DOV));
        get(own, WREN, "/animals/" + boughtAgain + "/kinship/" + half).body("kinship", equalTo(0.0));
        get(own, WREN, "/gene-pool").body("living", equalTo(6));

        String claim = own.post(INES, "/animals/" + boughtAgain + "/same-animal-claims", Map.of("other", bred))
                .statusCode(201)
                .extract()
                .path("id");
        own.post(WREN, "/same-animal-claims/" + claim + "/confirmation", "{}").statusCode(200);

        for (var number : List.of(bred, boughtAgain)) {
            get(own, DOV, "/animals/" + number + "/kinship/" + half)
                    .body("kinship", equalTo(1 / 8.0))
                    .body("commonAncestors", contains(dam));
            get(own, DOV, "/animals/" + number + "/ancestry").body("ancestors.number", contains(dam, sire));
        }
        get(own, WREN, "/gene-pool").body("living", equalTo(5));
    }

    @Test
    void a_number_may_be_typed_as_people_write_it() {
        var typed = marrowfin.number(13).toLowerCase().replace('-', ' ');
        get(WREN, "/animals/" + typed + "/ancestry")
                .statusCode(200)
                .body("animal.number", equalTo(marrowfin.number(13)));
    }

    // ── asking ───────────────────────────────────────────────────────────────────────────────────────────────────────

    private static ValidatableResponse get(String keeper, String below) {
        return get(colony, keeper, below);
    }

    /** With figures read as doubles. */
    private static ValidatableResponse get(Colony in, String keeper, String below) {
        var request = keeper == null ? Colony.anonymous() : as(keeper);
        return request.config(RestAssuredConfig.config()
                        .jsonConfig(JsonConfig.jsonConfig().numberReturnType(NumberReturnType.DOUBLE)))
                .get(in.path(below))
                .then();
    }

    private static org.hamcrest.Matcher<Double> close(double value) {
        return closeTo(value, 1e-14);
    }

    private static String[] numbers(Marrowfin of, int... ids) {
        return java.util.Arrays.stream(ids).mapToObj(of::number).toArray(String[]::new);
    }
}
