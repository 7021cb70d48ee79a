package org.demebook.rearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.notNullValue;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.imageio.ImageIO;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.care.CareTask;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A litter born on 2026-06-29 grows up; thresholds are common practice, no source. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class RearingTest {
    static Colony colony;
    static String dam;
    static String litter;
    static List<String> young;

    @Inject
    RearingTasks source;

    @BeforeAll
    static void bear() {
        colony = Colony.found();
        dam = colony.female(WREN);
        var registered = colony.post(
                        WREN,
                        "/litters",
                        Map.of(
                                "dam", dam,
                                "born", "2026-06-29",
                                "liveBorn", 8,
                                "stillborn", 0,
                                "unfertilised", 0,
                                "ovaFound", 8,
                                "young", List.of(Map.of("sex", "female"), Map.of("sex", "male"))))
                .statusCode(201);
        litter = registered.extract().path("litter.id");
        young = registered.extract().path("young.number");
        var records = new ArrayList<Map<String, Object>>();
        for (int i = 0; i < young.size(); i++) {
            records.add(record(i, "measures", "2026-06-29", Map.of("mass", grams(28 + i))));
            records.add(record(i, "shed", "2026-07-09", Map.of()));
            records.add(record(i, "measures", "2026-07-20", Map.of("mass", grams(i == 7 ? 29 : 31 + i))));
        }
        // the first took its last four meals by itself, of the second the last two were assisted, the last took none
        for (var on : List.of("2026-08-04", "2026-08-11", "2026-08-18", "2026-08-25")) {
            for (int i = 0; i < 7; i++) {
                var helped = i == 1 && on.compareTo("2026-08-15") > 0;
                records.add(record(i, "meal", on, Map.of("outcome", helped ? "assisted" : "taken")));
            }
        }
        colony.post(WREN, "/care-records", Map.of("records", records)).statusCode(200);
    }

    @Test
    void a_young_of_60_days_that_shed_and_took_four_meals_in_a_row_may_leave() throws IOException {
        // scenario B1
        photograph(young.get(0));

        colony.get(WREN, "/animals/" + young.get(0) + "/readiness?on=2026-08-28")
                .statusCode(200)
                .body("ready", equalTo(true))
                .body("established", equalTo(true))
                .body("conditions.state.unique()", contains("met"))
                .body("conditions.find { it.name == 'age' }.reason", containsString("60 days old"))
                .body("expected.likely", equalTo("2026-08-28"))
                .body("expected.latest", equalTo("2026-08-28"));
        colony.get(WREN, "/animals/" + young.get(0) + "/readiness?on=2026-08-27")
                .body("ready", equalTo(false))
                .body("conditions.findAll { it.state != 'met' }.name", contains("last-meal"));
    }

    @Test
    void one_whose_last_two_meals_were_assisted_is_not_established() {
        // scenario B2
        colony.get(WREN, "/animals/" + young.get(1) + "/readiness?on=2026-08-28")
                .body("ready", equalTo(false))
                .body("established", equalTo(false))
                .body(
                        "conditions.find { it.name == 'meals' }.reason",
                        containsString("last 2 meals, since 2026-08-18, were assisted"))
                .body("expected.earliest", notNullValue());
    }

    @Test
    void the_board_shows_the_young_of_a_litter_side_by_side() {
        colony.get(WREN, "/litters/" + litter + "/rearing")
                .statusCode(200)
                .body("young.animal", equalTo(young))
                .body("young[0].sheds", equalTo(1))
                .body("young[0].mealsInARow", equalTo(4))
                .body("young[0].lastMealOn", equalTo("2026-08-25"))
                .body("young[0].lastMeal", equalTo("taken"))
                .body("young[1].lastMeal", equalTo("assisted"))
                .body("young[1].mealsInARow", equalTo(0))
                .body("young[7].lastMealOn", nullValue())
                .body("young[7].lastGrams", equalTo(29))
                .body("young[7].behind", hasSize(2))
                .body("young[4].behind", empty())
                .body("young[7].ready", equalTo(false))
                .body("young[7].missing", contains("meals", "last-meal", "mass", "sex", "photograph"));
        colony.get(DOV, "/litters/" + litter + "/rearing")
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-litter"));
    }

    @Test
    void growth_is_shown_beside_the_siblings_and_says_who_is_behind() {
        colony.get(WREN, "/animals/" + young.get(7) + "/growth")
                .statusCode(200)
                .body("points.grams", contains(35, 29))
                .body("points.ageDays", contains(0, 21))
                .body("points[1].siblings.count", equalTo(7))
                .body("points[1].siblings.medianGrams", equalTo(34.0f))
                // 6 g less in three weeks
                .body("gramsPerWeek", equalTo(-2.00f))
                .body("siblings", equalTo(7))
                .body("lighterSiblings", equalTo(0.00f))
                .body("behind[0]", containsString("29 g on 2026-07-20"))
                .body("behind[1]", containsString("took 0 of its meals"));
    }

    @Test
    void to_somebody_else_all_this_is_not_theirs() {
        for (var what : List.of("growth", "readiness", "tests")) {
            colony.get(DOV, "/animals/" + young.get(0) + "/" + what)
                    .statusCode(403)
                    .body("type", equalTo("/problems/not-your-animal"));
        }
    }

    @Test
    void a_buyer_sees_the_young_without_its_siblings() {
        var sold = young.get(3);
        String id = colony.post(WREN, "/transfers", Map.of("animal", sold, "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);

        colony.get(INES, "/animals/" + sold + "/growth")
                .statusCode(200)
                .body("points", hasSize(2))
                .body("siblings", equalTo(0))
                .body("points[0].siblings", nullValue());
        colony.get(INES, "/animals/" + sold + "/readiness?on=2026-08-28").body("established", equalTo(true));
        colony.get(WREN, "/animals/" + sold + "/readiness?on=2026-08-28")
                .statusCode(200)
                .body("established", equalTo(true))
                .body("conditions.find { it.name == 'photograph' }.state", equalTo("unknown"));
    }

    @Test
    void the_latest_test_of_each_agent_is_shown_with_its_last_day() {
        for (var test : List.of(
                Map.of("sampledOn", "2026-01-10", "agent", "Reptarenavirus", "result", "positive"),
                Map.of("sampledOn", "2026-03-01", "agent", "reptarenavirus", "result", "negative", "method", "RT-PCR"),
                Map.of("sampledOn", "2026-03-01", "agent", "mites", "result", "unclear", "validUntil", "2026-03-31"))) {
            var record = new HashMap<String, Object>(test);
            record.put("kind", "test");
            colony.post(WREN, "/animals/" + dam + "/care-records", record).statusCode(201);
        }

        colony.get(WREN, "/animals/" + dam + "/tests?on=2026-08-28")
                .statusCode(200)
                .body("agent", contains("mites", "reptarenavirus"))
                // 180 days from 1 March
                .body("countsUntil", contains("2026-03-31", "2026-08-28"))
                .body("counts", contains(false, true))
                .body("[1].negativesInARow", equalTo(1));
    }

    @Test
    void the_tasks_of_a_keeper_are_of_the_animals_in_their_hands() {
        var tasks = source.tasks(standing(WREN), LocalDate.parse("2026-07-07"));

        assertThat(tasks)
                .extracting(CareTask::key)
                .contains(
                        "bedding:" + litter,
                        "separate:" + litter,
                        "recovery-meal:" + litter,
                        "recovery-weighing:" + litter)
                .doesNotHaveDuplicates();
        assertThat(source.tasks(standing(DOV), LocalDate.parse("2026-07-07"))).isEmpty();
    }

    private static Standing standing(String keeper) {
        var populationId = ask("select population_id::text from demebook.population where code = ?", colony.code);
        var keeperId = ask("select id::text from demebook.keeper where name = ?", keeper);
        return Backstage.asks(new Standing(
                UUID.fromString(populationId.get(0)), colony.code, UUID.fromString(keeperId.get(0)), Role.MEMBER, 0));
    }

    private static void photograph(String number) throws IOException {
        var bytes = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(32, 24, BufferedImage.TYPE_INT_RGB), "png", bytes);
        as(WREN).contentType("image/png")
                .body(bytes.toByteArray())
                .post(colony.path("/animals/" + number + "/photos?label=above"))
                .then()
                .statusCode(201);
    }

    private static Map<String, Object> record(int i, String kind, String on, Map<String, ?> fields) {
        var record = new HashMap<String, Object>(fields);
        record.putAll(Map.of("animal", young.get(i), "kind", kind, "on", on));
        return record;
    }

    private static Map<String, Object> grams(int grams) {
        return Map.of("value", grams, "unit", "g");
    }
}
