package org.demebook.diary;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.diary.DiaryStory.entry;
import static org.demebook.diary.DiaryStory.in;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A whole rack in one request. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CareBatchTest {
    static Colony colony;
    static List<String> rack;

    @BeforeAll
    static void found() {
        colony = Colony.found();
        rack = colony.post(
                        WREN,
                        "/litters",
                        Map.of(
                                "dam", colony.female(WREN),
                                "born", "2026-06-29",
                                "liveBorn", 100,
                                "stillborn", 0,
                                "unfertilised", 0,
                                "ovaFound", 100))
                .statusCode(201)
                .extract()
                .path("young.number");
    }

    @Test
    void two_hundred_records_are_written_in_one_request_in_the_order_in_which_they_were_sent() {
        var records = new ArrayList<Map<String, Object>>();
        for (var number : rack) {
            records.add(entry(number, "measures", Map.of("on", "2026-07-20", "mass", in("31.5", "g"))));
            records.add(entry(number, "meal", Map.of("on", "2026-07-20", "outcome", "taken", "prey", "pinkie mouse")));
        }
        var began = System.nanoTime();
        var written = send(records).statusCode(200).body("records", hasSize(200));
        var took = Duration.ofNanos(System.nanoTime() - began);

        assertThat(written.extract().<List<String>>path("records.animal").subList(0, 4))
                .containsExactly(rack.get(0), rack.get(0), rack.get(1), rack.get(1));
        assertThat(took)
                .as("on a machine that does nothing else it takes a few tenths")
                .isLessThan(Duration.ofSeconds(5));
    }

    @Test
    void one_wrong_record_keeps_out_all_and_every_finding_names_its_record() {
        var foreign = colony.female(DOV);
        var before = count();

        send(List.of(
                        entry(rack.get(0), "shed", Map.of("on", "2026-07-09")),
                        entry(foreign, "shed", Map.of("on", "2026-07-09")),
                        entry(rack.get(1), "meal", Map.of("on", "2026-07-09")),
                        entry("nonsense", "shed", Map.of("on", "2026-07-09")),
                        Map.of("kind", "shed", "on", "2026-07-09"),
                        entry(rack.get(2), "measures", Map.of("on", "2026-06-29", "mass", in("30", "oz")))))
                .statusCode(422)
                .body(
                        "findings.field",
                        contains(
                                "records[3].animal",
                                "records[4].animal",
                                "records[1].animal",
                                "records[2].outcome",
                                "records[5].mass"));
        assertThat(count()).isEqualTo(before);
    }

    @Test
    void the_next_record_of_an_animal_is_looked_at_beside_the_one_before_it() {
        var number = colony.register(WREN, Colony.animal("male", "2026-06-29"));

        send(List.of(
                        entry(number, "shed", Map.of("on", "2026-07-08")),
                        entry(number, "meal", Map.of("on", "2026-07-10", "outcome", "taken")),
                        entry(number, "measures", Map.of("on", "2026-07-20", "mass", in("50", "g"))),
                        entry(number, "measures", Map.of("on", "2026-07-27", "mass", in("38", "g")))))
                .statusCode(200)
                .body("warnings", hasSize(1))
                .body("warnings[0].field", equalTo("records[3].mass"))
                .body("warnings[0].message", containsString("24 % less than the 50 g of 2026-07-20"));
    }

    @Test
    void more_than_two_hundred_or_none_are_refused() {
        var shed = entry(rack.get(0), "shed", Map.of("on", "2026-07-09"));

        send(new ArrayList<>(java.util.Collections.nCopies(201, shed))).statusCode(422);
        send(List.of()).statusCode(422);
    }

    @Test
    void a_batch_that_is_sent_again_has_one_effect() {
        var key = UUID.randomUUID().toString();
        var batch = Map.of("records", List.of(entry(rack.get(9), "shed", Map.of("on", "2026-07-09"))));
        var before = count();

        for (int time = 1; time <= 2; time++) {
            as(WREN, key).body(batch).post(colony.path("/care-records")).then().statusCode(200);
        }
        assertThat(count()).isEqualTo(before + 1);
        as(WREN, key)
                .body(Map.of("records", List.of(entry(rack.get(9), "shed", Map.of("on", "2026-07-10")))))
                .post(colony.path("/care-records"))
                .then()
                .statusCode(422)
                .body("type", equalTo("/problems/idempotency-key-reused"));
    }

    @Test
    void a_field_that_no_record_has_is_told_with_its_place() {
        var wrong = new HashMap<>(entry(rack.get(0), "shed", Map.of("on", "2026-07-09")));
        wrong.put("colour", "grey");

        send(List.of(wrong)).statusCode(400).body("detail", containsString("records[0].colour"));
    }

    private static ValidatableResponse send(List<? extends Map<String, ?>> records) {
        return colony.post(WREN, "/care-records", Map.of("records", records));
    }

    private static int count() {
        return Integer.parseInt(ask(
                        "select count(*)::text from demebook.care_record r join demebook.population p"
                                + " on p.population_id = r.population_id where p.code = ?",
                        colony.code)
                .get(0));
    }
}
