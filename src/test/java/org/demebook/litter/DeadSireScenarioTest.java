package org.demebook.litter;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.litter.NewLitters.introduce;
import static org.demebook.litter.NewLitters.known;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.demebook.litter.NewLitters.workedOut;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Scenario A7: the link to a sire that was gone when his young were conceived is of low confidence. Gaps as the trade grades
 * them (common practice, no source), the 71 months are those of Levine, Schuett &amp; Booth (2021), PLoS ONE 16: e0252049
 * (abstract). Kinships of the worked pedigree, in exact fractions apart from this code.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DeadSireScenarioTest {
    @Test
    void a_litter_of_a_dead_sire_is_saved_with_a_warning_and_what_rests_on_it_is_marked() {
        var marrowfin = Marrowfin.withoutUnusedFounder();
        var colony = marrowfin.colony;
        var m013 = marrowfin.number(13);
        var m014 = marrowfin.number(14);
        var m022 = marrowfin.number(22);
        colony.put(INES, m014, "/death", Map.of("on", "2025-11-02")).statusCode(200);

        // birth less 123 days is 26 February 2026
        List<String> young = colony.post(WREN, "/litters", with(litter(m013, "2026-06-29", 4), "sire", known(m014)))
                .statusCode(201)
                .body(
                        "warnings.find { it.rule == 'stored-sperm' }.message",
                        allOf(
                                containsString("conceived about 2026-02-26, 116 days after the death of " + m014),
                                containsString("stored sperm is known up to 71 months"),
                                containsString("a DNA test is advised")))
                .body("warnings.find { it.rule == 'stored-sperm' }.level", equalTo("warning"))
                .body("litter.sire.doubtful", equalTo(true))
                .body("young.sire.animal", everyItem(equalTo(m014)))
                .body("young.sire.doubtful", everyItem(equalTo(true)))
                .extract()
                .path("young.number");
        var m101 = young.get(0);
        colony.get(WREN, "/animals/" + m101).body("sire.doubtful", equalTo(true));
        colony.get(WREN, "/animals/" + m014).body("sire.doubtful", nullValue());

        // through 014 half of 5/16, and nothing through 013
        colony.get(WREN, "/animals/" + m101 + "/kinship/" + m022)
                .body("kinship", equalTo(5 / 32f))
                .body("doubtfulSiresOf", contains(m101))
                .body("ifDoubtfulSiresUnknown", equalTo(0f));
        // siblings share their dam in any case
        colony.get(WREN, "/animals/" + m101 + "/kinship/" + young.get(1))
                .body("kinship", equalTo(0.25f))
                .body("doubtfulSiresOf", contains(m101, young.get(1)))
                .body("ifDoubtfulSiresUnknown", equalTo(0.125f));
        colony.get(WREN, "/animals/" + m013 + "/kinship/" + m022)
                .body("doubtfulSiresOf", nullValue())
                .body("ifDoubtfulSiresUnknown", nullValue());
        colony.get(WREN, "/gene-pool").body("doubtfulSiresOf", containsInAnyOrder(young.toArray()));

        // her inbreeding hangs on it two generations on: 014 would be her grandsire and her sire
        var inbred = colony.young(WREN, "female", null, m101, m014);
        colony.get(WREN, "/animals/" + inbred + "/ancestry?generations=1")
                .body("inbreedingCoefficient", equalTo(0.25f))
                .body("doubtfulSiresOf", contains(m101))
                .body("inbreedingIfDoubtfulSiresUnknown", equalTo(0f))
                .body("ancestors.find { it.number == '%s' }.sire.doubtful".formatted(m101), equalTo(true))
                .body("animal.sire.doubtful", nullValue());

        // a DNA test says that it is he: of this one, and of no other
        colony.put(WREN, m101, "/parentage", Map.of("dam", m013, "sire", known(m014)))
                .statusCode(200)
                .body("animal.sire.doubtful", nullValue());
        colony.get(WREN, "/animals/" + m101 + "/kinship/" + m022)
                .body("kinship", equalTo(5 / 32f))
                .body("doubtfulSiresOf", nullValue());
        colony.get(WREN, "/animals/" + young.get(1)).body("sire.doubtful", equalTo(true));
    }

    @Test
    void a_dead_sire_that_is_worked_out_from_her_introductions_is_doubtful_too() {
        var colony = Colony.found();
        var dam = colony.female(WREN);
        var male = colony.male(WREN);
        introduce(colony, dam, male, "2025-09-01", "2025-11-02");
        colony.put(WREN, male, "/death", Map.of("on", "2025-11-02")).statusCode(200);

        colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", workedOut()))
                .statusCode(201)
                .body("litter.sire", equalTo(Map.of("kind", "known", "animal", male, "doubtful", true)))
                .body("warnings.level", containsInAnyOrder("notice", "warning"));
    }

    @Test
    void a_living_sire_that_she_met_last_more_than_a_year_before_is_warned_of_and_doubtful() {
        var colony = Colony.found();
        var dam = colony.female(WREN);
        var male = colony.male(WREN);
        introduce(colony, dam, male, "2024-12-01", "2025-02-25"); // 366 days before 2026-02-26
        var yearAgo = colony.female(WREN);
        introduce(colony, yearAgo, male, "2024-12-01", "2025-02-26");

        colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", known(male)))
                .statusCode(201)
                .body("litter.sire.doubtful", equalTo(true))
                .body("young.sire.doubtful", hasItem(true))
                .body("warnings.rule", contains("stored-sperm"))
                .body("warnings[0].message", containsString("366 days before the conception"));
        colony.post(WREN, "/litters", with(litter(yearAgo, "2026-06-29", 4), "sire", known(male)))
                .statusCode(201)
                .body("litter.sire.doubtful", nullValue())
                .body("warnings", nullValue());
    }

    @Test
    void what_a_keeper_says_of_the_doubt_goes_before_what_the_days_say() {
        var colony = Colony.found();
        var dam = colony.female(WREN);
        var living = colony.male(WREN);
        var dead = colony.male(WREN);
        colony.put(WREN, dead, "/death", Map.of("on", "2025-11-02")).statusCode(200);
        var tested = Map.of("kind", "known", "animal", dead, "doubtful", false);

        colony.post(WREN, "/litters", with(litter(dam, "2026-06-29", 4), "sire", tested))
                .statusCode(201)
                .body("litter.sire.doubtful", nullValue())
                .body("warnings.rule", contains("stored-sperm"));
        var assumed = Colony.animal("female", "2024-06-01");
        assumed.put("dam", dam);
        assumed.put("sire", Map.of("kind", "known", "animal", living, "doubtful", true));
        var number = colony.register(WREN, assumed);
        colony.get(WREN, "/animals/" + number).body("sire.doubtful", equalTo(true));
    }

    @Test
    void only_a_sire_that_is_named_is_doubtful() {
        var colony = Colony.found();
        var animal = Colony.animal("female", "2024-06-01");
        animal.put("sire", Map.of("kind", "unknown", "doubtful", true));
        colony.post(WREN, "/animals", animal)
                .statusCode(422)
                .body("type", equalTo("/problems/contradictory-parentage"));
    }
}
