package org.demebook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AnimalResourceTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void a_registered_animal_gets_a_studbook_number_with_a_check_character() {
        var number = colony.female(WREN);

        var parsed = StudbookNumber.parse(number);
        assertThat(parsed.populationCode()).isEqualTo(colony.code);
        colony.get(WREN, "/animals/" + number)
                .statusCode(200)
                .body("sex", equalTo("female"))
                .body("alive", equalTo(true))
                .body("held.collection", notNullValue());
    }

    @Test
    void a_fellow_member_sees_identity_and_parentage_and_nothing_else() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var young = animal("male", "2024-06-29");
        young.putAll(Map.of(
                "dam",
                dam,
                "sire",
                Map.of("kind", "known", "animal", sire),
                "transponders",
                List.of("981000000000123"),
                "notes",
                "bites"));
        var number = colony.register(WREN, young);

        colony.get(INES, "/animals/" + number)
                .statusCode(200)
                .body("dam", equalTo(dam))
                .body("sire.animal", equalTo(sire))
                .body("held", nullValue())
                .body("$", not(hasKey("held")));
    }

    @Test
    void somebody_who_does_not_belong_to_the_population_is_told_that_there_is_none() {
        colony.get(OUTSIDER, "/animals").statusCode(404).body("type", equalTo("/problems/no-such-population"));
        as(OUTSIDER)
                .get("/api/v1/populations/NONE/animals")
                .then()
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-population"));
    }

    @Test
    void a_mistyped_number_is_told_from_one_that_does_not_exist() {
        var number = colony.female(WREN);
        var last = number.charAt(number.length() - 1);
        var mistyped = number.substring(0, number.length() - 1) + (last == '7' ? '8' : '7');

        colony.get(WREN, "/animals/" + mistyped).statusCode(422).body("type", equalTo("/problems/mistyped-number"));
        colony.get(WREN, "/animals/" + new StudbookNumber(colony.code, "H", 999_999))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-animal"));
    }

    @Test
    void an_animal_without_a_token_is_refused() {
        Colony.anonymous()
                .get(colony.path("/animals"))
                .then()
                .statusCode(401)
                .body("type", equalTo("/problems/not-signed-in"));
    }

    @Test
    void every_broken_rule_is_told_in_one_answer() {
        var male = colony.male(WREN);
        var female = colony.female(WREN);
        var young = animal("female", "2019-01-01");
        young.put("dam", male);
        young.put("sire", Map.of("kind", "known", "animal", female));

        colony.post(WREN, "/animals", young)
                .statusCode(422)
                .body("type", equalTo("/problems/dam-not-female"))
                .body("findings", hasSize(4))
                .body("detail", containsString(male))
                .body("detail", containsString("registered as male"))
                .body("detail", containsString("2019-01-01"));
    }

    @Test
    void a_dead_sire_is_a_warning_and_a_dead_dam_a_refusal() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        colony.put(WREN, sire, "/death", Map.of("on", "2025-11-02")).statusCode(200);
        var young = animal("female", "2026-06-29");
        young.put("dam", dam);
        young.put("sire", Map.of("kind", "known", "animal", sire));

        // scenario A7: conceived about 26 Feb 2026, 116 days after his death
        colony.post(WREN, "/animals", young)
                .statusCode(201)
                .body("warnings[0].message", containsString("2026-02-26, 116 days after the death"));

        colony.put(WREN, dam, "/death", Map.of("on", "2026-06-01"))
                .statusCode(422)
                .body("type", equalTo("/problems/dead-before-its-young"))
                .body("detail", containsString("2026-06-29"))
                .body("detail", containsString("2026-06-01"));
    }

    @Test
    void an_animal_is_never_its_own_ancestor() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var undated = animal("female", null);
        undated.put("dam", dam);
        undated.put("sire", Map.of("kind", "known", "animal", sire));
        var daughter = colony.register(WREN, undated);

        colony.put(WREN, dam, "/parentage", Map.of("dam", daughter))
                .statusCode(422)
                .body("type", equalTo("/problems/own-ancestor"))
                .body("detail", containsString(dam + " < " + daughter + " < " + dam));
    }

    @Test
    void a_sex_that_contradicts_its_young_is_refused_with_both_facts() {
        var dam = colony.female(WREN);
        var sire = colony.male(WREN);
        var young = colony.young(WREN, "unknown", "2024-06-29", dam, sire);

        colony.put(WREN, sire, "/sex", Map.of("sex", "female"))
                .statusCode(422)
                .body("type", equalTo("/problems/sex-contradicts-young"))
                .body("detail", containsString(young));
        colony.put(WREN, young, "/sex", Map.of("sex", "female")).statusCode(200).body("animal.sex", equalTo("female"));
    }

    @Test
    void a_change_needs_the_revision_that_was_read() {
        var number = colony.female(WREN);
        var old = colony.etag(WREN, number);
        var described = Map.of("origin", "wild-caught", "notes", "calm");

        as(WREN).body(described)
                .put(colony.path("/animals/" + number + "/description"))
                .then()
                .statusCode(428);
        colony.put(WREN, number, "/description", described).statusCode(200).body("animal.held.notes", equalTo("calm"));
        as(WREN).header("If-Match", old)
                .body(described)
                .put(colony.path("/animals/" + number + "/description"))
                .then()
                .statusCode(412)
                .body("type", equalTo("/problems/revision-outdated"));
    }

    @Test
    void only_the_holder_changes_an_animal() {
        var number = colony.female(WREN);
        colony.put(DOV, number, "/death", Map.of("on", "2026-01-01"))
                .statusCode(403)
                .body("type", equalTo("/problems/not-your-animal"));
    }

    @Test
    void one_idempotency_key_has_one_effect_and_one_answer() {
        var key = UUID.randomUUID().toString();
        var body = animal("female", "2020");
        var one = as(WREN, key).body(body).post(colony.path("/animals"));
        var two = as(WREN, key).body(body).post(colony.path("/animals"));
        assertThat(two.statusCode()).isEqualTo(201);
        assertThat(two.asByteArray()).isEqualTo(one.asByteArray());
        assertThat(two.header("Location")).isEqualTo(one.header("Location"));

        as(WREN, key)
                .body(animal("male", "2020"))
                .post(colony.path("/animals"))
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/idempotency-key-reused"));
    }

    @Test
    void what_cannot_be_read_is_told_with_its_place() {
        colony.post(WREN, "/animals", Map.of("sex", "female", "origin", "unknown", "colour", "red"))
                .statusCode(400)
                .body("type", equalTo("/problems/unknown-field"))
                .body("findings[0].field", equalTo("colour"));
        colony.post(WREN, "/animals", Map.of("sex", "female", "origin", "unknown", "born", "03/04/2026"))
                .statusCode(422)
                .body("type", equalTo("/problems/invalid-values"))
                .body("detail", containsString("2026-04-03"));
        as(WREN).body("{\"sex\":")
                .post(colony.path("/animals"))
                .then()
                .statusCode(400)
                .body("type", equalTo("/problems/unreadable-body"));
        colony.get(WREN, "/animals?limit=many").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        colony.get(WREN, "/animals?limit=0").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
    }

    @Test
    void pages_follow_each_other_until_all_animals_were_seen() {
        var own = Colony.found();
        for (int i = 0; i < 5; i++) {
            own.female(WREN);
        }
        var first = own.get(WREN, "/animals?limit=2").statusCode(200).body("items", hasSize(2));
        var second = as(WREN).get(link(first.extract().header("Link")))
                .then()
                .statusCode(200)
                .body("items", hasSize(2));
        as(WREN).get(link(second.extract().header("Link")))
                .then()
                .statusCode(200)
                .body("items", hasSize(1))
                .body("next", nullValue())
                .header("Link", nullValue());
    }

    private static String link(String header) {
        return header.substring(1, header.indexOf('>'));
    }
}
