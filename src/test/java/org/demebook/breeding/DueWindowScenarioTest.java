package org.demebook.breeding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.breeding.Notes.introduce;
import static org.demebook.breeding.Notes.litter;
import static org.demebook.breeding.Notes.noted;
import static org.demebook.breeding.Notes.sign;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.UUID;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** From the first sign to the due day, as a keeper sees it. Figures of the trade: common practice, no source. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DueWindowScenarioTest {
    @Inject
    BreedingTasks tasks;

    @Inject
    Cycles gravid;

    /** Scenario A1. */
    @Test
    void given_a_pairing_when_the_shed_is_noted_then_the_birth_is_due_105_days_later_with_three_reminders() {
        var colony = Colony.found();
        var m013 = colony.female(WREN);
        introduce(colony, WREN, m013, colony.male(WREN), "2026-01-05", "2026-02-20");

        noted(colony, WREN, m013, sign("post-ovulation-shed", "2026-03-14", Map.of("howKnown", "skin-found")));

        dueWindow(colony, m013, "2026-04-01")
                .body("stage", equalTo("gravid"))
                .body("gravid", equalTo(true))
                .body("due.expectedOn", equalTo("2026-06-27"))
                .body("due.likely.fromOn", equalTo("2026-06-22"))
                .body("due.likely.untilOn", equalTo("2026-07-12"))
                .body("due.reminders.dueOn", contains("2026-06-12", "2026-06-22", "2026-07-13"))
                .body("due.withoutHistoryOn", nullValue())
                .body("months", nullValue())
                .body("prompts", nullValue())
                .body("reason", startsWith("105 days after the shed; profile Marrowfin"));
        var keeper = standing(colony, WREN);
        assertThat(tasks.tasks(keeper, LocalDate.parse("2026-04-01")))
                .extracting(CareTask::kind, CareTask::dueOn)
                .containsExactlyInAnyOrder(
                        tuple(CareKind.DUE_WINDOW, LocalDate.parse("2026-06-27")),
                        tuple(CareKind.EARLY_BIRTH, LocalDate.parse("2026-06-12")),
                        tuple(CareKind.BIRTH_LIKELY, LocalDate.parse("2026-06-22")),
                        tuple(CareKind.BIRTH_OVERDUE, LocalDate.parse("2026-07-13")));
        assertThat(tasks.tasks(standing(colony, INES), LocalDate.parse("2026-04-01")))
                .isEmpty();
    }

    @Test
    void on_each_of_the_three_days_the_keeper_is_told_what_to_do_and_past_the_window_to_see_a_veterinarian() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14"));

        dueWindow(colony, female, "2026-06-11").body("prompts", nullValue());
        dueWindow(colony, female, "2026-06-12").body("prompts[0]", containsString("reckoned with"));
        dueWindow(colony, female, "2026-06-22").body("prompts[0]", containsString("last to 2026-07-12"));
        dueWindow(colony, female, "2026-07-12").body("prompts[0]", containsString("likely days"));
        dueWindow(colony, female, "2026-07-13")
                .body(
                        "prompts[0]",
                        equalTo(
                                "She is past the usual window. Watch for straining, weakness and discharge; see a reptile veterinarian."));
    }

    /** Scenario A2. */
    @Test
    void given_earlier_litters_at_109_and_113_days_then_the_birth_is_due_on_2_july_give_or_take_5_days() {
        var colony = Colony.found();
        var m013 = colony.female(WREN);
        noted(colony, WREN, m013, sign("post-ovulation-shed", "2023-03-01"));
        register(colony, litter(m013, "2023-06-18"));
        noted(colony, WREN, m013, sign("post-ovulation-shed", "2024-03-01"));
        register(colony, litter(m013, "2024-06-22"));

        noted(colony, WREN, m013, sign("post-ovulation-shed", "2026-03-14"));

        dueWindow(colony, m013, "2026-04-01")
                .body("due.expectedOn", equalTo("2026-07-02"))
                .body("due.expectedDays", equalTo(110))
                .body("due.spreadDays", equalTo(5))
                .body("due.withoutHistoryOn", equalTo("2026-06-27"))
                .body("reason", containsString("(109, 113 days)"))
                .body("reason", containsString("Without her history: 27 June 2026."));
    }

    /** Scenario A3. */
    @Test
    void given_only_an_ovulation_then_the_day_is_the_same_the_window_wider_and_the_reason_tells_why() {
        var colony = Colony.found();
        var fromShed = colony.female(WREN);
        var fromOvulation = colony.female(WREN);
        noted(colony, WREN, fromShed, sign("post-ovulation-shed", "2026-03-14"));

        noted(colony, WREN, fromOvulation, sign("ovulation", "2026-02-24"));

        var due = dueWindow(colony, fromOvulation, "2026-04-01")
                .body("due.expectedOn", equalTo("2026-06-27"))
                .body("reason", startsWith("123 days after the ovulation"))
                .body("reason", containsString("so the window is wider"));
        assertThat(days(due)).isGreaterThan(days(dueWindow(colony, fromShed, "2026-04-01")));
    }

    @Test
    void introductions_alone_give_months_and_say_why() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        introduce(colony, WREN, female, colony.male(WREN), "2026-01-05", "2026-02-20");

        dueWindow(colony, female, "2026-04-01")
                .body("stage", equalTo("introduced"))
                .body("gravid", equalTo(false))
                .body("due", nullValue())
                // 4 to 8 months from mating: general texts
                .body("months.from", equalTo("2026-05"))
                .body("months.until", equalTo("2026-10"))
                .body("reason", containsString("Copulation does not fix conception; sperm can wait."));
    }

    @Test
    void a_female_who_only_met_a_male_is_awaited_for_months_after_those_with_a_day_and_until_the_months_are_over() {
        var colony = Colony.found();
        var met = colony.female(WREN);
        introduce(colony, WREN, met, colony.male(WREN), "2026-01-05", "2026-02-20");
        var mated = colony.female(WREN);
        noted(colony, WREN, mated, sign("copulation", "2025-12-20", Map.of("male", colony.male(WREN))));
        var shed = colony.female(WREN);
        noted(colony, WREN, shed, sign("post-ovulation-shed", "2026-03-14"));
        var later = colony.female(WREN);
        introduce(colony, WREN, later, colony.male(WREN), "2026-04-05", null);
        introduce(colony, INES, colony.female(INES), colony.male(INES), "2026-01-05", null);

        colony.get(WREN, "/due-windows?onDay=2026-04-01")
                .statusCode(200)
                .body("female", contains(shed, mated, met))
                .body("stage", contains("gravid", "introduced", "introduced"))
                // 4 to 8 months from mating: general texts
                .body("months.from", contains("2026-04", "2026-05"))
                .body("months.until", contains("2026-08", "2026-10"))
                .body("due.expectedOn", contains("2026-06-27"));
        colony.get(WREN, "/due-windows?onDay=2026-10-31").body("female", contains(shed, met, later));
        colony.get(WREN, "/due-windows?onDay=2026-11-01").body("female", contains(shed, later));
        register(colony, litter(later, "2026-09-30"));
        // the pair was not separated, so the next months begin with the litter
        colony.get(WREN, "/due-windows?onDay=2026-11-01")
                .body("female", contains(shed, later))
                .body("months.from", contains("2027-01"));
        assertThat(tasks.tasks(standing(colony, WREN), LocalDate.parse("2026-04-01")))
                .extracting(CareTask::kind)
                .containsOnly(CareKind.DUE_WINDOW, CareKind.EARLY_BIRTH, CareKind.BIRTH_LIKELY, CareKind.BIRTH_OVERDUE);
    }

    @Test
    void without_any_record_nothing_is_told() {
        var colony = Colony.found();

        dueWindow(colony, colony.female(WREN), "2026-04-01")
                .body("stage", equalTo("nothing-noted"))
                .body("due", nullValue())
                .body("months", nullValue())
                .body("signs", empty());
    }

    @Test
    void those_whose_young_are_awaited_are_listed_with_the_most_urgent_first_until_their_litter() {
        var colony = Colony.found();
        var late = colony.female(WREN);
        var early = colony.female(WREN);
        var inLabour = colony.female(WREN);
        noted(colony, WREN, late, sign("post-ovulation-shed", "2026-04-14"));
        noted(colony, WREN, early, sign("post-ovulation-shed", "2026-03-01"));
        noted(colony, WREN, inLabour, sign("post-ovulation-shed", "2026-04-20"));
        noted(colony, WREN, inLabour, sign("labour-started", "2026-06-20"));
        var sold = colony.female(INES);
        noted(colony, INES, sold, sign("post-ovulation-shed", "2026-03-01"));

        colony.get(WREN, "/due-windows?onDay=2026-06-20")
                .statusCode(200)
                .body("female", contains(inLabour, early, late));
        register(colony, litter(early, "2026-06-10"));
        colony.get(WREN, "/due-windows?onDay=2026-06-20").body("female", contains(inLabour, late));
        dueWindow(colony, early, "2026-06-20").body("stage", equalTo("nothing-noted"));
        // as it looked before the birth
        dueWindow(colony, early, "2026-06-01").body("stage", equalTo("gravid"));
    }

    @Test
    void labour_that_is_not_finished_is_prompted_after_a_day_and_after_two_and_stands_among_the_tasks() {
        var colony = Colony.found();
        var female = colony.female(WREN);
        noted(
                colony,
                WREN,
                female,
                sign("post-ovulation-shed", LocalDate.now(ZoneOffset.UTC).minusDays(105) + ""));
        var started = Instant.now().minus(30, ChronoUnit.HOURS).truncatedTo(ChronoUnit.SECONDS);
        var day = LocalDate.ofInstant(started, ZoneOffset.UTC);
        var id = noted(
                colony, WREN, female, sign("labour-started", day.toString(), Map.of("happenedAt", started.toString())));

        colony.get(WREN, "/animals/" + female + "/due-window")
                .body("stage", equalTo("in-labour"))
                .body("prompts", hasSize(1))
                .body("prompts[0]", startsWith("Labour has gone on for 24 hours"));
        var keeper = standing(colony, WREN);
        assertThat(tasks.tasks(keeper, LocalDate.now(ZoneOffset.UTC)))
                .extracting(CareTask::key)
                .containsExactlyInAnyOrder("labour-24h:" + id, "labour-48h:" + id);

        noted(colony, WREN, female, sign("labour-finished", LocalDate.now(ZoneOffset.UTC) + ""));
        colony.get(WREN, "/animals/" + female + "/due-window")
                .body("stage", equalTo("labour-finished"))
                .body("prompts[0]", containsString("register the litter"));
        assertThat(tasks.tasks(keeper, LocalDate.now(ZoneOffset.UTC))).isEmpty();
    }

    @Test
    void the_population_s_own_intervals_stand_in_for_the_profile_once_there_are_eight_of_four_females() {
        var colony = Colony.found();
        for (int female = 0; female < 4; female++) {
            var dam = colony.female(INES);
            for (int year = 2023; year <= 2024; year++) {
                noted(colony, INES, dam, sign("post-ovulation-shed", year + "-03-01"));
                colony.post(
                                INES,
                                "/litters",
                                litter(dam, LocalDate.of(year, 3, 1).plusDays(118 + female) + ""))
                        .statusCode(201);
            }
        }
        var female = colony.female(WREN);
        noted(colony, WREN, female, sign("post-ovulation-shed", "2026-03-14"));

        dueWindow(colony, female, "2026-04-01")
                // the mean of 118, 119, 120 and 121, rounded to a day
                .body("due.expectedDays", equalTo(120))
                .body("reason", containsString("estimated from 8 intervals of 4 females of this population"));
    }

    /** Scenario B6 asks it before a transfer. */
    @Test
    void those_who_act_on_an_animal_can_ask_whether_she_is_gravid() {
        var colony = Colony.found();
        var m020 = colony.female(WREN);
        noted(
                colony,
                WREN,
                m020,
                sign("ovulation", LocalDate.now(ZoneOffset.UTC).minusDays(10) + ""));
        var populationId = standing(colony, WREN).populationId();

        assertThat(gravid.isGravid(populationId, id(colony, m020))).isTrue();
        assertThat(gravid.isGravid(populationId, id(colony, colony.female(WREN))))
                .isFalse();
    }

    @Test
    void days_that_cannot_be_read_are_a_bad_parameter() {
        var colony = Colony.found();

        colony.get(WREN, "/due-windows?onDay=soon").statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        colony.get(WREN, "/due-windows").statusCode(200).body("$", empty());
    }

    private static ValidatableResponse dueWindow(Colony colony, String female, String on) {
        return colony.get(WREN, "/animals/" + female + "/due-window?onDay=" + on)
                .statusCode(200);
    }

    private static long days(ValidatableResponse due) {
        return ChronoUnit.DAYS.between(
                LocalDate.parse(due.extract().path("due.nineTenthsOfBirths.fromOn")),
                LocalDate.parse(due.extract().path("due.nineTenthsOfBirths.untilOn")));
    }

    private static void register(Colony colony, Map<String, Object> litter) {
        as(WREN).body(litter).post(colony.path("/litters")).then().statusCode(201);
    }

    static UUID id(Colony colony, String number) {
        return UUID.fromString(Backstage.ask("select id::text from demebook.animal where number = ?", number)
                .get(0));
    }

    static Standing standing(Colony colony, String keeper) {
        return Backstage.asks(new Standing(
                UUID.fromString(
                        Backstage.ask("select population_id::text from demebook.population where code = ?", colony.code)
                                .get(0)),
                colony.code,
                UUID.fromString(Backstage.ask("select id::text from demebook.keeper where name = ?", keeper)
                        .get(0)),
                Role.MEMBER,
                0));
    }
}
