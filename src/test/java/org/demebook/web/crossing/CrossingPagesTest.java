package org.demebook.web.crossing;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.crossing.Handed;
import org.demebook.federation.Upland;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** The pages of animals between two nodes as a browser without script has them. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CrossingPagesTest {
    private static final String ADMINISTRATOR = "administrator";

    private final Colony colony = Colony.found();

    private ValidatableResponse open(String keeper, String below) {
        return Browsing.as(keeper).get("/populations/" + colony.code + below).then();
    }

    private ValidatableResponse send(String keeper, String below, Map<String, ?> form) {
        return Browsing.as(keeper)
                .formParams(form)
                .contentType("application/x-www-form-urlencoded")
                .post("/populations/" + colony.code + below + "?once=" + UUID.randomUUID())
                .then();
    }

    @Test
    void the_giver_is_told_in_words_where_it_stands_at_each_moment() {
        var upland = Upland.besides(colony);
        var animal = colony.female(WREN);
        open(WREN, "/animals/" + animal).body(containsString("To a keeper on another node"));
        open(WREN, "/crossings/new?animal=" + animal)
                .statusCode(200)
                .body(allOf(containsString("an offer to nobody runs out"), containsString("<option value=\"U\"")));
        var form = new HashMap<>(Map.of("animal", animal, "kind", "sale", "node", "U", "to", "mara"));
        form.put("withTransponders", "true");
        var location = send(WREN, "/crossings", form).statusCode(303).extract().header("Location");
        var page = location.substring(location.indexOf("/crossings/"));
        var id = UUID.fromString(page.substring("/crossings/".length()));

        open(WREN, page).statusCode(200).body(containsString("it has not fetched the offer yet"));
        open(WREN, "/animals/" + animal).body(containsString(page));
        upland.fetch();
        upland.give();
        open(WREN, page).body(allOf(containsString("the node has the offer"), containsString("not been heard of yet")));
        upland.participant.accept(id);
        upland.exchange();
        open(WREN, page).body(containsString("Arrived at mara on node U"));
        open(WREN, "/crossings").statusCode(200).body(containsString(animal));
    }

    @Test
    void a_name_that_is_missing_and_a_loan_are_refused_in_the_form() {
        Upland.besides(colony);
        var animal = colony.female(WREN);
        send(WREN, "/crossings", Map.of("animal", animal, "kind", "sale", "node", "U", "to", ""))
                .statusCode(422)
                .body(containsString(animal));
        send(WREN, "/crossings", Map.of("animal", animal, "kind", "breeding-loan", "node", "U", "to", "mara"))
                .statusCode(422)
                .body(containsString("A loan stays on one node"));
    }

    @Test
    void the_receiver_finds_the_offer_among_what_waits_and_answers() {
        var upland = Upland.besides(colony);
        var animal = upland.animal();
        var id = upland.offer(animal, Handed.json(INES, colony.code, "U", 7, animal));
        upland.give();
        open(INES, "/today").statusCode(200).body(containsString("/crossings/" + id));
        open(DOV, "/today").body(not(containsString("/crossings/" + id)));
        open(INES, "/crossings/" + id)
                .statusCode(200)
                .body(allOf(
                        containsString("mara on node U offers it to you"),
                        containsString("split saddle"),
                        containsString("eats well"),
                        containsString("2019")));
        open(DOV, "/crossings/" + id).statusCode(404);

        send(INES, "/crossings/" + id + "/acceptance", Map.of()).statusCode(303);
        open(INES, "/crossings/" + id).body(containsString("has heard of that and released it"));
        upland.exchange();
        open(INES, "/crossings/" + id).body(containsString("it is in your collection"));
        Browsing.as(INES)
                .header("Accept-Language", "de")
                .get("/populations/" + colony.code + "/crossings")
                .then()
                .statusCode(200);
    }

    @Test
    void that_an_animal_is_one_of_another_node_is_claimed_confirmed_and_taken_back_by_forms() {
        var claims = "/federation/same-animal-claims";
        open(WREN, claims).body(containsString("This population is shared with no other node"));
        var upland = Upland.besides(colony);
        var animal = colony.female(WREN);
        open(WREN, "/crossings").body(containsString(claims));
        open(WREN, "/animals/" + animal + "/same-animal-claims").body(containsString(claims + "?animal=" + animal));
        send(WREN, claims, Map.of("animal", animal, "other", ""))
                .statusCode(422)
                .body(allOf(containsString("value=\"" + animal), containsString("e-other")));
        var there = upland.entered();
        send(WREN, claims, Map.of("animal", animal, "other", there.toString()))
                .statusCode(303)
                .header("Location", containsString(claims));
        open(WREN, claims)
                .body(allOf(
                        containsString("its keeper there has not confirmed it"),
                        containsString(there.toString()),
                        containsString("Take it back: two animals")));
        open(WREN, claims + "?animal=" + animal)
                .body(containsString(animal + " is called " + upland.called(animal) + " between nodes"));
        open(DOV, claims).statusCode(200).body(not(containsString(there.toString())));

        var theirs = upland.participant.claimSame(upland.animal(), upland.called(animal));
        upland.give();
        open(WREN, claims).body(containsString("A keeper on node U claims it"));
        send(WREN, claims + "/" + theirs + "/confirmation", Map.of()).statusCode(303);
        open(WREN, claims).body(containsString("agree: it is one animal"));
        send(WREN, claims + "/" + theirs + "/reversal", Map.of()).statusCode(303);
        open(WREN, claims).body(containsString("Taken back here or on node U"));
        send(WREN, claims + "/" + theirs + "/confirmation", Map.of())
                .statusCode(422)
                .body(containsString("make it anew"));
        Browsing.as(WREN)
                .header("Accept-Language", "de")
                .get("/populations/" + colony.code + claims)
                .then()
                .statusCode(200)
                .body(containsString("Dasselbe Tier auf zwei Knoten"));
    }

    @Test
    void an_administrator_reads_this_node_s_fingerprint_and_how_it_stands_with_the_others() {
        Upland.besides(colony);
        Browsing.as(ADMINISTRATOR)
                .get("/peers")
                .then()
                .statusCode(200)
                .body(allOf(containsString("Fingerprint, to be read aloud"), containsString(colony.code)));
        Browsing.as(ADMINISTRATOR)
                .get("/peers/populations/" + colony.code)
                .then()
                .statusCode(200)
                .body(allOf(containsString("This node may write"), containsString("cosigned by")));
        Browsing.as(WREN).get("/peers").then().statusCode(403);
        Browsing.as(WREN).get("/peers/populations/" + colony.code).then().statusCode(403);
        Browsing.as(ADMINISTRATOR)
                .formParams(Map.of("address", "http://nowhere", "fingerprint", "short", "name", ""))
                .contentType("application/x-www-form-urlencoded")
                .post("/peers?once=" + UUID.randomUUID())
                .then()
                .statusCode(422)
                .body(containsString("http://nowhere"));
    }
}
