package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.demebook.Colony;
import org.eclipse.microprofile.config.ConfigProvider;
import org.junit.jupiter.api.Test;

/** The year of the demo, entered through the API. What is expected is counted by hand from the sheet and the diary. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class DemoYearTest {
    private static final Path DEMO = Path.of("demo-data");
    private static final String TERN_SKERRY = "/api/v1/populations/TS";

    @Inject
    ObjectMapper json;

    DemoClient client;

    @Test
    void a_year_of_forty_animals_is_entered_month_by_month_and_none_of_it_is_refused() throws Exception {
        client = new DemoClient(ConfigProvider.getConfig().getValue("quarkus.http.test-port", Integer.class), json);
        var tokens = Map.of(WREN, Colony.token(WREN), INES, Colony.token(INES));
        var told = json.readTree(DEMO.resolve("world.json").toFile()).get("year");
        var year = new DemoYear(client, json, DEMO, told, tokens);

        year.begin();
        assertThat(living(WREN)).hasSize(40);

        var months = year.months();
        assertThat(months).hasSize(12);
        for (var month : months) {
            assertThat(year.enter(month)).isPositive();
        }

        animals_are_those_of_the_start_and_the_newcomers_and_the_young_without_the_dead();
        litters_are_four();
        a_litter_of_two_males_is_shared_by_the_days_of_their_meeting();
        one_young_was_sold_to_a_member_and_one_waits_for_its_claim();
        the_young_that_was_sold_was_ready_and_so_are_those_that_are_sexed_and_photographed();
        sorrel_is_due_in_winter();
        tasks_are_left_for_the_next_year();
    }

    private void animals_are_those_of_the_start_and_the_newcomers_and_the_young_without_the_dead() throws Exception {
        // 40, Umber, 10 + 7 + 8 + 5 young; Heath and one of Sage's died
        assertThat(living(WREN)).hasSize(40 + 1 + 30 - 2);
        // Lichen/2 and Lichen/5 left
        assertThat(living(WREN))
                .filteredOn(animal -> animal.at("/held/collection").isTextual())
                .hasSize(69 - 2);
    }

    private void litters_are_four() throws Exception {
        var litters = items(WREN, "/litters");
        assertThat(litters)
                .extracting(
                        litter -> litter.get("born").asText(),
                        litter -> litter.get("liveBorn").asInt(),
                        litter -> litter.get("ovaFound").asInt())
                .containsExactlyInAnyOrder(
                        tuple("2026-06-28", 10, 13),
                        tuple("2026-07-07", 7, 8),
                        tuple("2026-07-10", 8, 10),
                        tuple("2026-07-16", 5, 8));
    }

    private void a_litter_of_two_males_is_shared_by_the_days_of_their_meeting() throws Exception {
        var sage = items(WREN, "/litters").stream()
                .filter(litter -> litter.get("born").asText().equals("2026-07-10"))
                .findFirst()
                .orElseThrow();
        assertThat(sage.at("/sire/kind").asText()).isEqualTo("candidates");
        assertThat(sage.at("/sire/candidates")).hasSize(2);
    }

    private void one_young_was_sold_to_a_member_and_one_waits_for_its_claim() throws Exception {
        assertThat(items(WREN, "/transfers"))
                .extracting(transfer -> transfer.get("state").asText(), transfer -> transfer.get("kind")
                        .asText())
                .containsExactlyInAnyOrder(
                        tuple("accepted", "breeding-loan"), tuple("accepted", "sale"), tuple("handed-out", "sale"));
    }

    private void the_young_that_was_sold_was_ready_and_so_are_those_that_are_sexed_and_photographed() throws Exception {
        var sold = items(WREN, "/transfers").stream()
                .filter(transfer -> transfer.get("kind").asText().equals("sale")
                        && transfer.get("state").asText().equals("accepted"))
                .map(transfer -> transfer.at("/animal/number").asText())
                .findFirst()
                .orElseThrow();
        var onTheDay = client.get(Colony.token(INES), TERN_SKERRY + "/animals/" + sold + "/readiness?on=2026-09-08");
        assertThat(onTheDay.get("ready").asBoolean()).as("%s", onTheDay).isTrue();

        var quill = items(WREN, "/litters").stream()
                .filter(litter -> litter.get("born").asText().equals("2026-07-07"))
                .findFirst()
                .orElseThrow();
        var ready = new ArrayList<Integer>();
        for (int i = 0; i < quill.get("young").size(); i++) {
            var young = quill.get("young").get(i).asText();
            if (client.get(Colony.token(WREN), TERN_SKERRY + "/animals/" + young + "/readiness?on=2026-11-24")
                    .get("ready")
                    .asBoolean()) {
                ready.add(i + 1);
            }
        }
        assertThat(ready).containsExactly(1, 5);
    }

    private void sorrel_is_due_in_winter() throws Exception {
        var gravid = new ArrayList<JsonNode>();
        for (var cycle : client.get(Colony.token(WREN), TERN_SKERRY + "/due-windows?onDay=2026-11-24")) {
            if (cycle.get("gravid").asBoolean()) {
                gravid.add(cycle);
            }
        }
        assertThat(gravid).hasSize(1);
        // the profile's 105 days after 20 October are 2 February; the population's own three litters shift it a little
        assertThat(gravid.get(0).at("/due/expectedOn").asText()).isBetween("2027-01-28", "2027-02-06");
    }

    private void tasks_are_left_for_the_next_year() throws Exception {
        var today = LocalDate.now(ZoneOffset.UTC);
        assertThat(items(WREN, "/care-tasks?limit=200&until=" + today.plusDays(360)))
                .extracting(task -> task.get("kind").asText())
                .contains("own", "next-meal", "test-before-pairing");
        assertThat(items(INES, "/care-tasks?limit=200&until=" + today.plusDays(360)))
                .extracting(task -> task.get("kind").asText())
                .contains("quarantine-end");
    }

    private List<JsonNode> living(String keeper) throws IOException, InterruptedException {
        return items(keeper, "/animals?limit=200").stream()
                .filter(animal -> animal.get("alive").asBoolean())
                .toList();
    }

    private List<JsonNode> items(String keeper, String below) throws IOException, InterruptedException {
        var items = client.get(Colony.token(keeper), TERN_SKERRY + below).get("items");
        return StreamSupport.stream(items.spliterator(), false).toList();
    }
}
