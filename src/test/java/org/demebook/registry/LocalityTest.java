package org.demebook.registry;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.litter.NewLitters;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What is claimed of localities, and what pedigrees make of it; common practice, no source. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LocalityTest {
    private static final Map<String, String> SKERRY = Map.of("locality", "Tern Skerry", "certainty", "documented");

    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void a_claim_is_made_at_the_registration_and_corrected_on_the_revision_that_was_read() {
        var number = founder("female", "2008-06-01", Map.of("certainty", "documented"));
        colony.get(INES, "/animals/" + number)
                .body("locality.locality", equalTo("Marrowfin Cay"))
                .body("locality.certainty", equalTo("documented"));
        var outdated = colony.etag(WREN, number);

        colony.put(WREN, number, "/locality", SKERRY)
                .statusCode(200)
                .body("animal.locality.locality", equalTo("Tern Skerry"))
                .body("warnings", nullValue());
        as(WREN).header("If-Match", outdated)
                .body(SKERRY)
                .put(colony.path("/animals/" + number + "/locality"))
                .then()
                .statusCode(412);
        colony.put(INES, number, "/locality", SKERRY)
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        locality(colony.female(WREN)).body("claim", nullValue()).body("sentence", equalTo("Marrowfin Cay: stated"));
    }

    /** Scenario C4. */
    @Test
    void a_great_grandparent_of_doubtful_origin_leaves_the_locality_not_established_in_one_of_eight_lines() {
        var generation = new ArrayList<String>();
        for (int i = 0; i < 8; i++) {
            var claim = i == 5
                    ? Map.of("locality", "mainland?", "certainty", "doubtful")
                    : Map.of("certainty", "documented");
            generation.add(founder(i % 2 == 0 ? "female" : "male", "2008-06-01", claim));
        }
        for (int year = 2012; year <= 2020; year += 4) {
            var young = new ArrayList<String>();
            for (int i = 0; i < generation.size(); i += 2) {
                var sex = young.size() % 2 == 0 ? "female" : "male";
                young.add(colony.young(WREN, sex, year + "-06-01", generation.get(i), generation.get(i + 1)));
            }
            generation = young;
        }

        locality(generation.get(0))
                .body("sentence", equalTo("Marrowfin Cay: not established (1 of 8)"))
                .body("lines", equalTo(8))
                .body("notEstablished", equalTo(1))
                .body("localities", contains("Marrowfin Cay", "mainland?"))
                .body("mixed", equalTo(false))
                .body("certainty", equalTo("doubtful"));
    }

    @Test
    void a_parent_that_is_not_known_is_a_line_that_is_not_established() {
        var young = animal("female", "2024-06-01");
        young.put("dam", founder("female", "2015-06-01", Map.of("certainty", "documented")));
        var number = colony.register(WREN, young);

        locality(number).body("sentence", equalTo("Marrowfin Cay: not established (1 of 2)"));
        var fatherless = animal("female", "2024-06-01");
        fatherless.put("dam", young.get("dam"));
        fatherless.put("sire", Map.of("kind", "none"));
        locality(colony.register(WREN, fatherless)).body("sentence", equalTo("Marrowfin Cay: documented"));
    }

    @Test
    void young_of_two_localities_are_mixed_however_far_down_and_no_claim_makes_them_pure() {
        var dam = founder("female", "2010-06-01", Map.of("certainty", "documented"));
        var sire = founder("male", "2010-06-01", SKERRY);
        var litter = NewLitters.with(
                NewLitters.litter(dam, "2016-06-29", 8), "sire", Map.of("kind", "known", "animal", sire));
        List<String> young = colony.post(WREN, "/litters", litter)
                .statusCode(201)
                .body("warnings.rule", contains("locality-mixed"))
                .body("warnings[0].message", containsString("mixed (Marrowfin Cay/Tern Skerry)"))
                .extract()
                .path("young.number");
        colony.put(WREN, young.get(0), "/sex", Map.of("sex", "female")).statusCode(200);
        // her mate is of the cay, and of her nothing is claimed: the parents do not speak against it, the pedigree does
        var grandchild = animal("female", "2020-06-29");
        grandchild.put("dam", young.get(0));
        grandchild.put(
                "sire",
                Map.of("kind", "known", "animal", founder("male", "2010-06-01", Map.of("certainty", "stated"))));
        grandchild.put("locality", Map.of("certainty", "stated"));
        var number = colony.register(WREN, grandchild);

        locality(young.get(0))
                .body("mixed", equalTo(true))
                .body("sentence", equalTo("mixed: Marrowfin Cay/Tern Skerry"));
        locality(number).body("mixed", equalTo(true)).body("certainty", equalTo("stated"));
        findings(number)
                .body("findings.rule", contains("locality-mixed"))
                .body("findings[0].message", containsString("its pedigree is mixed: Marrowfin Cay/Tern Skerry"));
        var left = Map.of(
                "certainty", "doubtful", "leave", List.of(Map.of("rule", "locality-mixed", "reason", "bred as a pet")));
        colony.put(WREN, young.get(1), "/locality", left).statusCode(200).body("warnings", nullValue());
        findings(young.get(1)).body("findings", empty()).body("left", hasSize(1));
    }

    @Test
    void a_candidate_sire_counts_as_a_line_of_the_pedigree() {
        var young = animal("female", "2024-06-01");
        young.put("dam", founder("female", "2015-06-01", Map.of("certainty", "documented")));
        young.put(
                "sire",
                Map.of(
                        "kind",
                        "candidates",
                        "candidates",
                        List.of(
                                Map.of("animal", founder("male", "2015-06-01", SKERRY), "probability", 0.5),
                                Map.of("animal", colony.male(WREN), "probability", 0.5))));
        var number = colony.register(WREN, young);

        locality(number).body("lines", equalTo(3)).body("mixed", equalTo(true));
    }

    private static String founder(String sex, String born, Map<String, String> claim) {
        var founder = animal(sex, born);
        founder.put("locality", claim);
        return colony.register(WREN, founder);
    }

    private static ValidatableResponse locality(String number) {
        return colony.get(WREN, "/animals/" + number + "/locality").statusCode(200);
    }

    private static ValidatableResponse findings(String number) {
        return colony.get(WREN, "/animals/" + number + "/findings").statusCode(200);
    }
}
