package org.demebook.incubation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Clutches in incubators. Limits are common practice, no source; the overheating of 33.3 °C stands in general pages. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class IncubationTest {
    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        IncubationStory.describe(colony, "egg-laying");
    }

    @Test
    void a_set_point_in_fahrenheit_is_told_in_both_and_as_it_was_written() {
        start(colony.female(WREN), degrees(88, "f"))
                .statusCode(201)
                .body("setPoint.celsius", equalTo(31.11f))
                .body("setPoint.fahrenheit", equalTo(88.0f))
                .body("setPoint.written", equalTo("88 °F"))
                .body("warnings", nullValue());
    }

    @Test
    void a_reading_off_the_set_point_warns_and_overheating_is_not_forgotten() {
        var female = colony.female(WREN);
        String id = start(female, degrees(31.5, "c")).extract().path("id");

        read(id, "2026-04-02T08:00:00Z", degrees(29, "c"))
                .body("readings[0].warmth", equalTo("too-cool"))
                .body("warnings", hasSize(1));
        read(id, "2026-04-03T08:00:00Z", degrees(34, "c"))
                .body("readings[0].warmth", equalTo("overheated"))
                .body("warnings[0]", startsWith("Above 33.3 °C"));
        read(id, "2026-04-04T08:00:00Z", degrees(31.4, "c"))
                .body("readings.warmth", contains("as-set", "overheated", "too-cool"))
                .body("warnings", contains(startsWith("Overheated on 2026-04-03 (34.00 °C)")));
        colony.get(WREN, "/animals/" + female + "/incubations").statusCode(200).body("id", contains(id));
    }

    @Test
    void a_temperature_at_which_no_clutch_is_kept_is_taken_for_the_other_unit() {
        start(colony.female(WREN), degrees(88, "c"))
                .statusCode(422)
                .body("detail", containsString("Is it in the other unit"));
        start(colony.female(WREN), degrees(31.5, "f")).statusCode(422).body("findings[0].field", equalTo("setPoint"));
    }

    @Test
    void females_that_bear_their_young_have_no_clutch() {
        var boas = Colony.found();

        boas.post(WREN, "/animals/" + boas.female(WREN) + "/incubations", incubation(degrees(31.5, "c")))
                .statusCode(409)
                .body("type", equalTo("/problems/not-egg-laying"));
    }

    @Test
    void to_others_there_is_no_incubation() {
        var female = colony.female(WREN);
        String id = start(female, degrees(31.5, "c")).extract().path("id");

        colony.get(INES, "/incubations/" + id).statusCode(404).body("type", equalTo("/problems/no-such-incubation"));
        colony.get(INES, "/animals/" + female + "/incubations").statusCode(200).body("$", hasSize(0));
        colony.post(INES, "/incubations/" + id + "/readings", Map.of("temperature", degrees(31, "c")))
                .statusCode(404);
        colony.post(INES, "/animals/" + female + "/incubations", incubation(degrees(31.5, "c")))
                .statusCode(403);
    }

    @Test
    void a_hatching_is_due_from_the_laying() {
        var female = colony.female(WREN);
        colony.post(
                        WREN,
                        "/animals/" + female + "/breeding-signs",
                        Map.of("kind", "laying", "happenedOn", "2026-04-01", "eggs", 6))
                .statusCode(201);

        String reason = colony.get(WREN, "/animals/" + female + "/due-window?onDay=2026-04-20")
                .body("stage", equalTo("laid"))
                // 60 days: the profile's usual figure
                .body("due.expectedOn", equalTo("2026-05-31"))
                .extract()
                .path("reason");
        assertThat(reason).startsWith("60 days after the laying");
    }

    private static ValidatableResponse start(String female, Map<String, Object> setPoint) {
        return colony.post(WREN, "/animals/" + female + "/incubations", incubation(setPoint));
    }

    private static Map<String, Object> incubation(Map<String, Object> setPoint) {
        return Map.of("startedOn", "2026-04-01", "setPoint", setPoint);
    }

    private static ValidatableResponse read(String id, String readAt, Map<String, Object> temperature) {
        return colony.post(
                        WREN, "/incubations/" + id + "/readings", Map.of("readAt", readAt, "temperature", temperature))
                .statusCode(200);
    }

    private static Map<String, Object> degrees(double value, String unit) {
        return Map.of("value", value % 1 == 0 ? (Object) (int) value : (Object) value, "unit", unit);
    }
}
