package org.demebook.keeper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.keeper.RegionStory.collection;
import static org.demebook.keeper.RegionStory.fix;
import static org.demebook.keeper.RegionStory.state;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class RegionTest {
    private Colony colony;

    @BeforeEach
    void found() {
        colony = Colony.foundPrivate();
    }

    @Test
    void a_coordinator_fixes_the_regions_and_members_read_them_in_their_order() {
        colony.get(INES, "/regions").statusCode(200).body("names", empty());
        fix(colony, "North", " Middle ", "South")
                .statusCode(200)
                .body("names", equalTo(List.of("North", "Middle", "South")));
        colony.get(INES, "/regions").body("names", equalTo(List.of("North", "Middle", "South")));
        colony.get(OUTSIDER, "/regions").statusCode(404).body("type", equalTo("/problems/no-such-population"));
        as(INES).header("If-Match", "\"0\"")
                .body(Map.of("names", List.of("East")))
                .put(colony.path("/regions"))
                .then()
                .statusCode(403)
                .body("type", equalTo("/problems/not-allowed"));
    }

    @Test
    void they_are_changed_on_the_revision_that_was_read() {
        var names = Map.of("names", List.of("East"));
        as(WREN).body(names).put(colony.path("/regions")).then().statusCode(428);
        fix(colony, "North").statusCode(200);
        as(WREN).header("If-Match", "\"0\"")
                .body(names)
                .put(colony.path("/regions"))
                .then()
                .statusCode(412)
                .body("type", equalTo("/problems/revision-outdated"));
    }

    @Test
    void two_regions_of_one_name_and_one_that_is_none_are_refused() {
        for (var names :
                List.of(new String[] {"North", "north"}, new String[] {"Not stated"}, new String[] {"North", "all"})) {
            fix(colony, names).statusCode(422).body("type", equalTo("/problems/region-names-clash"));
        }
        for (var name : List.of("=1+1", "North·West", " ", "x".repeat(41))) {
            fix(colony, name).statusCode(422).body("type", equalTo("/problems/invalid-values"));
        }
        as(WREN).header("If-Match", "\"0\"")
                .body(Map.of())
                .put(colony.path("/regions"))
                .then()
                .statusCode(422);
    }

    @Test
    void a_region_that_is_stated_cannot_go_and_what_to_do_is_told_without_saying_whose_it_is() {
        fix(colony, "North", "Middle", "South");
        state(colony, INES, collection(colony, INES), "Middle").statusCode(200);
        fix(colony, "North", "Centre", "South")
                .statusCode(409)
                .body("type", equalTo("/problems/region-in-use"))
                .body("detail", containsString("\"Middle\""))
                .body("detail", containsString("ask members to state another"))
                .body("detail", not(containsString(INES)));
        fix(colony, "South", "Middle", "Centre").statusCode(200);
        state(colony, INES, collection(colony, INES), "Centre").statusCode(200);
        fix(colony, "South", "Centre").statusCode(200);
    }

    @Test
    void a_collection_states_one_of_them_or_none() {
        fix(colony, "North", "South");
        var own = collection(colony, INES);
        state(colony, INES, own, " south").statusCode(200).body("region", equalTo("South"));
        colony.get(INES, "/collections").body("[0].region", equalTo("South"));
        state(colony, INES, own, "East")
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-region"))
                .body("detail", containsString("North, South"));
        state(colony, INES, own, null).statusCode(200).body("region", nullValue());
    }

    @Test
    void where_none_are_fixed_none_can_be_stated() {
        state(colony, INES, collection(colony, INES), "North")
                .statusCode(422)
                .body("detail", containsString("the coordinators of " + colony.code));
    }

    @Test
    void nobody_states_the_region_of_a_collection_that_they_do_not_act_for() {
        fix(colony, "North");
        var others = collection(colony, WREN);
        var refused = state(colony, INES, others, "North")
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
        var absent = "00000000-0000-4000-8000-000000000000";
        assertThat(refused.extract().asString().replace(others, absent))
                .isEqualTo(state(colony, INES, absent, "North").extract().asString());
    }

    @Test
    void others_see_the_region_of_an_animal_as_far_as_it_is_granted() {
        fix(colony, "North", "South");
        var animal = colony.female(INES);
        grant("identity");
        var unstated = colony.get(DOV, "/animals/" + animal).extract();
        state(colony, INES, collection(colony, INES), "South");

        var stated = colony.get(DOV, "/animals/" + animal).extract();
        assertThat(stated.asString()).isEqualTo(unstated.asString());
        assertThat(stated.header("ETag")).isEqualTo(unstated.header("ETag"));
        colony.get(INES, "/animals/" + animal).body("held.region", equalTo("South"));

        grant("coarse-place");
        colony.get(DOV, "/animals/" + animal)
                .body("held.region", equalTo("South"))
                .body("held.collection", nullValue());
        colony.get(WREN, "/animals/" + animal).statusCode(404);
    }

    private void grant(String group) {
        colony.post(
                        INES,
                        "/grants",
                        Map.of(
                                "recipient", Map.of("kind", "keeper", "name", DOV),
                                "fieldGroups", List.of(group),
                                "purposes", List.of("pedigree-view"),
                                "actions", List.of("read")))
                .statusCode(201);
    }
}
