package org.demebook.census;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Backstage.ask;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.animal;
import static org.demebook.Colony.anonymous;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.empty;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.everyItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.Colony;
import org.demebook.Marrowfin;
import org.demebook.census.CensusFacts.CountsReleased;
import org.demebook.census.CountReleaseView.Cell;
import org.demebook.journal.Journal;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CountReleaseResourceTest {
    private static final String DAY = "2025-06-01";

    @Inject
    Journal journal;

    @Test
    void what_three_keepers_share_is_told_and_what_two_have_is_withheld_with_its_bounds() {
        var colony = threeKeepers();
        colony.register(WREN, animal("unknown", "2025-01-15"));
        colony.register(INES, animal("unknown", "2025-01-15"));
        for (var keeper : new String[] {WREN, INES, DOV}) {
            colony.register(keeper, animal("unknown", "2019-06-01"));
        }

        var release = release(colony, DAY)
                .statusCode(201)
                .header("Location", containsString("/populations/" + colony.code + "/count-releases/" + DAY))
                .body("population", equalTo(colony.code))
                .body("name", equalTo("Marrowfin Cay"))
                .body("taxon", equalTo("insular dwarf Boa"))
                .body("countedOn", equalTo(DAY))
                .body("keepers", equalTo("3 to 5"))
                .body(cell("all", "adult", "count"), equalTo(15))
                .body(cell("all", "adult", "informationWithheld"), nullValue())
                .body(cell("unknown", "young", "count"), nullValue())
                .body(cell("unknown", "young", "informationWithheld"), startsWith("count withheld"))
                .body(cell("all", "all", "count"), equalTo(23));
        int lowest = release.extract().path(cell("unknown", "young", "lowest"));
        Integer highest = release.extract().path(cell("unknown", "young", "highest"));
        assertThat(lowest).isLessThan(2);
        assertThat(highest == null || highest > 2).isTrue();
    }

    @Test
    void where_all_is_told_so_are_the_totals_and_the_decades() {
        var colony = threeKeepers();
        release(colony, DAY)
                .body(cell("all", "all", "count"), equalTo(18))
                .body(cell("all", "young", "count"), equalTo(6))
                .body(cell("female", "all", "count"), equalTo(9))
                .body("cells.find { it.born == '2010s' }.count", equalTo(12))
                .body("cells.find { it.born == '2020s' }.count", equalTo(6))
                .body("cells.informationWithheld", everyItem(nullValue()));
    }

    @Test
    void the_parameters_are_not_published() {
        var colony = threeKeepers();
        release(colony, DAY)
                .body("method", containsString("too few keepers"))
                .body("method", not(containsString("three")))
                .body("method", not(containsString("%")));
    }

    @Test
    void a_release_that_would_tell_nothing_is_refused() {
        var colony = threeKeepers();
        colony.post(WREN, "/collections", Map.of("label", "the shed", "sharedWith", List.of(DOV)))
                .statusCode(201);

        release(colony, DAY)
                .statusCode(409)
                .body("type", equalTo("/problems/counts-not-safe"))
                .body("detail", containsString("fewer than 3 keepers"))
                .body("detail", containsString(DAY));
        open(colony.code, "").body("items", empty());
    }

    // E4: somebody's litter is the difference of two totals
    @Test
    void a_litter_between_two_releases_is_not_their_difference() {
        var colony = threeKeepers();
        release(colony, DAY).body(cell("all", "all", "count"), equalTo(18));
        for (int young = 0; young < 2; young++) {
            colony.register(DOV, animal("female", "2025-06-02"));
        }
        release(colony, "2025-06-03")
                .statusCode(201)
                .body(cell("female", "young", "count"), nullValue())
                .body(cell("all", "all", "count"), nullValue())
                .body(cell("male", "adult", "count"), equalTo(6));
    }

    @Test
    void where_nothing_changed_the_same_is_told() {
        var colony = threeKeepers();
        var first = release(colony, DAY).extract().jsonPath().getList("cells", Cell.class);
        assertThat(release(colony, "2025-06-03").extract().jsonPath().getList("cells", Cell.class))
                .isEqualTo(first);
    }

    // E3
    @Test
    void a_keeper_may_do_without_protection() {
        var colony = threeKeepers();
        colony.register(WREN, animal("unknown", "2025-01-15"));
        colony.get(WREN, "/count-waiver").body("waived", equalTo(false));
        as(WREN).body(Map.of("waived", true))
                .put(colony.path("/count-waiver"))
                .then()
                .statusCode(200)
                .body("waived", equalTo(true));
        colony.get(WREN, "/count-waiver").body("waived", equalTo(true));

        release(colony, DAY)
                .body(cell("unknown", "adult", "count"), equalTo(0))
                .body(cell("male", "young", "count"), equalTo(3))
                .body(cell("all", "all", "count"), equalTo(19));
    }

    @Test
    void coordinators_set_the_parameters_and_nobody_else_sees_them() {
        var colony = threeKeepers();
        colony.get(INES, "/count-rules").statusCode(403).body("type", equalTo("/problems/not-allowed"));
        var read = colony.get(WREN, "/count-rules")
                .statusCode(200)
                .body("fewestKeepers", equalTo(3))
                .body("percent", equalTo(20));
        var four = Map.of("fewestKeepers", 4, "percent", 25);
        as(WREN).body(four)
                .put(colony.path("/count-rules"))
                .then()
                .statusCode(428)
                .body("type", equalTo("/problems/revision-missing"));
        as(WREN).header("If-Match", read.extract().header("ETag"))
                .body(four)
                .put(colony.path("/count-rules"))
                .then()
                .statusCode(200)
                .body("percent", equalTo(25));
        as(WREN).header("If-Match", read.extract().header("ETag"))
                .body(four)
                .put(colony.path("/count-rules"))
                .then()
                .statusCode(412);
        as(WREN).header("If-Match", "\"1\"")
                .body(Map.of("fewestKeepers", 2, "percent", 0))
                .put(colony.path("/count-rules"))
                .then()
                .statusCode(422);

        // four are asked for, three there are
        release(colony, DAY).statusCode(409).body("type", equalTo("/problems/counts-not-safe"));
    }

    // the worked pedigree: gene diversity 551/648 = .8503, founder genome equivalents 324/97 = 3.340
    @Test
    void gene_diversity_and_founder_genome_equivalents_are_told_to_two_figures() {
        release(Marrowfin.settled().colony, DAY)
                .body("geneDiversity", equalTo("0.85"))
                .body("founderGenomeEquivalents", equalTo("3.3"));
    }

    @Test
    void animals_are_counted_as_they_were_on_the_day() {
        var colony = threeKeepers();
        for (var keeper : new String[] {WREN, INES, DOV}) {
            var gone = animal("female", "2019-06-01");
            gone.put("died", "2025-07-15");
            colony.register(keeper, gone);
            colony.register(keeper, animal("female", "2025-06-15"));
        }
        release(colony, DAY).body(cell("female", "adult", "count"), equalTo(9));
        release(colony, "2025-07-31")
                .body(cell("female", "adult", "count"), equalTo(6))
                .body(cell("female", "young", "count"), equalTo(6));
    }

    @Test
    void an_animal_on_its_way_to_somebody_else_is_counted_once_with_whose_it_is() {
        var colony = threeKeepers();
        var sold = colony.register(WREN, animal("female", "2019-06-01"));
        colony.post(WREN, "/transfers", Map.of("animal", sold, "kind", "sale", "withClaimCode", true))
                .statusCode(201);
        release(colony, DAY).body(cell("female", "adult", "count"), equalTo(7));
    }

    @Test
    void an_animal_reported_in_two_places_is_counted_once() {
        var colony = threeKeepers();
        colony.male(WREN);
        colony.male(DOV);
        var female = soldToInes(colony, colony.female(WREN));
        var male = soldToInes(colony, colony.male(WREN));
        var before = release(colony, "2025-06-01").extract();
        Integer females = before.path(cell("female", "adult", "count"));
        Integer males = before.path(cell("male", "adult", "count"));
        assertThat(females).isNotNull();
        assertThat(males).isNotNull();

        var disputes = Stream.of(female, male)
                .map(animal -> colony.post(WREN, "/animals/" + animal + "/disputes", Map.of("seenOn", "2025-09-05"))
                        .statusCode(201)
                        .extract()
                        .<String>path("id"))
                .toList();
        release(colony, "2025-06-02")
                .body(cell("female", "adult", "count"), equalTo(females))
                .body(cell("male", "adult", "count"), equalTo(males));

        disputes.forEach(id ->
                colony.post(WREN, "/disputes/" + id + "/withdrawal", Map.of()).statusCode(200));
        release(colony, "2025-06-03").body(cell("male", "adult", "count"), equalTo(males));
    }

    private static String soldToInes(Colony colony, String animal) {
        String id = colony.post(WREN, "/transfers", Map.of("animal", animal, "kind", "sale", "to", INES))
                .statusCode(201)
                .extract()
                .path("transfer.id");
        colony.post(INES, "/transfers/" + id + "/acceptance", Map.of()).statusCode(200);
        return animal;
    }

    @Test
    void today_is_counted_when_no_day_is_said() {
        var colony = threeKeepers();
        var before = LocalDate.now(ZoneOffset.UTC);
        var countedOn = colony.post(WREN, "/count-releases", Map.of())
                .statusCode(201)
                .extract()
                .<String>path("countedOn");
        assertThat(LocalDate.parse(countedOn)).isBetween(before, LocalDate.now(ZoneOffset.UTC));
    }

    @Test
    void a_release_is_public_and_never_changes() {
        var colony = threeKeepers();
        var released = release(colony, DAY).extract().asString();
        colony.female(WREN);

        assertThat(open(colony.code, "/" + DAY).statusCode(200).extract().asString())
                .isEqualTo(released);
        release(colony, DAY).statusCode(409).body("type", equalTo("/problems/day-counted-already"));
        assertThat(open(colony.code, "/" + DAY).extract().asString()).isEqualTo(released);
    }

    @Test
    void releases_are_listed_with_the_latest_first() {
        var colony = threeKeepers();
        for (var day : new String[] {"2024-06-01", "2025-06-01", "2023-06-01"}) {
            release(colony, day).statusCode(201);
        }
        var first = open(colony.code, "?limit=2")
                .statusCode(200)
                .body("items.countedOn", equalTo(List.of("2025-06-01", "2024-06-01")));
        open(colony.code, "?limit=2&after=" + first.extract().path("next"))
                .body("items.countedOn", equalTo(List.of("2023-06-01")))
                .body("next", nullValue());
    }

    @Test
    void a_release_can_be_had_as_a_sheet() {
        var colony = threeKeepers();
        release(colony, DAY);
        var lines = open(colony.code, "/" + DAY + "/table.csv")
                .statusCode(200)
                .contentType("text/csv")
                .extract()
                .asString()
                .split("\r\n");
        assertThat(lines)
                .hasSize(1 + 20 + 3)
                .startsWith("population,countedOn,sex,age,born,region,count,lowest,highest,informationWithheld")
                .contains("%s,%s,female,adult,all,all,6,,,".formatted(colony.code, DAY))
                .contains("%s,%s,all,all,2010s,all,12,,,".formatted(colony.code, DAY));
    }

    @Test
    void a_release_can_be_had_as_a_darwin_core_archive() {
        var colony = threeKeepers();
        release(colony, DAY);
        var archive = open(colony.code, "/" + DAY + "/darwin-core.zip")
                .statusCode(200)
                .contentType("application/zip")
                .extract()
                .asByteArray();
        assertThat(DarwinCoreArchiveTest.unpack(archive).get("occurrence.csv"))
                .contains("captive")
                .contains("insular dwarf Boa");
    }

    @Test
    void a_population_without_releases_and_one_that_does_not_exist_answer_alike() {
        var colony = Colony.found();
        for (var below : List.of("", "/" + DAY, "/" + DAY + "/table.csv", "/" + DAY + "/darwin-core.zip")) {
            var silent = open(colony.code, below).extract();
            var absent = open("NOBODY", below).extract();
            assertThat(silent.statusCode()).isEqualTo(absent.statusCode());
            assertThat(silent.asString().replace(colony.code, "NOBODY")).isEqualTo(absent.asString());
        }
        open(colony.code, "").statusCode(200).body("items", empty());
        open(colony.code, "/" + DAY).statusCode(404).body("type", equalTo("/problems/no-such-release"));
    }

    @Test
    void no_id_leaves_the_room() {
        var colony = threeKeepers();
        release(colony, DAY);
        for (var below : List.of("", "/" + DAY, "/" + DAY + "/table.csv")) {
            assertThat(open(colony.code, below).extract().asString())
                    .doesNotContainPattern("[0-9a-f]{8}-[0-9a-f]{4}-")
                    .doesNotContain(colony.code + "-H-", WREN, INES, DOV);
        }
    }

    @Test
    void only_a_coordinator_releases_counts_and_only_of_a_day_that_has_come() {
        var colony = Colony.found();
        colony.post(INES, "/count-releases", Map.of()).statusCode(403).body("type", equalTo("/problems/not-allowed"));
        colony.post(OUTSIDER, "/count-releases", Map.of())
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-population"));
        anonymous()
                .body(Map.of())
                .post(colony.path("/count-releases"))
                .then()
                .statusCode(401)
                .body("type", equalTo("/problems/not-signed-in"));
        release(colony, LocalDate.now(ZoneOffset.UTC).plusDays(2).toString())
                .statusCode(422)
                .body("type", equalTo("/problems/date-in-future"));
    }

    @Test
    void what_cannot_be_read_is_told() {
        for (var below : List.of("/yesterday", "?limit=0", "?after=MjAyNQ", "/2025-02-30/table.csv")) {
            open("NOBODY", below).statusCode(400).body("type", equalTo("/problems/bad-parameter"));
        }
    }

    @Test
    void one_idempotency_key_releases_once() {
        var colony = threeKeepers();
        var key = UUID.randomUUID().toString();
        var one = as(WREN, key).body(Map.of("countedOn", DAY)).post(colony.path("/count-releases"));
        var two = as(WREN, key).body(Map.of("countedOn", DAY)).post(colony.path("/count-releases"));
        assertThat(two.statusCode()).isEqualTo(201);
        assertThat(two.asByteArray()).isEqualTo(one.asByteArray());
        open(colony.code, "").body("items", hasSize(1));
    }

    @Test
    void a_journal_that_is_played_again_gives_the_same_release() throws SQLException {
        var colony = threeKeepers();
        var released = release(colony, DAY).extract().asString();
        try (var connection = asOwner()) {
            var populationId = populationId(connection, colony.code);
            var entries = journal.entries(populationId, 0, 1000);
            forget(connection, populationId);
            open(colony.code, "/" + DAY).statusCode(404);

            journal.replay(populationId, colony.code, entries);
        }
        assertThat(open(colony.code, "/" + DAY).statusCode(200).extract().asString())
                .isEqualTo(released);
    }

    // as the journal held it before the animals were kept: no name, no taxon, no births, no animals
    @Test
    void a_release_of_before_is_read_and_is_known_to_the_next() throws SQLException {
        var colony = threeKeepers();
        var old = new CountsReleased(
                colony.code,
                null,
                null,
                LocalDate.parse(DAY),
                "3 to 5",
                List.of(new Cell("all", "all", null, null, 18, null, null, null)),
                null,
                null,
                "counted",
                null);
        try (var connection = asOwner()) {
            var populationId = populationId(connection, colony.code);
            QuarkusTransaction.requiringNew().run(() -> {
                journal.open(populationId);
                journal.record(populationId, new UUID(0, 1), old);
            });
        }
        open(colony.code, "/" + DAY)
                .statusCode(200)
                .body("cells[0].count", equalTo(18))
                .body("name", nullValue());
        open(colony.code, "/" + DAY + "/table.csv").statusCode(200);
        open(colony.code, "/" + DAY + "/darwin-core.zip").statusCode(200);

        colony.register(DOV, animal("female", "2025-06-02"));
        release(colony, "2025-06-03")
                .statusCode(201)
                .body(cell("all", "all", "count"), nullValue())
                .body(cell("male", "adult", "count"), equalTo(6));
    }

    @Test
    void the_animals_behind_a_release_stay_in_the_house() {
        var colony = threeKeepers();
        release(colony, DAY).body("counted", nullValue());
        assertThat(ask(
                        "select b.body from demebook.count_basis b join demebook.population p"
                                + " on p.population_id = b.population_id where p.code = ?",
                        colony.code))
                .singleElement()
                .asString()
                .contains(colony.code + "-H-")
                .contains("\"holder\"");
    }

    // ── helpers ──────────────────────────────────────────────────────────────────────────────────────────────────────

    private static Colony threeKeepers() {
        var colony = Colony.found();
        CountStory.everyoneHasSome(colony);
        return colony;
    }

    private static ValidatableResponse release(Colony colony, String day) {
        return colony.post(WREN, "/count-releases", new HashMap<>(Map.of("countedOn", day)));
    }

    private static ValidatableResponse open(String code, String below) {
        return anonymous()
                .get("/api/v1/populations/" + code + "/count-releases" + below)
                .then();
    }

    private static String cell(String sex, String age, String field) {
        return "cells.find { it.sex == '%s' && it.age == '%s' && it.born == 'all' && it.region == 'all' }.%s"
                .formatted(sex, age, field);
    }

    private static Connection asOwner() throws SQLException {
        var postgres = TestServer.database();
        return DriverManager.getConnection(
                postgres.jdbcUrl(), postgres.owner().name(), postgres.owner().password());
    }

    private static UUID populationId(Connection connection, String code) throws SQLException {
        try (var query =
                connection.prepareStatement("select population_id from demebook.journal_head where code = ?")) {
            query.setString(1, code);
            try (var row = query.executeQuery()) {
                row.next();
                return row.getObject(1, UUID.class);
            }
        }
    }

    private static void forget(Connection connection, UUID populationId) throws SQLException {
        var tables = List.of(
                "count_basis",
                "count_release",
                "animal",
                "serial_counter",
                "disclosure",
                "sharing_choice",
                "consent_grant",
                "collection_keeper",
                "collection",
                "membership",
                "population",
                "journal_entry",
                "journal_head");
        for (var table : tables) {
            try (var delete =
                    connection.prepareStatement("delete from demebook." + table + " where population_id = ?")) {
                delete.setObject(1, populationId);
                delete.executeUpdate();
            }
        }
    }
}
