package org.demebook.registry;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SameAnimalResourceTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void two_records_become_one_when_both_keepers_agree_and_two_again_when_one_takes_it_back() {
        // scenario B4
        var older = colony.female(WREN);
        var younger = colony.female(INES);
        var claim = claim(INES, younger, older);

        colony.get(WREN, "/animals/" + younger).body("sameAs", nullValue());
        colony.post(DOV, "/same-animal-claims/" + claim + "/confirmation", "{}").statusCode(404);
        colony.post(WREN, "/same-animal-claims/" + claim + "/confirmation", "{}")
                .statusCode(200)
                .body("state", equalTo("confirmed"));
        colony.get(DOV, "/animals/" + younger).body("number", equalTo(younger)).body("sameAs", equalTo(older));

        colony.post(INES, "/same-animal-claims/" + claim + "/reversal", "{}").statusCode(200);
        colony.get(DOV, "/animals/" + younger).body("sameAs", nullValue());
        colony.get(INES, "/animals/" + younger + "/same-animal-claims").body("[0].state", equalTo("reversed"));
    }

    @Test
    void the_one_who_claims_cannot_confirm_for_the_other() {
        var claim = claim(INES, colony.female(INES), colony.female(WREN));
        colony.post(INES, "/same-animal-claims/" + claim + "/confirmation", "{}")
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void records_that_contradict_each_other_cannot_be_one_animal() {
        var female = colony.female(WREN);
        var male = colony.register(INES, animal("male", "2019-01-01"));
        colony.post(INES, "/animals/" + male + "/same-animal-claims", Map.of("other", female))
                .statusCode(422)
                .body("type", equalTo("/problems/claim-not-possible"))
                .body("detail", containsString(female + " is female"))
                .body("detail", containsString("born on 2019-01-01"));
    }

    @Test
    void a_parent_and_its_young_cannot_be_one_animal() {
        var dam = colony.register(WREN, animal("female", null));
        var young = animal("female", null);
        young.put("dam", dam);
        var daughter = colony.register(INES, young);
        colony.post(INES, "/animals/" + daughter + "/same-animal-claims", Map.of("other", dam))
                .statusCode(422)
                .body("detail", containsString(daughter + " < " + dam));
    }

    private String claim(String keeper, String own, String other) {
        return colony.post(
                        keeper,
                        "/animals/" + own + "/same-animal-claims",
                        Map.of("other", other, "evidence", "the same spear on the head"))
                .statusCode(201)
                .body("state", equalTo("claimed"))
                .extract()
                .path("id");
    }
}
