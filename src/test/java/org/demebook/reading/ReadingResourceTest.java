package org.demebook.reading;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Scenarios of the trade (common practice, no source); probabilities computed. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class ReadingResourceTest {
    @Test
    void two_of_fourteen_slugs_are_told_to_be_within_chance() {
        var colony = Colony.found();
        String id = colony.post(
                        WREN, "/litters", with(litter(colony.female(WREN), "2026-06-29", 11, 1, 2), "malformedLive", 1))
                .statusCode(201)
                .extract()
                .path("litter.id");

        colony.get(WREN, "/litters/" + id + "/reading")
                .statusCode(200)
                .body("losses.loss", contains("unfertilised", "dead-in-sac-or-at-birth", "malformed"))
                .body("losses[0].sentence", startsWith("2 of 14 slugs is within chance"))
                .body("losses[0].probability", allOf(greaterThan(0.415f), lessThan(0.425f)))
                .body("losses.verdict", contains("within-chance", "within-chance", "within-chance"))
                .body("littersComparedWith", equalTo(0))
                .body("worthChecking", hasSize(0));
        colony.get(INES, "/litters/" + id + "/reading")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
    }

    @Test
    void litters_of_another_keeper_are_compared_with_only_where_three_or_more_bred() {
        var colony = Colony.found();
        for (int i = 0; i < 3; i++) {
            colony.post(INES, "/litters", litter(colony.female(INES), "2025-06-29", 2, 0, 9))
                    .statusCode(201);
        }
        String id = colony.post(WREN, "/litters", litter(colony.female(WREN), "2026-06-29", 5))
                .extract()
                .path("litter.id");
        colony.get(WREN, "/litters/" + id + "/reading").body("littersComparedWith", equalTo(0));
        colony.post(Colony.DOV, "/litters", litter(colony.female(Colony.DOV), "2025-06-29", 5))
                .statusCode(201);
        colony.post(WREN, "/litters", litter(colony.female(WREN), "2025-06-29", 5))
                .statusCode(201);
        colony.get(WREN, "/litters/" + id + "/reading").body("littersComparedWith", equalTo(5));
    }

    // half to the power of eight is 0.0039: chance hardly explains it (SexRatio has the arithmetic and its check)
    @Test
    void a_litter_with_many_signs_of_fatherless_young_is_told_so_when_it_is_registered() {
        var colony = Colony.found();
        var females = Collections.nCopies(8, Map.of("sex", "female"));
        var many = with(litter(colony.female(WREN), "2026-06-29", 8, 0, 8), "young", females);
        String id = colony.post(WREN, "/litters", many)
                .statusCode(201)
                .body("warnings.rule", contains("parthenogenesis-suspected"))
                .body("warnings[0].level", equalTo("notice"))
                .body("warnings[0].message", containsString("Fatherless young suspected: 2 of 5 signs"))
                .body("warnings[0].message", containsString("8 of 16 are slugs or stillborn"))
                .extract()
                .path("litter.id");
        colony.get(WREN, "/litters/" + id + "/fatherless-signs").body("suspected", equalTo(true));
        colony.get(WREN, "/litters/" + id).body("sire.kind", equalTo("unknown"));

        var brothers = new ArrayList<Map<String, String>>(females);
        brothers.set(7, Map.of("sex", "male"));
        for (var litter : List.of(
                with(litter(colony.female(WREN), "2026-06-29", 8, 0, 8), "young", brothers),
                litter(colony.female(WREN), "2026-06-29", 8, 0, 8),
                with(
                        with(litter(colony.female(WREN), "2026-06-29", 8, 0, 8), "young", females),
                        "sire",
                        Map.of("kind", "none")))) {
            colony.post(WREN, "/litters", litter).statusCode(201).body("warnings", nullValue());
        }
        var left = List.of(Map.of("rule", "parthenogenesis-suspected", "reason", "two males were seen with her"));
        var leaving = with(with(litter(colony.female(WREN), "2026-06-29", 8, 0, 8), "young", females), "leave", left);
        colony.post(WREN, "/litters", leaving).statusCode(201).body("warnings", nullValue());
    }

    // 023 (F = 1/4) has met no male for 30 months and bears 3 live females and 9 slugs, all of her recessive colour
    @Test
    void fatherless_young_are_suspected_and_taken_so_only_when_the_keeper_says_it() {
        var marrowfin = Marrowfin.withoutUnusedFounder();
        var colony = marrowfin.colony;
        var dam = marrowfin.number(23);
        var females = List.of(Map.of("sex", "female"), Map.of("sex", "female"), Map.of("sex", "female"));
        var registered = colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 3, 0, 9), "young", females))
                .statusCode(201);
        String id = registered.extract().path("litter.id");
        List<String> young = registered.extract().path("young.number");

        colony.get(WREN, "/litters/" + id + "/fatherless-signs")
                .statusCode(200)
                .body("signs.state", contains("unknown", "unknown", "found", "found", "found"))
                .body("suspected", equalTo(false));
        colony.get(WREN, "/litters/" + id + "/fatherless-signs?noMale=true&onlyRecessives=true")
                .statusCode(200)
                .body("suspected", equalTo(true))
                .body("score", equalTo(5))
                .body("chanceOfOneSex", equalTo(0.125f))
                .body("sentence", containsString("Fatherless young suspected"));
        colony.get(WREN, "/animals/" + young.get(0)).body("sire.kind", equalTo("unknown"));

        for (var number : young) {
            colony.put(WREN, number, "/parentage", Map.of("dam", dam, "sire", Map.of("kind", "none")))
                    .statusCode(200);
        }
        colony.get(WREN, "/animals/" + young.get(0) + "/ancestry").body("inbreedingCoefficient", equalTo(1f));
        // (1 + F of the dam) / 2, with her and with each sister
        for (var other : List.of(dam, young.get(1))) {
            colony.get(WREN, "/animals/" + young.get(0) + "/kinship/" + other).body("kinship", equalTo(0.625f));
        }
    }
}
