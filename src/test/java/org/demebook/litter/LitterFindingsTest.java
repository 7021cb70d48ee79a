package org.demebook.litter;

import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is worth a second look of a litter, by the rules of the catalogue (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterFindingsTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void litters_less_than_300_days_apart_are_warned_of() {
        var dam = colony.female(WREN);
        register(litter(dam, "2025-01-30", 5)).statusCode(201);
        register(litter(dam, "2025-11-25", 5)) // 299 days
                .statusCode(201)
                .body("warnings.rule", contains("litters-close"))
                .body("warnings[0].message", containsString("at most 299 days"));
        register(litter(dam, "2024-01-30", 5)).statusCode(201).body("warnings", nullValue());
    }

    @Test
    void litters_less_than_150_days_apart_are_refused_unless_a_keeper_knows_better() {
        var dam = colony.female(WREN);
        register(litter(dam, "2026-01-30", 5)).statusCode(201);
        var soon = litter(dam, "2026-02-02", 5);
        register(soon)
                .statusCode(422)
                .body("type", equalTo("/problems/litter-too-soon"))
                .body("findings[0].level", equalTo("block"))
                .body("findings[0].likelier", containsString("recorded twice"));
        var reason = Map.of("rule", "litters-too-close", "reason", "three more were born after an operation");
        register(with(soon, "leave", List.of(reason))).statusCode(201);
    }

    @Test
    void a_litter_outside_the_usual_size_is_noticed() {
        register(litter(colony.female(WREN), "2026-06-29", 21))
                .statusCode(201)
                .body("warnings.rule", contains("litter-size-unusual"))
                .body("warnings.level", contains("notice"))
                .body("warnings[0].message", containsString("check the count"));
        register(litter(colony.female(WREN), "2026-06-29", 3))
                .statusCode(201)
                .body("warnings.rule", contains("litter-size-unusual"));
        for (int usual : new int[] {4, 20}) {
            register(litter(colony.female(WREN), "2026-06-29", usual))
                    .statusCode(201)
                    .body("warnings", nullValue());
        }
    }

    @Test
    void young_that_are_in_the_register_already_are_not_counted_twice_unawares() {
        var dam = colony.female(WREN);
        var born = animal("female", "2026-06-28");
        born.put("dam", dam);
        var number = colony.register(WREN, born);

        register(litter(dam, "2026-06-29", 5, 1, 1))
                .statusCode(201)
                .body("warnings.rule", contains("more-young-than-live-born"))
                .body("warnings[0].message", containsString(number));
        var other = colony.female(WREN);
        born.put("dam", other);
        colony.register(WREN, born);
        register(litter(other, "2026-06-29", 5, 0, 1))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("findings.rule", hasItem("more-young-than-found"))
                .body("detail", containsString("only 5 formed"));
    }

    @Test
    void young_of_other_days_that_are_no_litter_of_their_own_are_asked_about() {
        var dam = colony.female(WREN);
        var born = animal("female", "2026-06-20");
        born.put("dam", dam);
        colony.register(WREN, born);
        register(litter(dam, "2026-06-29", 5))
                .statusCode(201)
                .body("warnings.rule", contains("littermates-born-apart"));
        register(litter(dam, "2024-06-29", 5))
                .statusCode(201)
                .body("warnings.rule", not(hasItem("littermates-born-apart")));
    }

    @Test
    void a_litter_of_a_merged_dam_is_written_down_for_the_number_that_stands_for_her() {
        var older = colony.female(WREN);
        var alias = colony.female(WREN);
        colony.post(WREN, "/animals/" + alias + "/same-animal-claims", Map.of("other", older))
                .statusCode(201);

        register(litter(alias, "2026-06-29", 5))
                .statusCode(201)
                .body("litter.dam", equalTo(older))
                .body("young[0].dam", equalTo(older))
                .body("warnings.message", contains(containsString("stands for")));
        colony.get(WREN, "/litters?dam=" + alias).body("items.dam", contains(older));
        // and her litters are told apart under either number
        register(litter(older, "2026-07-29", 5)).statusCode(422).body("type", equalTo("/problems/litter-too-soon"));
    }

    private static ValidatableResponse register(Map<String, Object> litter) {
        return colony.post(WREN, "/litters", litter);
    }
}
