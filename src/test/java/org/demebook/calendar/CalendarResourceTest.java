package org.demebook.calendar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.component.VEvent;
import org.demebook.Colony;
import org.demebook.care.CareKind;
import org.demebook.care.GivenTasks;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A keeper's calendar at its secret address. Each test has a keeper of its own: there is one calendar for each. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CalendarResourceTest {
    private static final LocalDate TODAY = LocalDate.now(ZoneOffset.UTC);

    static Colony colony;

    @BeforeAll
    static void found() {
        colony = Colony.found();
    }

    @Test
    void a_calendar_program_reads_the_tasks_of_all_populations_without_signing_in() {
        var other = Colony.found();
        var keeper = keeper();
        var animal = joined(colony, keeper);
        var elsewhere = joined(other, keeper);
        GivenTasks.give(
                colony, CareKind.DUE_WINDOW, animal, TODAY.plusDays(100), TODAY.plusDays(95), TODAY.plusDays(115));
        GivenTasks.give(other, CareKind.NEXT_MEAL, elsewhere, TODAY.minusDays(3));

        var read = read(open(keeper)).statusCode(200).extract();
        assertThat(read.contentType()).isEqualTo("text/calendar;charset=UTF-8");
        assertThat(read.header("Cache-Control")).contains("private").contains("no-store");
        assertThat(events(read.asString()))
                .extracting(event -> event.getSummary().getValue())
                .containsExactlyInAnyOrder(
                        animal + ": due window, expected " + Feed.DAY.format(TODAY.plusDays(100)),
                        elsewhere + ": next meal");
        assertThat(read.asString()).doesNotContain("Marrowfin", keeper, "Keeper", "rack");
    }

    @Test
    void tasks_of_others_and_those_that_are_done_or_silenced_are_not_in_it() {
        var keeper = keeper();
        var animal = joined(colony, keeper);
        var done = GivenTasks.give(colony, CareKind.NEXT_MEAL, animal, TODAY);
        var silenced = GivenTasks.give(colony, CareKind.BEDDING, animal, TODAY);
        GivenTasks.give(colony, CareKind.NEXT_MEAL, colony.female(WREN), TODAY);
        var address = open(keeper);
        assertThat(events(read(address).extract().asString())).hasSize(2);

        colony.post(keeper, "/care-tasks/" + done + "/completion", Map.of()).statusCode(200);
        colony.post(keeper, "/care-tasks/" + silenced + "/silence", Map.of("scope", "task"))
                .statusCode(200);
        assertThat(events(read(address).extract().asString())).isEmpty();
    }

    @Test
    void it_reaches_from_60_days_back_to_400_ahead() {
        var keeper = keeper();
        var animal = joined(colony, keeper);
        for (int days : new int[] {-61, -60, 400, 401}) {
            GivenTasks.give(colony, CareKind.NEXT_MEAL, animal, TODAY.plusDays(days));
        }
        assertThat(events(read(open(keeper)).extract().asString()))
                .extracting(event ->
                        event.getProperty("DTSTART").orElseThrow().getValue().replaceAll("(....)(..)(..)", "$1-$2-$3"))
                .containsExactly(
                        TODAY.minusDays(60).toString(), TODAY.plusDays(400).toString());
    }

    @Test
    void a_moved_task_keeps_its_uid_and_counts_up() {
        var keeper = keeper();
        var key = GivenTasks.give(colony, CareKind.SEPARATION, joined(colony, keeper), TODAY);
        var address = open(keeper);
        var before = events(read(address).extract().asString()).get(0);
        colony.post(
                        keeper,
                        "/care-tasks/" + key + "/postponement",
                        Map.of("to", TODAY.plusDays(2).toString()))
                .statusCode(200);
        var after = events(read(address).extract().asString()).get(0);
        assertThat(after.getUid().orElseThrow().getValue())
                .isEqualTo(before.getUid().orElseThrow().getValue());
        assertThat(before.getSequence().getSequenceNo()).isZero();
        assertThat(after.getSequence().getSequenceNo()).isEqualTo(1);
    }

    @Test
    void a_new_address_ends_the_one_before_and_closing_ends_the_last() {
        var keeper = keeper();
        as(keeper).get("/api/v1/calendar").then().statusCode(200).body("openedAt", nullValue());
        var first = open(keeper);
        var second = open(keeper);
        assertThat(second).isNotEqualTo(first);
        read(second).statusCode(200);
        as(keeper)
                .get("/api/v1/calendar")
                .then()
                .statusCode(200)
                .body("openedAt", notNullValue())
                .body("address", nullValue());

        as(keeper).body("{}").post("/api/v1/calendar/closure").then().statusCode(204);
        var bodies =
                List.of(refused(first), refused(second), refused("/api/v1/calendars/" + UUID.randomUUID() + ".ics"));
        assertThat(bodies.stream().distinct())
                .as("renewed, closed, mistyped: the same body")
                .hasSize(1);
    }

    @Test
    void the_secret_has_at_least_160_bits_and_is_kept_only_as_a_hash() {
        var keeper = keeper();
        var address = open(keeper);
        var secret = address.substring("/api/v1/calendars/".length(), address.length() - ".ics".length());
        // base64url without padding: 6 bits a character (RFC 4648, 5)
        assertThat(secret).matches("[A-Za-z0-9_-]+").hasSizeGreaterThanOrEqualTo(27);
        var kept = ask("select c::text || coalesce(encode(k.body, 'escape'), '') from demebook.calendar_address c"
                + " join demebook.kept_answer k on k.actor_id = c.keeper_id");
        assertThat(kept).isNotEmpty().noneMatch(row -> row.contains(secret));
    }

    @Test
    void an_address_is_shown_once() {
        var keeper = keeper();
        var key = UUID.randomUUID().toString();
        as(keeper, key).body("{}").post("/api/v1/calendar").then().statusCode(200);
        as(keeper, key)
                .body("{}")
                .post("/api/v1/calendar")
                .then()
                .statusCode(409)
                .body("type", equalTo("/problems/shown-once"));
    }

    @Test
    void guessing_is_slow_and_reading_costs_nothing() {
        var keeper = keeper();
        var address = open(keeper);
        var from = "192.0.2.77";
        for (int reading = 0; reading < 20; reading++) {
            anonymous(from).get(address).then().statusCode(200);
        }
        for (int guess = 0; guess < 10; guess++) {
            anonymous(from).get("/api/v1/calendars/" + guess + ".ics").then().statusCode(404);
        }
        anonymous(from).get(address).then().statusCode(429).body("type", equalTo("/problems/too-many-requests"));
    }

    private static int keepers;

    /** The sign-in name of a keeper of the node who is in no population yet. */
    private static synchronized String keeper() {
        var name = "calendar-keeper-" + ++keepers;
        Colony.token(name);
        return name;
    }

    /** Takes the keeper into a population, with an animal; returns its number. */
    private static String joined(Colony colony, String keeper) {
        colony.post(WREN, "/members", Map.of("name", keeper, "role", "member")).statusCode(200);
        colony.post(keeper, "/collections", Map.of("label", "rack by the door")).statusCode(201);
        return colony.female(keeper);
    }

    private static String open(String keeper) {
        return as(keeper)
                .body("{}")
                .post("/api/v1/calendar")
                .then()
                .statusCode(200)
                .body("address", matchesPattern("/api/v1/calendars/[^/]+\\.ics"))
                .extract()
                .path("address");
    }

    private static ValidatableResponse read(String address) {
        return anonymous().get(address).then();
    }

    private static String refused(String address) {
        return read(address)
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-calendar"))
                .extract()
                .asString();
    }

    private static List<VEvent> events(String text) {
        try {
            return new CalendarBuilder().build(new StringReader(text)).getComponents("VEVENT");
        } catch (IOException | ParserException e) {
            throw new AssertionError(text, e);
        }
    }
}
