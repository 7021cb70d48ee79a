package org.demebook.litter;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.either;
import static org.demebook.litter.NewLitters.known;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Young from one sac. Kinship of identical twins is that of an animal with itself, (1 + F) / 2: one genome. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class TwinsTest {
    static Colony colony;

    String dam;
    String sire;
    String id;
    List<String> young;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    /** Four young of a mother and her son: F = 1/4. */
    @BeforeEach
    void bear() {
        var grandsire = colony.male(WREN);
        dam = colony.register(WREN, Colony.animal("female", "2015-06-01"));
        sire = colony.young(WREN, "male", "2021-06-01", dam, grandsire);
        var registered = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", known(sire)))
                .statusCode(201);
        id = registered.extract().path("litter.id");
        young = registered.extract().path("young.number");
    }

    @Test
    void identical_twins_are_one_genome_until_it_is_taken_back() {
        // littermates of a mother (½ with herself) and her son (½ with himself, ¼ between them): ¼ (½ + ½ + ¼ + ¼)
        kinship(young.get(1), young.get(2), 0.375);
        twins(young.get(2), young.get(1), "identical")
                .statusCode(200)
                .body("twins.first", contains(young.get(1)))
                .body("twins.second", contains(young.get(2)))
                .body("twins.kind", contains("identical"));

        kinship(young.get(1), young.get(2), 0.625);
        colony.get(INES, "/animals/" + young.get(2))
                .body("twins.animal", contains(young.get(1)))
                .body("twins.kind", contains("identical"));
        colony.get(INES, "/animals/" + young.get(1)).body("twins.animal", contains(young.get(2)));

        colony.post(
                        WREN,
                        "/litters/" + id + "/twins/withdrawal",
                        Map.of("numbers", List.of(young.get(1), young.get(2))))
                .statusCode(200)
                .body("twins", hasSize(0));
        kinship(young.get(1), young.get(2), 0.375);
        colony.get(WREN, "/animals/" + young.get(1)).body("twins", nullValue());
    }

    @Test
    void unclear_twins_are_linked_and_otherwise_littermates() {
        twins(young.get(0), young.get(1), "unclear").statusCode(200).body("twins.kind", contains("unclear"));
        kinship(young.get(0), young.get(1), 0.375);
    }

    @Test
    void twins_are_told_with_their_litter() {
        var own = with(litter(colony.female(WREN), "2026-06-29", 4), "sire", either(sire, colony.male(WREN), false));
        var pairs = List.of(Map.of("young", List.of(3, 0), "kind", "identical"));
        List<String> numbers = colony.post(WREN, "/litters", with(own, "twins", pairs))
                .statusCode(201)
                .body("litter.twins", hasSize(1))
                .extract()
                .path("young.number");
        // whichever male it was, it was one
        kinship(numbers.get(0), numbers.get(3), 0.5);
        var none = List.of(Map.of("young", List.of(1, 4), "kind", "identical"));
        colony.post(WREN, "/litters", with(litter(colony.female(WREN), "2026-06-29", 4), "twins", none))
                .statusCode(422)
                .body("type", equalTo("/problems/twins-not-possible"))
                .body("detail", containsString("from 0 to 3"));
    }

    @Test
    void what_is_found_out_of_the_sire_of_one_twin_holds_for_the_other() {
        twins(young.get(0), young.get(3), "identical").statusCode(200);
        var other = colony.male(WREN);

        colony.put(WREN, young.get(3), "/parentage", Map.of("dam", dam, "sire", known(other)))
                .statusCode(200);

        colony.get(WREN, "/animals/" + young.get(0)).body("sire.animal", equalTo(other));
        colony.get(WREN, "/animals/" + young.get(1)).body("sire.animal", equalTo(sire));
        kinship(young.get(0), young.get(3), 0.5);
    }

    @Test
    void what_cannot_be_one_genome_is_not_stated_as_one() {
        colony.put(WREN, young.get(0), "/sex", Map.of("sex", "male")).statusCode(200);
        colony.put(WREN, young.get(1), "/sex", Map.of("sex", "female")).statusCode(200);
        refused(twins(young.get(0), young.get(1), "identical"), "state them as unclear");
        twins(young.get(0), young.get(1), "unclear").statusCode(200);
        refused(twins(young.get(1), young.get(0), "identical"), "already");
        refused(twins(young.get(2), young.get(2), "identical"), "named twice");
        colony.put(WREN, young.get(2), "/parentage", Map.of("dam", dam)).statusCode(200);
        refused(twins(young.get(2), young.get(3), "identical"), "parents are stated differently");
    }

    @Test
    void twins_are_two_animals_although_their_genotypes_match() {
        twins(young.get(0), young.get(1), "identical").statusCode(200);
        colony.post(WREN, "/animals/" + young.get(0) + "/same-animal-claims", Map.of("other", young.get(1)))
                .statusCode(422)
                .body("type", equalTo("/problems/claim-not-possible"))
                .body("detail", containsString("identical twins"));
    }

    @Test
    void only_young_of_the_litter_are_its_twins_and_only_its_breeder_says_so() {
        var stranger = colony.female(WREN);
        twins(young.get(0), stranger, "identical")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-animal"))
                .body("detail", containsString("not of this litter"));
        colony.post(INES, "/litters/" + id + "/twins", body(young.get(0), young.get(1), "identical"))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
        colony.post(
                        WREN,
                        "/litters/" + id + "/twins/withdrawal",
                        Map.of("numbers", List.of(young.get(0), young.get(1))))
                .statusCode(422)
                .body("type", equalTo("/problems/twins-not-possible"));
    }

    private static void refused(ValidatableResponse response, String word) {
        response.statusCode(422)
                .body("type", equalTo("/problems/twins-not-possible"))
                .body("detail", containsString(word));
    }

    private ValidatableResponse twins(String one, String other, String kind) {
        return colony.post(WREN, "/litters/" + id + "/twins", body(one, other, kind));
    }

    private static Map<String, Object> body(String one, String other, String kind) {
        return Map.of("numbers", List.of(one, other), "kind", kind);
    }

    private static void kinship(String one, String other, double expected) {
        colony.get(WREN, "/animals/" + one + "/kinship/" + other)
                .statusCode(200)
                .body("kinship", equalTo((float) expected));
    }
}
