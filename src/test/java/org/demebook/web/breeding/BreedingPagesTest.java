package org.demebook.web.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The pages of breeding; days of gestation are those of the profile of the trade's own example (common practice, no source). */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class BreedingPagesTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    private static String page(String below) {
        return "/populations/" + colony.code + below;
    }

    private static ValidatableResponse look(String keeper, String below) {
        return Browsing.as(keeper).get(page(below)).then();
    }

    private static ValidatableResponse post(String keeper, String below, Map<String, ?> form) {
        return post(keeper, below, UUID.randomUUID().toString(), form);
    }

    private static ValidatableResponse post(String keeper, String below, String once, Map<String, ?> form) {
        return Browsing.as(keeper)
                .formParams(form)
                .queryParam("once", once)
                .post(page(below))
                .then();
    }

    private static String addressOf(ValidatableResponse response) {
        return response.statusCode(303).extract().header("Location").replaceFirst(".*/populations/[A-Z0-9]+", "");
    }

    @Test
    void a_pair_is_recorded_separated_corrected_and_taken_back() {
        var female = colony.female(WREN);
        var male = colony.male(WREN);
        var once = UUID.randomUUID().toString();
        var form = Map.of("female", female, "male", male, "fromOn", "2026-01-05", "untilOn", "");

        var address = addressOf(post(WREN, "/introductions", once, form));
        assertThat(addressOf(post(WREN, "/introductions", once, form))).isEqualTo(address);
        look(WREN, "/breeding").body(containsString("action=\"" + page(address) + "/end?once="));
        look(WREN, "/animals/" + male + "/breeding").statusCode(200).body(containsString(female));

        post(WREN, address + "/end", Map.of("untilOn", "2026-02-20")).statusCode(303);
        look(WREN, "/breeding").body(not(containsString(page(address) + "/end?once=")));
        var revision = colony.get(WREN, address).extract().path("revision").toString();
        var days = Map.of("revision", revision, "fromOn", "2026-01-06", "untilOn", "2026-02-20", "notes", "a day late");
        post(WREN, address, days).statusCode(303);
        colony.get(WREN, address).body("fromOn", equalTo("2026-01-06")).body("notes", equalTo("a day late"));

        post(WREN, address + "/withdrawal", Map.of("reason", "another male")).statusCode(303);
        look(WREN, address).statusCode(200).body(containsString("taken back"));
    }

    @Test
    void two_of_one_sex_are_refused_at_the_field_and_the_choice_stays() {
        var one = colony.female(WREN);
        var other = colony.female(WREN);

        post(WREN, "/introductions", Map.of("female", one, "male", other, "fromOn", "2026-01-05"))
                .statusCode(422)
                .body(containsString("id=\"e-male\""))
                .body(containsString("<option value=\"" + one + "\" selected>"))
                .body(containsString("<option value=\"" + other + "\" selected>"));
    }

    @Test
    void a_shed_that_is_noted_tells_the_day_with_the_reason() {
        var female = colony.female(WREN);
        var shed = LocalDate.now().minusDays(20);

        addressOf(post(
                WREN,
                "/animals/" + female + "/breeding-signs",
                Map.of("kind", "post-ovulation-shed", "happenedOn", shed.toString(), "howKnown", "skin-found")));

        look(WREN, "/animals/" + female + "/breeding")
                .statusCode(200)
                .body(containsString("105 days after the shed"))
                .body(containsString("skin found on the day"))
                .body(containsString("in 85 days"));
        look(WREN, "/breeding").body(containsString("/animals/" + female + "/breeding"));
    }

    @Test
    void a_sign_that_does_not_fit_comes_back_with_what_was_typed() {
        var female = colony.female(WREN);

        post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of(
                                "kind",
                                "ovulation",
                                "happenedOn",
                                "2026-02-24",
                                "howKnown",
                                "skin-found",
                                "notes",
                                "a swelling"))
                .statusCode(422)
                .body(containsString("id=\"e-howKnown\""))
                .body(containsString("a swelling"));
    }

    @Test
    void a_sign_is_corrected_and_taken_back() {
        var female = colony.female(WREN);
        var noted = colony.post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of("kind", "ovulation", "happenedOn", "2026-02-24"))
                .statusCode(201)
                .extract();
        String id = noted.path("sign.id");

        post(
                        WREN,
                        "/breeding-signs/" + id,
                        Map.of(
                                "revision",
                                noted.path("sign.revision").toString(),
                                "kind",
                                "ovulation",
                                "happenedOn",
                                "2026-02-26",
                                "howKnown",
                                "guessed"))
                .statusCode(303);
        colony.get(WREN, "/breeding-signs/" + id)
                .body("happenedOn", equalTo("2026-02-26"))
                .body("howKnown", equalTo("guessed"));
        post(WREN, "/breeding-signs/" + id + "/withdrawal", Map.of("reason", ""))
                .statusCode(303);
        look(WREN, "/breeding-signs/" + id).body(containsString("taken back"));
    }

    @Test
    void labour_of_two_days_sends_to_the_veterinarian() {
        var female = colony.female(WREN);
        colony.post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of(
                                "kind",
                                "post-ovulation-shed",
                                "happenedOn",
                                LocalDate.now().minusDays(105).toString()))
                .statusCode(201);
        var began = Instant.now().minus(49, ChronoUnit.HOURS).truncatedTo(ChronoUnit.SECONDS);
        addressOf(post(
                WREN,
                "/animals/" + female + "/breeding-signs",
                Map.of(
                        "kind", "labour-started",
                        "happenedOn", began.atZone(ZoneOffset.UTC).toLocalDate().toString(),
                        "happenedAt", began.toString())));

        look(WREN, "/animals/" + female + "/breeding")
                .body(containsString("Labour has gone on for 48 hours"))
                .body(containsString("see a reptile veterinarian"));
        look(WREN, "/litters").body(containsString("Labour has gone on for 48 hours"));
    }

    @Test
    void a_time_of_day_becomes_the_moment_of_labour() {
        var female = colony.female(WREN);

        addressOf(post(
                WREN,
                "/animals/" + female + "/breeding-signs",
                Map.of("kind", "labour-started", "happenedOn", "2026-06-28", "time", "23:40", "howKnown", "seen")));

        String moment = colony.get(WREN, "/animals/" + female + "/breeding-signs")
                .extract()
                .path("items[0].happenedAt");
        assertThat(Instant.parse(moment)
                        .atZone(java.time.ZoneId.systemDefault())
                        .toLocalTime())
                .hasToString("23:40");
    }

    @Test
    void nothing_of_her_cycle_is_told_to_others() {
        var female = colony.female(WREN);
        colony.post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of("kind", "ovulation", "happenedOn", "2026-02-24", "notes", "mine alone"))
                .statusCode(201);

        look(INES, "/animals/" + female + "/breeding")
                .statusCode(200)
                .body(not(containsString("mine alone")))
                .body(not(containsString("gravid")));
        look(DOV, "/breeding").body(not(containsString(female)));
    }

    @Test
    void a_clutch_is_no_matter_of_live_bearers() {
        var female = colony.female(WREN);

        post(
                        WREN,
                        "/animals/" + female + "/incubations",
                        Map.of("startedOn", "2026-06-28", "setPoint.value", "31", "setPoint.unit", "c", "eggs", "5"))
                .statusCode(422)
                .body(containsString("bear their young"))
                .body(containsString("value=\"31\""));
    }
}
