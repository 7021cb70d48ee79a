package org.demebook.registry;

import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Rules of the catalogue of data errors: common practice, no source, where none is named. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class FindingResourceTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    // ── leaving it, with reason ──────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_block_is_refused_with_its_rule_why_and_what_is_likelier_and_saved_when_it_is_left_with_a_reason() {
        var dam = colony.female(WREN);
        var early = youngOf(dam, "2021-01-01"); // 214 days old

        colony.post(WREN, "/animals", early)
                .statusCode(422)
                .body("type", equalTo("/problems/dam-too-young"))
                .body("findings", hasSize(1))
                .body("findings[0].level", equalTo("block"))
                .body("findings[0].rule", equalTo("dam-too-young"))
                .body("findings[0].message", allOf(containsString("2020-06-01"), containsString("2021-01-01")))
                .body("findings[0].why", containsString("mistyped year"));

        var young = colony.register(WREN, leaving(early, "dam-too-young", "her birth was seen by two keepers"));
        findings(young)
                .body("findings", empty())
                .body("left", hasSize(1))
                .body("left[0].rule", equalTo("dam-too-young"))
                .body("left[0].reason", equalTo("her birth was seen by two keepers"))
                .body("left[0].leftAt", notNullValue())
                .body("left[0].byYou", equalTo(true));
    }

    @Test
    void what_was_left_is_not_raised_again_for_the_same_animal_but_for_the_next_one() {
        var dam = colony.female(WREN);
        var young = colony.register(WREN, leaving(youngOf(dam, "2021-01-01"), "dam-too-young", "seen"));

        colony.put(WREN, young, "/description", Map.of("born", "2021-01-02", "origin", "captive-bred"))
                .statusCode(200);
        colony.post(WREN, "/animals", youngOf(dam, "2021-01-01")).statusCode(422);
        // of the dam's record too: it is the same finding
        findings(dam).body("findings", empty());
    }

    @Test
    void another_dam_is_another_finding() {
        var young = colony.register(WREN, leaving(youngOf(colony.female(WREN), "2021-01-01"), "dam-too-young", "seen"));

        colony.put(WREN, young, "/parentage", Map.of("dam", colony.female(WREN)))
                .statusCode(422)
                .body("findings[0].rule", equalTo("dam-too-young"));
    }

    @Test
    void a_reason_is_needed_and_a_rule_that_there_is() {
        var early = youngOf(colony.female(WREN), "2021-01-01");

        colony.post(WREN, "/animals", leaving(early, "dam-too-young", "no"))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"));
        colony.post(WREN, "/animals", leaving(early, "dam-to-young", "her birth was seen"))
                .statusCode(422)
                .body("findings.find { it.field == 'leave[0].rule' }.value", equalTo("dam-to-young"));
    }

    @Test
    void an_error_is_never_left() {
        var dam = colony.female(WREN);
        var undated = animal("female", null);
        undated.put("dam", dam);
        var daughter = colony.register(WREN, undated);

        colony.put(
                        WREN,
                        dam,
                        "/parentage",
                        Map.of(
                                "dam",
                                daughter,
                                "leave",
                                List.of(Map.of("rule", "own-ancestor", "reason", "an old card says so"))))
                .statusCode(422)
                .body("type", equalTo("/problems/own-ancestor"))
                .body("findings[0].level", equalTo("error"))
                .body("findings[0].message", containsString(dam + " < " + daughter + " < " + dam));
    }

    @Test
    void a_warning_can_be_left_as_well() {
        var dam = colony.female(WREN);
        var young = colony.register(WREN, youngOf(dam, "2021-12-01")); // 548 days
        findings(young).body("findings.rule", hasItem("dam-young"));
        findings(dam).body("findings.rule", hasItem("dam-young"));

        var described = leaving(Map.of("born", "2021-12-01", "origin", "unknown"), "dam-young", "she was large");
        colony.put(WREN, young, "/description", described).statusCode(200).body("$", not(hasItem("warnings")));
        findings(young).body("findings", empty()).body("left.rule", equalTo(List.of("dam-young")));
    }

    @Test
    void a_finding_is_left_without_another_correction_and_what_was_not_found_is_not() {
        var dam = colony.female(WREN);
        var young = colony.register(WREN, youngOf(dam, "2021-12-01")); // 548 days
        findings(young).body("findings.rule", hasItem("dam-young"));
        var leaf = Map.of("rule", "dam-young", "reason", "she was large for her age");

        colony.post(WREN, "/animals/" + young + "/findings/leaving", leaf)
                .statusCode(200)
                .body("findings.rule", not(hasItem("dam-young")))
                .body("left.reason", hasItem("she was large for her age"));
        colony.post(WREN, "/animals/" + young + "/findings/leaving", leaf)
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("dam-young"));
        colony.post(INES, "/animals/" + young + "/findings/leaving", leaf).statusCode(403);
    }

    @Test
    void findings_are_checked_anew_each_time_that_they_are_asked_for() {
        var dam = colony.female(WREN);
        var young = colony.register(WREN, youngOf(dam, "2021-12-01"));
        findings(young).body("findings.rule", equalTo(List.of("dam-young")));

        colony.put(WREN, dam, "/description", Map.of("born", "2019-06-01", "origin", "unknown"))
                .statusCode(200);
        findings(young).body("findings", empty());
    }

    @Test
    void findings_are_their_keepers_alone() {
        var number = colony.female(WREN);
        colony.get(INES, "/animals/" + number + "/findings")
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
    }

    // ── the sex ──────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_sex_that_changes_adds_a_determination_never_overwrites_and_is_warned_of() {
        var popped = animal("male", "2024-06-29");
        popped.put("sexDetermination", Map.of("method", "popping", "confidence", "presumed"));
        var number = colony.register(WREN, popped);

        colony.put(WREN, number, "/sex", determined("female", "dna", "confirmed"))
                .statusCode(200)
                .body("animal.sex", equalTo("female"))
                .body("animal.held.sexDeterminations.sex", equalTo(List.of("female", "male")))
                .body("animal.held.sexDeterminations.method", equalTo(List.of("dna", "popping")))
                .body("animal.held.sexDeterminations.confidence", equalTo(List.of("confirmed", "presumed")))
                .body("warnings[0].rule", equalTo("sex-changed"))
                .body("warnings[0].message", allOf(containsString("presumed by popping"), containsString("dna")))
                .body("warnings[0].likelier", startsWith("The earlier"));
        findings(number).body("findings.rule", equalTo(List.of("sex-changed")));

        colony.put(WREN, number, "/sex", determined("female", "breeding", "confirmed"))
                .statusCode(200)
                .body("animal.held.sexDeterminations", hasSize(3));
    }

    @Test
    void a_sex_is_confirmed_by_dna_or_breeding_alone() {
        var number = colony.register(WREN, animal("unknown", "2024-06-29"));
        colony.put(WREN, number, "/sex", determined("male", "probing", "confirmed"))
                .statusCode(422)
                .body("detail", containsString("dna or by breeding alone"));
        colony.put(WREN, number, "/sex", determined("male", "probing", "examined"))
                .statusCode(200)
                .body("animal.sex", equalTo("male"));
    }

    @Test
    void a_male_that_has_borne_young_is_blocked_unless_the_sex_is_presumed_or_it_is_left() {
        var dam = colony.female(WREN);
        var young = colony.register(WREN, youngOf(dam, "2024-06-29"));

        colony.put(WREN, dam, "/sex", determined("male", "probing", "examined"))
                .statusCode(422)
                .body("findings.rule", hasItem("dam-not-female"))
                .body("findings[0].message", containsString(young))
                .body("findings[0].likelier", startsWith("The sex"));
        colony.put(WREN, dam, "/sex", determined("male", "looks", "presumed"))
                .statusCode(200)
                .body("warnings.rule", hasItems("dam-not-female", "sex-changed"));
        findings(young).body("findings.rule", equalTo(List.of("dam-not-female")));
        colony.put(
                        WREN,
                        dam,
                        "/sex",
                        leaving(
                                determined("male", "dna", "confirmed"),
                                "dam-not-female",
                                "the parentage is looked into"))
                .statusCode(200);
        findings(young).body("findings", empty());
    }

    // ── deaths ───────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_second_day_of_death_is_blocked_and_takes_the_place_of_the_first_with_a_reason() {
        var number = colony.female(WREN);
        colony.put(WREN, number, "/death", Map.of("on", "2026-03")).statusCode(200);
        // the same, known better
        colony.put(WREN, number, "/death", Map.of("on", "2026-03-14")).statusCode(200);
        var other = Map.<String, Object>of("on", "2026-04-01");

        colony.put(WREN, number, "/death", other)
                .statusCode(409)
                .body("type", equalTo("/problems/died-already"))
                .body("findings[0].rule", equalTo("two-deaths"))
                .body("detail", allOf(containsString("2026-03-14"), containsString("2026-04-01")));
        colony.put(WREN, number, "/death", leaving(other, "two-deaths", "the vet's paper says so"))
                .statusCode(200)
                .body("animal.held.died", equalTo("2026-04-01"));
    }

    @Test
    void an_animal_that_was_handed_over_after_its_death_is_warned_of() {
        var number = colony.female(WREN);
        var sale = Map.of("animal", number, "kind", "sale", "to", INES, "handedOverOn", "2026-08-29");
        String id =
                colony.post(WREN, "/transfers", sale).statusCode(201).extract().path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);

        colony.put(INES, number, "/death", Map.of("on", "2026-08-01"))
                .statusCode(200)
                .body("warnings[0].rule", equalTo("event-after-death"))
                .body("warnings[0].message", allOf(containsString("2026-08-01"), containsString("2026-08-29")));
    }

    @Test
    void young_removed_from_a_dead_dam_are_a_notice() {
        var dam = colony.female(WREN);
        colony.put(WREN, dam, "/death", Map.of("on", "2026-06-28")).statusCode(200);
        var young = youngOf(dam, "2026-06-29");

        colony.post(WREN, "/animals", young)
                .statusCode(422)
                .body("findings[0].rule", equalTo("dam-died-before-birth"))
                .body("findings[0].message", containsString("removedFromDeadDam"));
        young.put("removedFromDeadDam", true);
        colony.post(WREN, "/animals", young).statusCode(201).body("warnings[0].level", equalTo("notice"));
    }

    // ── marks ────────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_transponder_on_two_living_animals_is_blocked_and_free_again_when_its_bearer_is_dead() {
        var first = chipped("981000000123456");
        colony.register(WREN, first);
        var number = colony.register(WREN, leaving(first, "transponder-taken", "two readers agree; maker told"));

        findings(number).body("findings", empty()).body("left.rule", equalTo(List.of("transponder-taken")));
        var dead = chipped("981000000123456");
        dead.put("died", "2026-01-01");
        colony.register(WREN, dead);
    }

    @Test
    void a_transponder_one_digit_or_two_swapped_neighbours_away_from_a_known_one_is_warned_of() {
        var known = colony.register(WREN, chipped("981000000777123"));

        for (var slip : List.of("981000000777124", "981000000771723")) {
            colony.post(WREN, "/animals", chipped(slip))
                    .statusCode(201)
                    .body("warnings[0].rule", equalTo("transponder-neighbour"))
                    .body("warnings[0].message", allOf(containsString(known), containsString("981000000777123")));
        }
        colony.post(WREN, "/animals", chipped("981000000777135"))
                .statusCode(201)
                .body("warnings", nullValue());
    }

    @Test
    void the_code_of_an_older_tag_is_kept_as_it_was_written_beside_the_form_in_which_it_is_compared() {
        var number = colony.register(WREN, chipped("0a1b-2c3d 4f"));
        colony.get(WREN, "/animals/" + number)
                .body("held.identifiers[0].value", equalTo("0A1B2C3D4F"))
                .body("held.identifiers[0].scheme", equalTo("older"))
                .body("held.identifiers[0].written", equalTo("0a1b-2c3d 4f"));
        colony.post(WREN, "/animals", chipped("0A1B2C3D4F"))
                .statusCode(409)
                .body("findings[0].rule", equalTo("transponder-taken"));
    }

    @Test
    void an_animal_of_the_same_dam_day_and_mark_as_another_may_be_the_same() {
        var young = youngOf(colony.female(WREN), "2024-06-29");
        young.put("marks", List.of("22 saddles, third broken"));
        var first = colony.register(WREN, young);

        colony.post(WREN, "/animals", young)
                .statusCode(201)
                .body("warnings[0].rule", equalTo("looks-like-another"))
                .body("warnings[0].message", containsString(first));
    }

    // ─────────────────────────────────────────────────────────────────────────────────────────────────────────────────

    private static ValidatableResponse findings(String number) {
        return colony.get(WREN, "/animals/" + number + "/findings").statusCode(200);
    }

    private static Map<String, Object> youngOf(String dam, String born) {
        var young = animal("unknown", born);
        young.put("dam", dam);
        return young;
    }

    private static Map<String, Object> chipped(String transponder) {
        var chipped = animal("unknown", "2024-06-29");
        chipped.put("transponders", List.of(transponder));
        return chipped;
    }

    private static Map<String, Object> determined(String sex, String method, String confidence) {
        return Map.of("sex", sex, "sexDetermination", Map.of("method", method, "confidence", confidence));
    }

    private static Map<String, Object> leaving(Map<String, Object> body, String rule, String reason) {
        var leaving = new HashMap<>(body);
        leaving.put("leave", List.of(Map.of("rule", rule, "reason", reason)));
        return leaving;
    }
}
