package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.start.LocalPostgres.Durability;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** kill -9 of the packaged server on its durable database: what was acknowledged is there, and nothing is half done. */
class KilledServerIT {
    private static final Path STATE = Path.of("target", "killed-state").toAbsolutePath();
    private static final String PASSWORD = "a long walk on the cay";
    private static final String POPULATION = "/api/v1/populations/KS";
    private static final Duration READY = Duration.ofSeconds(10);

    @BeforeEach
    void onAnEmptyFolder() {
        TestServer.deleteAll(STATE);
    }

    @Test
    void a_server_killed_in_the_middle_of_an_import_has_imported_nothing_and_takes_it_again() throws Exception {
        var sheet = sheet(20_000);
        String run;
        try (var server = ServerProcess.start(STATE)) {
            var wren = foundPopulation(server);
            run = importSheet(server, wren, sheet);
            awaitProgress(server, wren, run);
            server.kill();
        }
        try (var server = ServerProcess.start(STATE)) {
            assertThat(server.startedIn).isLessThan(READY);
            var wren = server.signIn("wren", PASSWORD);
            server.as(wren)
                    .get(POPULATION + "/imports/" + run)
                    .then()
                    .statusCode(200)
                    .body("state", org.hamcrest.Matchers.equalTo("interrupted"));
            List<Object> animals = server.as(wren).get(POPULATION + "/animals").path("items");
            assertThat(animals).isEmpty();

            awaitDone(server, wren, importSheet(server, wren, sheet));
        }
        lookInside(database -> {
            assertThat(number(database, "select count(*) from demebook.animal")).isEqualTo(20_000);
            assertJournalIsGapless(database);
        });
    }

    @Test
    void every_transfer_that_was_acknowledged_before_the_kill_is_there_and_none_is_half_done() throws Exception {
        int transfers = 500;
        Set<String> acknowledged = ConcurrentHashMap.newKeySet();
        try (var server = ServerProcess.start(STATE)) {
            var wren = foundPopulation(server);
            var ines = server.openAccount("ines", PASSWORD);
            server.as(wren)
                    .body(Map.of("name", "ines", "role", "member"))
                    .post(POPULATION + "/members")
                    .then()
                    .statusCode(200);
            server.as(ines)
                    .body(Map.of("label", "south"))
                    .post(POPULATION + "/collections")
                    .then()
                    .statusCode(201);
            awaitDone(server, wren, importSheet(server, wren, sheet(transfers)));
            var offers = offerAll(server, wren, numbers(server, wren, transfers));

            acceptUntilKilled(server, ines, offers, acknowledged);
        }
        assertThat(acknowledged).hasSizeGreaterThan(50).hasSizeLessThan(transfers);

        try (var server = ServerProcess.start(STATE)) {
            assertThat(server.startedIn).isLessThan(READY);
            var ines = server.signIn("ines", PASSWORD);
            for (var transfer : acknowledged) {
                server.as(ines)
                        .get(POPULATION + "/transfers/" + transfer)
                        .then()
                        .statusCode(200)
                        .body("state", org.hamcrest.Matchers.equalTo("accepted"));
            }
        }
        lookInside(database -> {
            assertThat(number(
                            database,
                            "select count(*) from demebook.transfer t join demebook.animal a"
                                    + " on a.population_id = t.population_id and a.id = t.animal_id"
                                    + " where (t.state = 'accepted') <> (a.collection_id = t.to_collection_id)"
                                    + " and t.to_collection_id is not null"))
                    .as("transfers that moved no animal, or animals that moved without one")
                    .isZero();
            assertThat(number(database, "select count(*) from demebook.transfer where state = 'accepted'"))
                    .isGreaterThanOrEqualTo(acknowledged.size());
            assertThat(number(database, "select count(*) from demebook.journal_entry where type = 'transfer-accepted'"))
                    .isEqualTo(number(database, "select count(*) from demebook.transfer where state = 'accepted'"));
            assertJournalIsGapless(database);
        });
    }

    @Test
    void a_second_server_on_the_same_folder_is_refused() throws Exception {
        try (var first = ServerProcess.start(STATE)) {
            assertThat(first.isAlive()).isTrue();
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> ServerProcess.start(STATE)))
                    .hasMessageContaining("Demebook cannot start.")
                    .hasMessageContaining(STATE.toString());
            first.anonymous().get("/api/v1/node").then().statusCode(200);
        }
    }

    @Test
    void a_server_that_is_told_to_end_takes_its_database_with_it() throws Exception {
        var running = STATE.resolve("postgresql").resolve("data").resolve("postmaster.pid");
        try (var server = ServerProcess.start(STATE)) {
            assertThat(server.isAlive()).isTrue();
            assertThat(running).exists();
        }
        assertThat(running).doesNotExist();
    }

    // ── the story's steps ────────────────────────────────────────────────────────────────────────────────────────────

    private static String foundPopulation(ServerProcess server) {
        var wren = server.openAccount("wren", PASSWORD);
        server.as(wren)
                .body(Map.of(
                        "code", "KS",
                        "name", "Killed",
                        "taxon", "insular dwarf Boa",
                        "locality", "Marrowfin Cay",
                        "birthMode", "live-bearing"))
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        server.as(wren)
                .body(Map.of("label", "north"))
                .post(POPULATION + "/collections")
                .then()
                .statusCode(201);
        return wren;
    }

    /** Animals without parents, in the columns of the import. */
    private static byte[] sheet(int rows) {
        var csv = new StringBuilder("reference,sex,born,origin\n");
        for (int i = 1; i <= rows; i++) {
            csv.append("K-").append(i).append(i % 2 == 0 ? ",female,2020,unknown\n" : ",male,2020,unknown\n");
        }
        return csv.toString().getBytes();
    }

    private static String importSheet(ServerProcess server, String token, byte[] sheet) {
        return server.as(token)
                .contentType("text/csv")
                .body(sheet)
                .post(POPULATION + "/imports")
                .then()
                .statusCode(202)
                .extract()
                .path("id");
    }

    private static void awaitProgress(ServerProcess server, String token, String run) throws InterruptedException {
        for (int i = 0; i < 3000; i++) {
            var seen = server.as(token).get(POPULATION + "/imports/" + run);
            assertThat(seen.<String>path("state"))
                    .as("it must still be at work when it is killed")
                    .isEqualTo("running");
            if (seen.<Integer>path("rowsDone") > 0) {
                return;
            }
            Thread.sleep(5);
        }
        throw new AssertionError("no progress was ever seen");
    }

    private static void awaitDone(ServerProcess server, String token, String run) throws InterruptedException {
        for (int i = 0; i < 1200; i++) {
            var state = server.as(token).get(POPULATION + "/imports/" + run).<String>path("state");
            if (!state.equals("running")) {
                assertThat(state).isEqualTo("done");
                return;
            }
            Thread.sleep(50);
        }
        throw new AssertionError("the import did not end");
    }

    private static List<String> numbers(ServerProcess server, String token, int count) {
        var numbers = new ArrayList<String>();
        var address = POPULATION + "/animals?limit=200";
        while (address != null) {
            var page = server.as(token).get(address);
            numbers.addAll(page.<List<String>>path("items.number"));
            var link = page.header("Link");
            address = link == null ? null : link.substring(1, link.indexOf('>'));
        }
        assertThat(numbers).hasSize(count);
        return numbers;
    }

    private static List<String> offerAll(ServerProcess server, String wren, List<String> numbers)
            throws InterruptedException {
        var offers = new ArrayList<String>();
        var workers = Executors.newFixedThreadPool(8);
        for (var number : numbers) {
            workers.submit(() -> {
                String id = server.as(wren)
                        .body(Map.of("animal", number, "kind", "gift", "to", "ines"))
                        .post(POPULATION + "/transfers")
                        .then()
                        .statusCode(201)
                        .extract()
                        .path("transfer.id");
                synchronized (offers) {
                    offers.add(id);
                }
            });
        }
        workers.shutdown();
        assertThat(workers.awaitTermination(120, TimeUnit.SECONDS)).isTrue();
        assertThat(offers).hasSize(numbers.size());
        return offers;
    }

    private static void acceptUntilKilled(
            ServerProcess server, String ines, List<String> offers, Set<String> acknowledged)
            throws InterruptedException {
        var workers = Executors.newFixedThreadPool(offers.size());
        var answered = new AtomicInteger();
        var refused = new java.util.concurrent.ConcurrentLinkedQueue<String>();
        for (var offer : offers) {
            workers.submit(() -> {
                var response = server.as(ines).body(Map.of()).post(POPULATION + "/transfers/" + offer + "/acceptance");
                if (response.statusCode() == 200) {
                    acknowledged.add(offer);
                } else {
                    refused.add(response.asString());
                }
                answered.incrementAndGet();
            });
        }
        workers.shutdown();
        while (answered.get() < 150) {
            Thread.sleep(1);
        }
        server.kill();
        assertThat(workers.awaitTermination(60, TimeUnit.SECONDS)).isTrue();
        assertThat(refused).isEmpty();
    }

    // ── behind the server's back ─────────────────────────────────────────────────────────────────────────────────────

    private interface Look {
        void at(Connection database) throws SQLException;
    }

    private static void lookInside(Look look) throws SQLException, IOException {
        try (var postgres = LocalPostgres.start(STATE, Durability.FULL);
                var database = DriverManager.getConnection(
                        postgres.jdbcUrl(),
                        postgres.owner().name(),
                        postgres.owner().password())) {
            look.at(database);
        }
    }

    private static long number(Connection database, String query) throws SQLException {
        try (var statement = database.createStatement();
                var row = statement.executeQuery(query)) {
            row.next();
            return row.getLong(1);
        }
    }

    private static void assertJournalIsGapless(Connection database) throws SQLException {
        assertThat(
                        number(
                                database,
                                "select count(*) from demebook.journal_head h where h.seq <>"
                                        + " (select count(*) from demebook.journal_entry e where e.population_id = h.population_id)"
                                        + " or h.seq <> (select max(e.seq) from demebook.journal_entry e where e.population_id = h.population_id)"))
                .isZero();
    }
}
