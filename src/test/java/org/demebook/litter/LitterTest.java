package org.demebook.litter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.demebook.litter.NewLitters.either;
import static org.demebook.litter.NewLitters.known;
import static org.demebook.litter.NewLitters.litter;
import static org.demebook.litter.NewLitters.with;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Registering a litter. Numbers are those of the trade's own examples (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class LitterTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void every_live_born_becomes_an_animal_with_its_own_number_from_one_block() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        // 14 in all: 10 live, 1 live malformed, 1 stillborn, 2 unfertilised
        var litter = with(with(litter(dam, "2026-06-29", 11, 1, 2), "sire", known(sire)), "malformedLive", 1);

        var registered = register(litter)
                .statusCode(201)
                .body("litter.liveBorn", equalTo(11))
                .body("litter.stillborn", equalTo(1))
                .body("litter.unfertilised", equalTo(2))
                .body("litter.ovaFound", equalTo(14))
                .body("litter.malformedLive", equalTo(1))
                .body("litter.sire.animal", equalTo(sire))
                .body("young", hasSize(11))
                .body("young.dam", everyItem(equalTo(dam)))
                .body("young.sire.animal", everyItem(equalTo(sire)))
                .body("young.born", everyItem(equalTo("2026-06-29")))
                .body("young.origin", everyItem(equalTo("captive-bred")));
        List<String> numbers = registered.extract().path("young.number");
        var serials = numbers.stream()
                .map(number -> StudbookNumber.parse(number).serial())
                .toList();
        for (int i = 1; i < serials.size(); i++) {
            assertThat(serials.get(i)).isEqualTo(serials.get(0) + i);
        }
        List<Boolean> malformed = registered.extract().path("young.held.malformed");
        assertThat(malformed)
                .containsExactly(false, false, false, false, false, false, false, false, false, false, true);
        String id = registered.extract().path("litter.id");
        colony.get(INES, "/animals/" + numbers.get(0)).statusCode(200).body("litter", equalTo(id));
        colony.get(WREN, "/litters/" + id).statusCode(200).body("young", equalTo(numbers));
    }

    @Test
    void counts_that_do_not_add_up_are_refused_with_how_many_are_missing() {
        var dam = colony.female(WREN);
        var thirteen = litter(dam, "2026-06-29", 10, 1, 2);

        register(with(thirteen, "ovaFound", 14))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("detail", containsString("14 found, the classes add to 13"))
                .body("findings[0].field", equalTo("ovaFound"));
        register(with(thirteen, "ovaFound", 11)).statusCode(422).body("detail", containsString("2 too many. Which?"));
        register(with(thirteen, "malformedLive", 12)).statusCode(422).body("detail", containsString("2 too many"));
        register(with(thirteen, "malformedStillborn", 2)).statusCode(422).body("detail", containsString("1 too many"));
        assertThat(ask(
                        "select id::text from demebook.animal where dam_id = (select id from demebook.animal where number = ?)",
                        dam))
                .isEmpty();
    }

    @Test
    void young_told_one_by_one_keep_their_order_and_the_rest_is_unsexed() {
        var dam = colony.female(WREN);
        var told = List.of(
                Map.of("sex", "female", "ownReference", "L7-a", "marks", List.of("white tail tip")),
                Map.of("sex", "male", "malformed", true, "notes", "kinked tail"));
        var litter = with(with(litter(dam, "2026-06-29", 4), "young", told), "malformedLive", 2);

        register(litter)
                .statusCode(201)
                .body("young.sex", contains("female", "male", "unknown", "unknown"))
                .body("young.held.malformed", contains(false, true, false, true))
                .body("young[0].held.identifiers.value", contains("white tail tip", "L7-a"))
                .body("young[1].held.notes", equalTo("kinked tail"));
    }

    @Test
    void details_that_contradict_the_counts_are_refused() {
        var dam = colony.female(WREN);
        var both = List.of(Map.of("malformed", true), Map.of("malformed", true));

        register(with(with(litter(dam, "2026-06-29", 3), "young", both), "malformedLive", 1))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("detail", containsString("1 of the live-born are counted as malformed, but 2"));
        register(with(litter(dam, "2026-06-29", 1), "young", both))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("detail", containsString("2 young are told one by one, but 1 were live-born"));
    }

    @Test
    void a_litter_of_unfertilised_ova_alone_brings_no_animal() {
        var dam = colony.female(WREN);
        register(litter(dam, "2026-06-29", 0, 0, 9))
                .statusCode(201)
                .body("litter.unfertilised", equalTo(9))
                .body("young", hasSize(0))
                .body("litter.young", hasSize(0));
    }

    @Test
    void a_sire_that_died_before_is_saved_with_a_warning() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        colony.put(WREN, sire, "/death", Map.of("on", "2025-11-02")).statusCode(200);

        // birth less 123 days is 2026-02-26, which is 116 days after the death
        register(with(litter(dam, "2026-06-29", 4), "sire", known(sire)))
                .statusCode(201)
                .body("litter.sire.doubtful", equalTo(true))
                .body("warnings", hasSize(1))
                .body("warnings[0].level", equalTo("warning"))
                .body("warnings[0].message", containsString("2026-02-26, 116 days after the death"))
                .body("warnings[0].message", containsString("DNA"));
    }

    @Test
    void each_young_of_two_possible_sires_has_its_own_draw_and_a_test_fixes_one_alone() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var other = colony.male(WREN);
        List<String> young = register(with(litter(dam, "2026-06-29", 3), "sire", either(sire, other, false)))
                .statusCode(201)
                .body("young[0].sire.candidates.animal", contains(sire, other))
                .body("young[0].sire.candidates.probability", contains(0.75f, 0.25f))
                .extract()
                .path("young.number");

        colony.put(WREN, young.get(1), "/parentage", Map.of("dam", dam, "sire", known(other)))
                .statusCode(200);

        colony.get(WREN, "/animals/" + young.get(1)).body("sire.animal", equalTo(other));
        colony.get(WREN, "/animals/" + young.get(0)).body("sire.kind", equalTo("candidates"));
        colony.get(WREN, "/animals/" + young.get(2)).body("sire.kind", equalTo("candidates"));
        assertThat(draws(young)).containsOnlyNulls();
    }

    @Test
    void one_uncertain_sire_of_a_whole_litter_is_one_draw() {
        var dam = colony.female(WREN);
        var sire = either(colony.male(WREN), colony.male(WREN), true);
        var registered =
                register(with(litter(dam, "2026-06-29", 3), "sire", sire)).statusCode(201);

        String id = registered.extract().path("litter.id");
        assertThat(draws(registered.extract().path("young.number"))).containsExactly(id, id, id);
    }

    private static List<String> draws(List<String> numbers) {
        return ask("select sire_draw_id::text from demebook.animal where number = any (?) order by serial", (Object)
                numbers.toArray(String[]::new));
    }

    @Test
    void fatherless_young_have_no_sire_which_is_not_an_unknown_one() {
        var dam = colony.female(WREN);
        register(with(litter(dam, "2026-06-29", 3, 0, 9), "sire", Map.of("kind", "none")))
                .statusCode(201)
                .body("young.sire.kind", everyItem(equalTo("none")))
                .body("young.sire.fusion", everyItem(equalTo("terminal")));
        register(litter(colony.female(WREN), "2026-06-29", 1))
                .statusCode(201)
                .body("young[0].sire.kind", equalTo("unknown"));
    }

    @Test
    void young_of_a_dam_taken_gravid_are_not_called_captive_bred() {
        register(with(litter(colony.female(WREN), "2026-06-29", 1), "origin", "unknown"))
                .statusCode(201)
                .body("young[0].origin", equalTo("unknown"));
        register(with(litter(colony.female(WREN), "2026-06-29", 1), "origin", "wild-caught"))
                .statusCode(422)
                .body("type", equalTo("/problems/founder-with-parents"));
    }

    @Test
    void a_dam_too_young_is_refused_with_her_age() {
        var dam = colony.register(WREN, animal("female", "2026-03-11"));
        register(litter(dam, "2026-06-29", 1))
                .statusCode(422)
                .body("type", equalTo("/problems/dam-too-young"))
                .body("detail", containsString("110 days old"))
                .body("detail", containsString("at least 365"));
    }

    @Test
    void a_dam_that_died_before_the_birth_is_refused_with_both_days() {
        var dam = colony.female(WREN);
        colony.put(WREN, dam, "/death", Map.of("on", "2026-06-01")).statusCode(200);
        register(litter(dam, "2026-06-29", 1))
                .statusCode(422)
                .body("type", equalTo("/problems/dam-died-before-birth"))
                .body("detail", containsString("2026-06-01"))
                .body("detail", containsString("2026-06-29"));
        // she may die in the act
        register(litter(dam, "2026-06-01", 1)).statusCode(201);
    }

    @Test
    void the_rules_of_parentage_hold_for_litters() {
        var dam = colony.female(WREN);
        var male = colony.male(WREN);
        refused(litter(male, "2026-06-29", 1), "dam-not-female");
        refused(with(litter(dam, "2026-06-29", 1), "sire", known(colony.female(WREN))), "sire-not-male");
        refused(litter(dam, "2019-06-29", 1), "born-before-parent");
        refused(litter(dam, LocalDate.now().plusDays(3).toString(), 1), "date-in-future");
        var youth = colony.register(WREN, animal("male", "2026-01-01"));
        refused(with(litter(dam, "2026-06-29", 1), "sire", known(youth)), "sire-too-young");
        var nobody = new StudbookNumber(colony.code, "H", 999_999).toString();
        refused(with(litter(dam, "2026-06-29", 1), "sire", known(nobody)), "no-such-parent");
        refused(with(litter(dam, "2026-06-29", 1), "sire", known("no number")), "mistyped-number");
        refused(with(litter(dam, "2026-06-29", 1), "sire", Map.of("kind", "known")), "contradictory-parentage");
    }

    private static void refused(Map<String, Object> litter, String type) {
        register(litter).statusCode(422).body("type", equalTo("/problems/" + type));
    }

    @Test
    void everything_that_is_wrong_is_told_in_one_answer() {
        var litter = with(litter(colony.male(WREN), "2026-06-29", 4), "sire", known(colony.female(WREN)));
        register(with(litter, "ovaFound", 5))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-does-not-add-up"))
                .body("findings", hasSize(3))
                .body("detail", containsString("registered as male"))
                .body("detail", containsString("registered as female"));
    }

    @Test
    void two_litters_of_one_dam_are_never_closer_than_her_taxon_allows() {
        var dam = colony.female(WREN);
        String first =
                register(litter(dam, "2026-01-30", 2)).statusCode(201).extract().path("litter.id");

        // 149 days
        register(litter(dam, "2026-06-28", 2))
                .statusCode(422)
                .body("type", equalTo("/problems/litter-too-soon"))
                .body("detail", containsString(first))
                .body("detail", containsString("2026-01-30"))
                .body("detail", containsString("2026-06-28"))
                .body("detail", containsString("at most 149 days"));
        register(litter(dam, "2025-09-03", 2)).statusCode(422).body("type", equalTo("/problems/litter-too-soon"));
        register(litter(dam, "2026-06-29", 2)).statusCode(201); // 150 days
    }

    @Test
    void litters_that_may_be_far_enough_apart_are_not_refused() {
        var dam = colony.female(WREN);
        register(litter(dam, "2024", 2)).statusCode(201);
        register(litter(dam, "2025-01", 2)).statusCode(201); // may be 396 days on
        register(litter(dam, "2023-12-01/..", 2)).statusCode(201);
        register(litter(dam, "2025-02", 2)).statusCode(422).body("type", equalTo("/problems/litter-too-soon"));
    }

    @Test
    void only_who_holds_the_dam_registers_her_litter() {
        var dam = colony.female(WREN);
        colony.post(INES, "/litters", litter(dam, "2026-06-29", 1))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
        var nobody = new StudbookNumber(colony.code, "H", 999_999).toString();
        register(litter(nobody, "2026-06-29", 1)).statusCode(404).body("type", equalTo("/problems/no-such-animal"));
        colony.post("oyelaran", "/litters", litter(dam, "2026-06-29", 1))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void young_go_to_the_dams_collection_or_another_of_the_same_keeper() {
        var own = Colony.found();
        var dam = own.female(WREN);
        String rack = own.get(WREN, "/collections").extract().path("[0].id");
        String nursery = own.post(WREN, "/collections", Map.of("label", "nursery"))
                .statusCode(201)
                .extract()
                .path("id");

        own.post(WREN, "/litters", litter(dam, "2025-06-29", 1))
                .statusCode(201)
                .body("young[0].held.collection", equalTo(rack));
        own.post(WREN, "/litters", with(litter(dam, "2026-06-29", 1), "collection", nursery))
                .statusCode(201)
                .body("young[0].held.collection", equalTo(nursery));
        String foreign = own.get(INES, "/collections").extract().path("[0].id");
        own.post(WREN, "/litters", with(litter(dam, "2024-06-29", 1), "collection", foreign))
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-collection"));
    }

    @Test
    void a_reference_is_given_once() {
        var taken = animal("female", "2020");
        taken.put("ownReference", "K1");
        colony.register(WREN, taken);
        var twins = List.of(Map.of("ownReference", "K2"), Map.of("ownReference", "K2"));
        var again = List.of(Map.of("ownReference", "K3"), Map.of("ownReference", "K1"));

        register(with(litter(colony.female(WREN), "2026-06-29", 4), "young", twins))
                .statusCode(409)
                .body("type", equalTo("/problems/reference-taken"))
                .body("findings[0].field", equalTo("young[1].ownReference"));
        register(with(litter(colony.female(WREN), "2026-06-29", 4), "young", again))
                .statusCode(409)
                .body("findings[0].field", equalTo("young[1].ownReference"))
                .body("findings[0].value", equalTo("K1"));
    }

    @Test
    void a_litter_sent_again_is_one_litter() {
        var key = UUID.randomUUID().toString();
        var litter = litter(colony.female(WREN), "2026-06-29", 2);
        var one = as(WREN, key).body(litter).post(colony.path("/litters"));
        var two = as(WREN, key).body(litter).post(colony.path("/litters"));

        assertThat(one.statusCode()).isEqualTo(201);
        assertThat(two.asByteArray()).isEqualTo(one.asByteArray());
        assertThat(two.header("Location")).isEqualTo(one.header("Location"));
    }

    private static ValidatableResponse register(Map<String, Object> litter) {
        return colony.post(WREN, "/litters", litter);
    }
}
