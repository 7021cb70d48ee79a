package org.demebook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.notation.StudbookNumber;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What somebody sees of another's animal: what was granted, and of the rest nothing, not even that it is there. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SeenAnimalTest {
    private static final String CODE = "981000000004242";

    private Colony colony;
    private String dam;
    private String young;

    @BeforeEach
    void found() {
        colony = Colony.foundPrivate();
        dam = colony.female(WREN);
        var animal = Colony.animal("female", "2022-06-01");
        animal.put("dam", dam);
        animal.put("transponders", List.of(CODE));
        animal.put("notes", "shy");
        young = colony.register(WREN, animal);
    }

    @Test
    void an_animal_that_is_not_shown_is_answered_as_one_that_does_not_exist() {
        var absent = new StudbookNumber(colony.code, "H", 9).toString();
        assertThat(answer(young)).isEqualTo(answer(absent));
        colony.get(INES, "/animals").body("items", empty());
        colony.get(INES, "/animals/" + young + "/findings").statusCode(404);
        colony.get(INES, "/animals/" + young + "/locality").statusCode(404);
    }

    /** Status, headers and body, but for the number itself. */
    private String answer(String number) {
        var response = colony.get(INES, "/animals/" + number).statusCode(404).extract();
        return (response.headers() + response.asString()).replace(number, "N");
    }

    @Test
    void one_field_group_is_shown_without_another() {
        grant(INES, List.of("identity"));
        colony.get(INES, "/animals").body("items.number", contains(dam, young));
        colony.get(INES, "/animals/" + young)
                .body("dam", nullValue())
                .body("sire.kind", equalTo("unknown"))
                .body("held", nullValue())
                .body("revision", nullValue());

        grant(INES, List.of("parentage", "marks-and-photos"));
        colony.get(INES, "/animals/" + young)
                .body("dam", equalTo(dam))
                .body("held.identifiers.value", contains(CODE))
                .body("held.notes", nullValue())
                .body("held.collection", nullValue());
        colony.get(DOV, "/animals").body("items", empty());
    }

    @Test
    void what_is_not_shown_changes_no_etag() {
        grant(INES, List.of("identity"));
        var before = colony.etag(INES, young);
        colony.put(WREN, young, "/description", Map.of("born", "2022-06-01", "origin", "unknown", "notes", "bold"))
                .statusCode(200);
        assertThat(colony.etag(INES, young)).isEqualTo(before);
        colony.put(WREN, young, "/description", Map.of("born", "2022-06-02", "origin", "unknown"))
                .statusCode(200);
        assertThat(colony.etag(INES, young)).isNotEqualTo(before);
    }

    @Test
    void a_parent_that_is_not_shown_cannot_be_named() {
        var animal = Colony.animal("male", "2024-06-01");
        animal.put("dam", dam);
        Colony.as(INES)
                .body(animal)
                .post(colony.path("/animals"))
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/no-such-parent"));
    }

    @Test
    void a_transponder_is_taken_by_an_animal_without_a_number_and_one_next_to_it_is_not_told() {
        var animal = Colony.animal("female", "2022");
        animal.put("transponders", List.of(CODE));
        Colony.as(INES)
                .body(animal)
                .post(colony.path("/animals"))
                .then()
                .statusCode(409)
                .body("findings.message[0]", containsString("an animal that is not shown to you"))
                .body("findings.message[0]", not(containsString(young)));
        animal.put("transponders", List.of("981000000004243"));
        Colony.as(INES)
                .body(animal)
                .post(colony.path("/animals"))
                .then()
                .statusCode(201)
                .body("warnings", nullValue());
    }

    @Test
    void who_holds_the_same_snake_claims_that_it_is_the_same_animal_without_seeing_it() {
        var animal = Colony.animal("female", "2022");
        animal.put("transponders", List.of(CODE));
        animal.put("leave", List.of(Map.of("rule", "transponder-taken", "reason", "I bought it")));
        var again = colony.register(INES, animal);
        colony.post(INES, "/animals/" + again + "/same-animal-claims", Map.of("other", young))
                .statusCode(201)
                .body("state", equalTo("claimed"));
        colony.post(INES, "/animals/" + again + "/same-animal-claims", Map.of("other", dam))
                .statusCode(404);
    }

    @Test
    void the_keeper_reads_who_saw_what() {
        grant(INES, List.of("identity", "parentage"));
        colony.get(WREN, "/disclosures").body("items", empty());
        colony.get(INES, "/animals/" + young + "/ancestry").statusCode(200);
        colony.get(INES, "/animals/" + young).statusCode(200);
        colony.get(WREN, "/disclosures")
                .body("items.fieldGroup", hasItem("identity"))
                .body("items.fieldGroup", hasItem("parentage"))
                .body("items[0].seenBy.name", equalTo(INES))
                .body("items[0].times", notNullValue());
        colony.get(DOV, "/disclosures").body("items", empty());
    }

    @Test
    void who_gave_an_animal_away_may_report_it_although_they_do_not_see_it_any_more() {
        String transfer = colony.post(
                        WREN,
                        "/transfers",
                        Map.of("animal", young, "kind", "sale", "to", INES, "handedOverOn", "2025-08-29"))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + transfer + "/acceptance", Map.of()).statusCode(200);
        colony.get(WREN, "/animals/" + young).statusCode(404);
        colony.post(WREN, "/animals/" + young + "/disputes", Map.of("seenOn", "2025-09-05"))
                .statusCode(201);
        colony.post(DOV, "/animals/" + young + "/disputes", Map.of("seenOn", "2025-09-05"))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-animal"));
    }

    private void grant(String keeper, List<String> fieldGroups) {
        colony.post(
                        WREN,
                        "/grants",
                        Map.of(
                                "recipient",
                                Map.of("kind", "keeper", "name", keeper),
                                "fieldGroups",
                                fieldGroups,
                                "purposes",
                                List.of("pedigree-view"),
                                "actions",
                                List.of("read")))
                .statusCode(201);
    }
}
