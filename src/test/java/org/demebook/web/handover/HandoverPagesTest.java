package org.demebook.web.handover;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.demebook.Colony;
import org.demebook.photo.CameraPhoto;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.Test;

/** The pages of hand-over as a browser without script has them. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class HandoverPagesTest {
    private static final LocalDate TODAY = LocalDate.now(Clock.systemUTC());
    private static final Pattern CODE = Pattern.compile("[0-9A-Z]{4}(-[0-9A-Z]{4}){3}");

    private final Colony colony = Colony.found();

    private String address(String below) {
        return "/populations/" + colony.code + below;
    }

    private ValidatableResponse open(String keeper, String below) {
        return Browsing.as(keeper).get(address(below)).then();
    }

    private ValidatableResponse send(RequestSpecification browser, String address, Map<String, ?> form, String once) {
        return browser.formParams(form)
                .contentType("application/x-www-form-urlencoded")
                .post(address + "?once=" + once)
                .then();
    }

    private ValidatableResponse send(String keeper, String below, Map<String, ?> form) {
        return send(Browsing.as(keeper), address(below), form, UUID.randomUUID().toString());
    }

    /** A sale to a member; the address of its page, below the population's. */
    private String offered(String from, String animal, String to) {
        var location = send(from, "/transfers", Map.of("animal", animal, "kind", "sale", "to", to))
                .statusCode(303)
                .extract()
                .header("Location");
        return location.substring(location.indexOf("/transfers/"));
    }

    private ValidatableResponse handOut(String animal) {
        return send(WREN, "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", "true"));
    }

    private static String codeIn(ValidatableResponse page) {
        var code = CODE.matcher(page.extract().asString());
        assertThat(code.find()).isTrue();
        return code.group();
    }

    // ── from one member to another ───────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_offer_waits_on_the_receivers_page_of_today_and_is_accepted_there_in_one_tap() {
        var animal = colony.female(WREN);
        var transfer = offered(WREN, animal, INES);

        open(WREN, transfer).statusCode(200).body(containsString("Offered to ines"));
        open(INES, "/today")
                .statusCode(200)
                .body(containsString(animal), containsString(address(transfer + "/acceptance")));
        send(INES, transfer + "/acceptance", Map.of()).statusCode(303).header("Location", endsWith(transfer));

        open(INES, transfer).body(containsString("it is in your collection"), containsString("Salmonella"));
        open(WREN, transfer).body(containsString("ines accepted it"));
        open(INES, "/today").body(not(containsString(address(transfer))));
        colony.get(INES, transfer).body("state", equalTo("accepted"));
    }

    @Test
    void refused_or_taken_back_an_offer_says_why_to_both() {
        var refused = offered(WREN, colony.female(WREN), INES);
        send(INES, refused + "/refusal", Map.of("reason", "no room before May")).statusCode(303);
        var withdrawn = offered(WREN, colony.female(WREN), INES);
        send(WREN, withdrawn + "/withdrawal", Map.of("reason", "it stopped eating"))
                .statusCode(303);

        for (var side : new String[] {WREN, INES}) {
            open(side, refused).body(containsString("no room before May"));
            open(side, withdrawn).body(containsString("it stopped eating"));
        }
    }

    @Test
    void an_offer_that_is_sent_twice_is_one() {
        var form = Map.of("animal", colony.female(WREN), "kind", "gift", "to", INES);
        var once = UUID.randomUUID().toString();
        var first = send(Browsing.as(WREN), address("/transfers"), form, once).statusCode(303);
        var again = send(Browsing.as(WREN), address("/transfers"), form, once).statusCode(303);

        assertThat(again.extract().header("Location")).isEqualTo(first.extract().header("Location"));
        colony.get(WREN, "/transfers").body("items", hasSize(1));
    }

    @Test
    void a_form_without_a_receiver_says_so_at_the_field_and_keeps_what_was_typed() {
        var form = Map.of("animal", colony.female(WREN), "kind", "exchange", "note", "eats on Sundays");

        send(WREN, "/transfers", form)
                .statusCode(422)
                .body(
                        containsString("id=\"e-to\""),
                        containsString("eats on Sundays"),
                        containsString("<option value=\"exchange\" selected>"));
    }

    @Test
    void a_gravid_female_goes_only_when_the_form_is_told_why() {
        var female = colony.female(WREN);
        colony.post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of(
                                "kind",
                                "ovulation",
                                "happenedOn",
                                TODAY.minusDays(20).toString()))
                .statusCode(201);
        var form = Map.of("animal", female, "kind", "sale", "to", INES);

        send(WREN, "/transfers", form)
                .statusCode(422)
                .body(
                        containsString("not to transport pregnant animals"),
                        containsString("name=\"leave[0].rule\" value=\"gravid-transfer\""));
        var confirmed = new HashMap<String, Object>(form);
        confirmed.put("leave[0].rule", "gravid-transfer");
        send(WREN, "/transfers", confirmed).statusCode(422).body(containsString("not to transport pregnant animals"));
        confirmed.put("leave[0].reason", "the house is sold, ten minutes by car");
        send(WREN, "/transfers", confirmed).statusCode(303);
    }

    @Test
    void who_is_on_neither_side_finds_nothing() {
        var transfer = offered(WREN, colony.female(WREN), INES);

        open(DOV, transfer).statusCode(404);
        open(DOV, "/transfers").statusCode(200).body(not(containsString(address(transfer))));
        send(DOV, transfer + "/acceptance", Map.of()).statusCode(404);
        Browsing.anonymous().get(address(transfer)).then().statusCode(303).header("Location", endsWith("/sign-in"));
    }

    @Test
    void young_that_are_ready_stand_first_then_those_that_lack_something_then_grown_animals() {
        var grown = colony.male(WREN);
        var young =
                colony.register(WREN, Colony.animal("male", TODAY.minusDays(70).toString()));
        var ready = colony.register(
                WREN, Colony.animal("female", TODAY.minusDays(80).toString()));
        reared(ready);

        var page = open(WREN, "/transfers/new").statusCode(200).extract().asString();

        assertThat(page.indexOf(ready)).isPositive().isLessThan(page.indexOf(young));
        assertThat(page.indexOf(young)).isPositive().isLessThan(page.indexOf(grown));
        assertThat(page.indexOf("Ready to leave")).isPositive().isLessThan(page.indexOf(ready));
    }

    private void reared(String animal) {
        record(animal, Map.of("kind", "measures", "on", day(79), "mass", Map.of("value", "20", "unit", "g")));
        record(animal, Map.of("kind", "shed", "on", day(70), "complete", true));
        for (int days : new int[] {30, 24, 18, 12, 5}) {
            record(animal, Map.of("kind", "meal", "on", day(days), "outcome", "taken"));
        }
        record(animal, Map.of("kind", "measures", "on", day(2), "mass", Map.of("value", "45", "unit", "g")));
        Colony.as(WREN)
                .contentType("image/jpeg")
                .body(CameraPhoto.plainJpeg(40, 30))
                .post(colony.path("/animals/" + animal + "/photos"))
                .then()
                .statusCode(201);
        colony.get(WREN, "/animals/" + animal + "/readiness").body("ready", equalTo(true));
    }

    private static String day(int daysAgo) {
        return TODAY.minusDays(daysAgo).toString();
    }

    private void record(String animal, Map<String, Object> record) {
        colony.post(WREN, "/animals/" + animal + "/care-records", record).statusCode(201);
    }

    // ── to somebody without an account ───────────────────────────────────────────────────────────────────────────────

    @Test
    void a_claim_code_is_shown_once_and_no_browser_keeps_it() {
        var form = Map.of("animal", colony.female(WREN), "kind", "sale", "withClaimCode", "true");
        var once = UUID.randomUUID().toString();
        var shown = send(Browsing.as(WREN), address("/transfers"), form, once)
                .statusCode(200)
                .header("Cache-Control", equalTo("no-store"));
        var code = codeIn(shown);

        var transfer = send(Browsing.as(WREN), address("/transfers"), form, once)
                .statusCode(303)
                .extract()
                .header("Location");
        var below = transfer.substring(transfer.indexOf("/transfers/"));
        open(WREN, below).statusCode(200).body(not(containsString(code)));
        var fresh = codeIn(send(WREN, below + "/claim-code", Map.of()).statusCode(200));
        assertThat(fresh).isNotEqualTo(code);
    }

    @Test
    void a_buyer_opens_an_account_with_the_code_and_is_signed_in_with_the_animal() {
        var animal = colony.female(WREN);
        var code = codeIn(handOut(animal).statusCode(200));
        var name = "buyer-" + colony.code.toLowerCase(Locale.ROOT);
        Browsing.anonymous().get("/claim?code=" + code).then().statusCode(200).body(containsString(code));

        // a quick thumb sends it twice
        var form = Map.of("code", code, "name", name, "fullName", "Tamsin Reed", "password", "a quiet tide at noon");
        var once = UUID.randomUUID().toString();
        send(Browsing.anonymous(), "/claim", form, once).statusCode(303);
        var claimed = send(Browsing.anonymous(), "/claim", form, once)
                .statusCode(303)
                .header("Location", endsWith(address("/animals/" + animal)))
                .header("Set-Cookie", allOf(containsString("demebook-session"), containsString("HttpOnly")));

        Browsing.anonymous()
                .cookies(claimed.extract().detailedCookies())
                .get(address("/transfers"))
                .then()
                .statusCode(200)
                .body(containsString("You claimed it from wren"));
    }

    @Test
    void a_claim_without_account_or_with_a_wrong_code_comes_back_without_the_password() {
        var code = codeIn(handOut(colony.female(WREN)).statusCode(200));
        send(Browsing.anonymous(), "/claim", Map.of("code", code, "name", "tamsin"), "1")
                .statusCode(422)
                .body(
                        containsString("value=\"tamsin\""),
                        containsString("id=\"e-fullName\""),
                        containsString("id=\"e-password\""));
        var wrong =
                Map.of("code", "0000-0000-0000-0000", "name", "tam", "fullName", "T", "password", "tide and lantern");
        send(Browsing.anonymous(), "/claim", wrong, "2")
                .statusCode(422)
                .body(containsString("mistyped, used or out of date"), not(containsString("tide and lantern")));
    }

    // ── sheets ───────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_young_that_is_not_ready_has_a_sheet_that_says_so_and_is_printed_with_the_claim_code() {
        var young =
                colony.register(WREN, Colony.animal("male", TODAY.minusDays(70).toString()));
        var code = codeIn(handOut(young).statusCode(200));
        open(WREN, "/animals/" + young + "/handover-sheets")
                .statusCode(200)
                .body(containsString("No meal is written down"), containsString("not established"));

        var issued =
                send(WREN, "/animals/" + young + "/handover-sheets", Map.of()).statusCode(303);
        var location = issued.extract().header("Location");
        var sheet = location.substring(location.indexOf("/handover-sheets/"));
        open(WREN, sheet).statusCode(200).body(containsString("not established"));
        send(WREN, sheet + "/print", Map.of("claimCode", code)).statusCode(200).contentType("application/pdf");
        send(WREN, sheet + "/print", Map.of("claimCode", "0000-0000-0000-0000"))
                .statusCode(422)
                .body(containsString("not the present claim code"));
        send(WREN, sheet + "/withdrawal", Map.of("reason", "wrong animal")).statusCode(303);
        open(WREN, sheet).body(containsString("wrong animal"));
        open(INES, sheet).statusCode(404);
    }

    // ── disputes ─────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_animal_in_two_places_is_reported_seen_by_the_other_side_and_conceded() {
        var animal = colony.female(WREN);
        send(INES, offered(WREN, animal, INES) + "/acceptance", Map.of()).statusCode(303);
        var report = Map.of("seenOn", TODAY.toString(), "note", "I read its chip");
        var location = send(WREN, "/animals/" + animal + "/disputes", report)
                .statusCode(303)
                .extract()
                .header("Location");
        var dispute = location.substring(location.indexOf("/disputes/"));

        open(INES, "/disputes").body(containsString(address(dispute)));
        open(INES, dispute).body(containsString("I read its chip"), containsString(dispute + "/concession"));
        open(DOV, dispute).statusCode(404);
        send(INES, dispute + "/concession", Map.of("reason", "it came back with the box"))
                .statusCode(303);
        open(WREN, dispute).body(containsString("it came back with the box"));
        colony.get(WREN, dispute).body("state", equalTo("conceded"));
    }

    @Test
    void a_coordinator_on_no_side_decides_and_says_why() {
        var animal = colony.female(INES);
        send(DOV, offered(INES, animal, DOV) + "/acceptance", Map.of()).statusCode(303);
        var location = send(INES, "/animals/" + animal + "/disputes", Map.of("seenOn", TODAY.toString()))
                .statusCode(303)
                .extract()
                .header("Location");
        var dispute = location.substring(location.indexOf("/disputes/"));

        send(WREN, dispute + "/settlement", Map.of())
                .statusCode(422)
                .body(containsString("id=\"e-reason\""), containsString("value=\"upheld\""));
        send(WREN, dispute + "/settlement", Map.of("outcome", "dismissed", "reason", "Dov sent a photograph"))
                .statusCode(303);
        open(DOV, dispute).body(containsString("Dov sent a photograph"));
    }
}
