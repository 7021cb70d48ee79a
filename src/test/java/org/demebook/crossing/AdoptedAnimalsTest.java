package org.demebook.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.crossing.AdoptedStory.number;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.federation.Gone;
import org.demebook.federation.Upland;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Whereabouts;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A node is gone for good, this one has adopted its animals, and a third one said so too: the protocol between them is the real one. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class AdoptedAnimalsTest {
    private Colony colony;
    private Upland gone;
    private Upland witness;

    @BeforeEach
    void found() {
        colony = Colony.found();
        gone = Upland.besides(colony);
        witness = Upland.besides(colony);
        gone.fetch();
    }

    // ── one that was never here ──────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_of_a_gone_node_waits_with_what_was_told_of_it_and_is_given_to_its_keeper() {
        var dam = gone.animal();
        var animal = gone.animal();
        gone.tell(dam, "female", "2018", readable(7), null);
        var detail = readable(8);
        detail.put("dam", number(colony, gone, 7));
        gone.tell(animal, "male", "2023", detail, dam);
        adopt();

        list(INES).statusCode(403);
        list(WREN)
                .statusCode(200)
                .body("number", hasItems(number(colony, gone, 7), number(colony, gone, 8)))
                .body("find { it.animal == '%s' }.sex".formatted(animal), equalTo("male"))
                .body("find { it.animal == '%s' }.born".formatted(animal), equalTo("2023"))
                .body("find { it.animal == '%s' }.from".formatted(animal), equalTo(gone.seat()))
                .body("find { it.animal == '%s' }.known".formatted(animal), equalTo(false))
                .body(
                        "find { it.animal == '%s' }.parents.number".formatted(animal),
                        equalTo(List.of(number(colony, gone, 7))));
        place(INES, animal, Map.of("to", INES)).statusCode(403);
        place(WREN, animal, Map.of("to", "nobody-of-that-name")).statusCode(422);
        place(WREN, animal, Map.of("to", INES)).statusCode(200).body("number", equalTo(number(colony, gone, 8)));

        list(WREN).body("animal", equalTo(List.of(dam.toString())));
        place(WREN, animal, Map.of("to", DOV)).statusCode(404);
        colony.get(INES, "/animals/" + number(colony, gone, 8))
                .statusCode(200)
                .body("sex", equalTo("male"))
                .body("born", equalTo("2023"))
                .body("held.collection", notNullValue());
        // its parents are told by the journal of the node that is gone, as of every animal that came from there
        colony.get(INES, "/animals/" + number(colony, gone, 8) + "/ancestry")
                .statusCode(200)
                .body("ancestors.number", hasItem(number(colony, gone, 7)));
    }

    @Test
    void an_adopted_animal_is_sold_here_and_handed_to_another_node_like_any_other() {
        var animal = gone.animal();
        gone.tell(animal, "female", "2023", readable(8), null);
        adopt();
        place(WREN, animal, Map.of("to", INES)).statusCode(200);
        var number = number(colony, gone, 8);
        String sale = colony.post(INES, "/transfers", Map.of("animal", number, "kind", "sale", "to", DOV))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(DOV, "/transfers/" + sale + "/acceptance", Map.of()).statusCode(200);
        String id = colony.post(
                        DOV,
                        "/crossings",
                        Map.of("animal", number, "kind", "gift", "node", witness.seat(), "to", "mara"))
                .statusCode(201)
                .extract()
                .path("id");
        witness.fetch();
        witness.participant.accept(UUID.fromString(id));
        witness.exchange();
        colony.get(DOV, "/crossings/" + id).body("state", equalTo("arrived"));
        assertThat(witness.whereabouts(animal)).isEqualTo(new Whereabouts.Held(witness.id(), false));
        list(WREN).body("$", empty());
    }

    @Test
    void where_no_number_was_told_it_is_typed_and_has_to_be_one_of_the_node_that_registered_the_animal() {
        var untold = gone.animal();
        var skeleton = gone.animal();
        gone.tell(
                skeleton,
                "female",
                "2021",
                JsonNodeFactory.instance.objectNode().put("everybody", 1),
                null);
        adopt();
        list(WREN).body("$", hasSize(2)).body("collect { it.keySet() }.flatten()", not(hasItem("number")));
        // what may only be computed with is told to nobody
        list(WREN).body("collect { it.keySet() }.flatten()", not(hasItem("sex")));

        place(WREN, untold, Map.of("to", DOV)).statusCode(422).body("findings.field", hasItem("number"));
        var own = colony.female(WREN);
        place(WREN, untold, Map.of("to", DOV, "number", own))
                .statusCode(422)
                .body("detail", allOf(containsString(own), containsString("node " + gone.seat())));
        place(WREN, untold, Map.of("to", DOV, "number", number(colony, gone, 5)))
                .statusCode(200);
        // a number stands for one animal
        place(WREN, skeleton, Map.of("to", INES, "number", number(colony, gone, 5)))
                .statusCode(409);
        place(WREN, skeleton, Map.of("to", INES, "number", number(colony, gone, 6)))
                .statusCode(200);
        colony.get(INES, "/animals/" + number(colony, gone, 6)).body("sex", equalTo("unknown"));
    }

    @Test
    void a_number_that_is_not_the_one_that_was_told_is_refused_with_both() {
        var animal = gone.animal();
        gone.tell(animal, "female", "2023", readable(8), null);
        adopt();
        place(WREN, animal, Map.of("to", DOV, "number", number(colony, gone, 9)))
                .statusCode(422)
                .body(
                        "detail",
                        allOf(containsString(number(colony, gone, 8)), containsString(number(colony, gone, 9))));
        place(WREN, animal, Map.of("to", DOV, "number", number(colony, gone, 8)))
                .statusCode(200);
    }

    // ── one that was here before ─────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_that_had_been_sold_there_comes_back_to_life_under_its_old_record() {
        var sold = colony.female(WREN);
        var id = released(sold);
        gone.exchange();
        colony.get(WREN, "/crossings/" + id).body("state", equalTo("arrived"));
        var row = ask("select id::text from demebook.animal where number = ?", sold);
        adopt();
        list(WREN).body("number", equalTo(List.of(sold))).body("known", equalTo(List.of(true)));

        place(WREN, gone.called(sold), Map.of("to", DOV)).statusCode(200);
        assertThat(ask("select id::text from demebook.animal where number = ?", sold))
                .isEqualTo(row);
        colony.get(DOV, "/animals/" + sold).statusCode(200).body("held.collection", notNullValue());
        list(WREN).body("$", empty());
        colony.post(DOV, "/transfers", Map.of("animal", sold, "kind", "sale", "to", INES))
                .statusCode(201);
    }

    @Test
    void an_animal_that_was_on_its_way_there_has_a_keeper_again_and_its_crossing_ends() {
        var sold = colony.female(WREN);
        var id = released(sold);
        gone.give();
        gone.settleHere();
        colony.get(WREN, "/crossings/" + id).body("state", equalTo("on-its-way"));
        adopt();
        place(WREN, gone.called(sold), Map.of("to", WREN)).statusCode(200);
        colony.get(WREN, "/crossings/" + id).body("state", equalTo("arrived")).body("nodeGone", equalTo(true));
        open(WREN, "/crossings/" + id).body(containsString("was gone before it took it"));
        colony.get(WREN, "/animals/" + sold).statusCode(200).body("held.collection", notNullValue());
        colony.post(WREN, "/crossings", Map.of("animal", sold, "kind", "sale", "node", witness.seat(), "to", "mara"))
                .statusCode(201);
    }

    // ── one that was elsewhere ───────────────────────────────────────────────────────────────────────────────────────

    @Test
    void nothing_is_adopted_that_the_gone_node_gave_away_before_as_far_as_anybody_knows() {
        var animal = gone.animal();
        gone.give();
        AdoptedStory.releaseTo(witness, gone, animal);
        witness.hear(gone);
        witness.giveUp(gone);
        var adoption = Map.of("gone", gone.id());
        as("administrator")
                .body(adoption)
                .post(colony.path("/federation/adoptions"))
                .then()
                .statusCode(409)
                .body("detail", containsString("of its journal, and here are"));

        gone.give(); // as another node passes it on
        as("administrator")
                .body(adoption)
                .post(colony.path("/federation/adoptions"))
                .then()
                .statusCode(200)
                .body("animals", empty());
        assertThat(witness.whereabouts(animal)).isInstanceOf(Whereabouts.InTransit.class);
        list(WREN).body("$", empty());
    }

    // ── the page ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void the_coordinator_finds_them_among_what_waits_and_gives_one_in_a_form_without_script() {
        var animal = gone.animal();
        gone.tell(animal, "male", "2023", readable(8), null);
        var untold = gone.animal();
        adopt();
        open(WREN, "/today").body(containsString("2 of a node that is gone"));
        open(INES, "/today").body(not(containsString("of a node that is gone")));
        open(INES, "/adopted-animals").statusCode(403);
        open(WREN, "/adopted-animals")
                .statusCode(200)
                .body(allOf(
                        containsString(number(colony, gone, 8)),
                        containsString("an animal whose number was not told"),
                        containsString("Invite the former keepers")));
        open(WREN, "/adopted-animals/" + untold)
                .statusCode(200)
                .body(allOf(containsString("name=\"number\""), containsString("It was never here")));
        send("/adopted-animals/" + untold + "/placement", Map.of("to", DOV, "number", ""))
                .statusCode(422)
                .body(containsString("type it as its keeper shows it"));
        open(WREN, "/adopted-animals/" + animal).statusCode(200).body(not(containsString("name=\"number\"")));
        send("/adopted-animals/" + animal + "/placement", Map.of("to", DOV)).statusCode(303);
        colony.get(DOV, "/animals/" + number(colony, gone, 8)).statusCode(200);
        open(WREN, "/adopted-animals/" + animal).statusCode(404);
        Browsing.as(WREN)
                .header("Accept-Language", "de")
                .get("/populations/" + colony.code + "/adopted-animals")
                .then()
                .statusCode(200)
                .body(containsString("Warten auf einen Halter"));
    }

    // ── short forms ──────────────────────────────────────────────────────────────────────────────────────────────────

    private void adopt() {
        gone.give();
        assertThat(Gone.adopt(colony, gone, witness)).isNotEmpty();
    }

    private ObjectNode readable(long serial) {
        var detail = JsonNodeFactory.instance.objectNode().put("everybody", 1);
        detail.putArray("granted")
                .add("pedigree-view identity read")
                .add("pedigree-view parentage read")
                .add("pairing-computation identity read")
                .add("pairing-computation parentage read");
        return detail.put("number", number(colony, gone, serial));
    }

    /** An animal of Wren's, on its way to the node that will be gone. */
    private String released(String number) {
        String id = colony.post(
                        WREN, "/crossings", Map.of("animal", number, "kind", "sale", "node", gone.seat(), "to", "mara"))
                .statusCode(201)
                .extract()
                .path("id");
        gone.fetch();
        gone.participant.accept(UUID.fromString(id));
        return id;
    }

    private ValidatableResponse list(String keeper) {
        return colony.get(keeper, "/adopted-animals");
    }

    private ValidatableResponse place(String keeper, AnimalId animal, Map<String, String> placement) {
        return colony.post(keeper, "/adopted-animals/" + animal + "/placement", placement);
    }

    private ValidatableResponse open(String keeper, String below) {
        return Browsing.as(keeper).get("/populations/" + colony.code + below).then();
    }

    private ValidatableResponse send(String below, Map<String, ?> form) {
        return Browsing.as(WREN)
                .formParams(form)
                .contentType("application/x-www-form-urlencoded")
                .post("/populations/" + colony.code + below + "?once=" + UUID.randomUUID())
                .then();
    }
}
