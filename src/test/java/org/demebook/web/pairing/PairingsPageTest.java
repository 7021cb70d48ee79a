package org.demebook.web.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Marrowfin.OYELARAN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.stringContainsInOrder;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.consent.Granting;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What keepers see and do on the pages of pairing. Figures are those of the worked pedigree. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class PairingsPageTest {
    // scenarios D1 and D2
    @Test
    void partners_stand_in_order_with_both_figures_and_those_that_are_none_with_the_reason() {
        var own = Marrowfin.settled();
        see(WREN, own.colony, "/pairings?for=" + own.number(13))
                .statusCode(200)
                .body(stringContainsInOrder(
                        own.number(6), own.number(14), own.number(22), own.number(24), own.number(12), own.number(21)))
                .body(containsString("1/8"), containsString("too closely related"));
    }

    @Test
    void of_ones_own_animals_those_that_may_be_paired_are_to_be_chosen_and_all_are_on_the_map() {
        var own = Marrowfin.settled();
        see(WREN, own.colony, "/pairings")
                .statusCode(200)
                .body(containsString("/pairings?for=" + own.number(13)))
                .body(containsString("/pairings?for=" + own.number(23)))
                .body(not(containsString("/pairings?for=" + own.number(14))))
                // 013 is the sister of 012, whose daughter by 010 is 020; 023 is of 011 and 010: unrelated to 013
                // (worked pedigree)
                .body(containsString("<svg"));
    }

    @Test
    void an_animal_that_cannot_be_paired_says_why_in_place_of_partners() {
        var colony = Colony.found();
        var young = colony.register(
                WREN,
                Colony.animal(
                        "female", LocalDate.now(ZoneOffset.UTC).minusMonths(6).toString()));
        see(WREN, colony, "/pairings?for=" + young)
                .statusCode(200)
                .body(containsString("too young to breed before"), containsString("name=\"pairOn\""));
    }

    @Test
    void what_was_typed_wrongly_stands_there_still_with_the_reason_at_its_field() {
        var own = Marrowfin.settled();
        see(WREN, own.colony, "/pairings?for=" + own.number(13) + "&young=many&pairOn=soon")
                .statusCode(422)
                .body(containsString("value=\"many\""), containsString("id=\"e-young\""))
                .body(containsString("value=\"soon\""), containsString("id=\"e-pairOn\""));
    }

    @Test
    void what_nobody_shows_is_no_partner_and_what_others_have_is_nobody_elses() {
        var own = Marrowfin.settledPrivate();
        see(WREN, own.colony, "/pairings?for=" + own.number(13))
                .statusCode(200)
                .body(not(containsString(own.number(6))), not(containsString(own.number(14))));
        see(WREN, own.colony, "/pairings?for=" + own.number(14)).body(not(containsString("figure\"")));
    }

    @Test
    void who_asks_twice_has_asked_once_and_both_learn_of_each_other_when_the_other_agrees() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        List.of(WREN, INES, DOV, OYELARAN).forEach(grants::computeOnly);
        var colony = own.colony;
        see(WREN, colony, "/animals/" + own.number(13) + "/unnamed-partners").statusCode(200);
        var partners = colony.get(WREN, "/animals/" + own.number(13) + "/unnamed-partners")
                .extract()
                .<List<String>>path("partners");
        assertThat(partners).hasSize(4);

        var once = UUID.randomUUID().toString();
        var first = ask(colony, once, own.number(13), partners.get(0))
                .statusCode(303)
                .extract()
                .header("Location");
        ask(colony, once, own.number(13), partners.get(0)).statusCode(303).header("Location", equalTo(first));
        colony.get(WREN, "/approaches").body("items", hasSize(1));
        var id = first.substring(first.lastIndexOf('/') + 1);
        see(WREN, colony, "/approaches/" + id).statusCode(200).body(containsString("She has bred twice."));

        var asked = List.of(INES, DOV, OYELARAN).stream()
                .filter(keeper ->
                        see(keeper, colony, "/approaches/" + id).extract().statusCode() == 200)
                .toList();
        assertThat(asked).hasSize(1);
        see(asked.get(0), colony, "/approaches/" + id)
                .body(containsString("/agreement?once="))
                .body(not(containsString(own.number(13))), not(containsString("rack")));
        send(asked.get(0), colony, "/approaches/" + id + "/agreement?once=" + UUID.randomUUID())
                .statusCode(303);
        see(asked.get(0), colony, "/approaches/" + id).body(containsString(own.number(13)), containsString(WREN));
        see(WREN, colony, "/approaches/" + id).body(containsString(asked.get(0)));
    }

    @Test
    void a_refused_question_keeps_its_words() {
        var own = Marrowfin.settledPrivate();
        var grants = new Granting(own.colony.code);
        List.of(WREN, INES, DOV, OYELARAN).forEach(grants::computeOnly);
        Browsing.as(WREN)
                .formParam("animal", own.number(13))
                .formParam("partner", "")
                .formParam("words", "She has bred twice.")
                .post(own.colony.path("/approaches?once=1").replace("/api/v1", ""))
                .then()
                .statusCode(422)
                .body(containsString("She has bred twice."), containsString("id=\"e-partner\""));
    }

    @Test
    void terms_are_stated_all_at_once_kept_when_refused_and_withdrawn() {
        var colony = Colony.found();
        var collection = colony.get(WREN, "/collections").extract().<String>path("[0].id");
        var address = "/collections/" + collection + "/pairing-terms";
        state(colony, address, "many")
                .statusCode(422)
                .body(containsString("value=\"many\""), containsString("e-littersAtMost"));
        state(colony, address, "2").statusCode(303).header("Location", endsWith("/pairing-terms"));
        colony.get(WREN, address)
                .body("stated", equalTo(true))
                .body("littersAtMost", equalTo(2))
                .body("exchangeWith", nullValue());
        see(WREN, colony, "/pairing-terms").statusCode(200).body(containsString("Room for two."));
        see(INES, colony, address).statusCode(422).body(not(containsString("Room for two.")));
        send(WREN, colony, address + "/withdrawal").statusCode(303);
        colony.get(WREN, address).body("stated", equalTo(false));
    }

    // 1/4: full siblings, 3/8: their young's kinship with one of them; Lynch & Walsh (1998), chapter 7, from memory
    @ParameterizedTest
    @CsvSource({"0.25,1/4", "0.125,1/8", "0.375,3/8", "0.15625,5/32", "0,", "1,", "0.3333,"})
    void kinships_are_written_as_breeders_know_them(double kinship, String fraction) {
        assertThat(Fractions.of(kinship)).isEqualTo(fraction);
    }

    private static ValidatableResponse ask(Colony colony, String once, String animal, String partner) {
        return Browsing.as(WREN)
                .formParam("animal", animal)
                .formParam("partner", partner)
                .formParam("words", "She has bred twice.")
                .post("/populations/" + colony.code + "/approaches?once=" + once)
                .then();
    }

    private static ValidatableResponse state(Colony colony, String address, String littersAtMost) {
        return Browsing.as(WREN)
                .formParam("littersAtMost", littersAtMost)
                .formParam("exchange", "any")
                .formParam("notes", "Room for two.")
                .post("/populations/" + colony.code + address)
                .then();
    }

    private static ValidatableResponse send(String keeper, Colony colony, String below) {
        return Browsing.as(keeper)
                .contentType("application/x-www-form-urlencoded")
                .post("/populations/" + colony.code + below)
                .then();
    }

    private static ValidatableResponse see(String keeper, Colony colony, String below) {
        return Browsing.as(keeper).get("/populations/" + colony.code + below).then();
    }
}
