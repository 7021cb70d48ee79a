package org.demebook.federation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.BooleanSupplier;
import org.demebook.Backstage;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Entry;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Refused;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Whereabouts;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** A population shared by this server, on PostgreSQL, and a second node with a disk in memory, over TLS. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class FederationsTest extends SharedWorld {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private Saying entered() {
        return Saying.toAll(new Statement.AnimalEntered(new AnimalId(UUID.randomUUID(), harbour.nodeId())));
    }

    private static void await(BooleanSupplier what) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!what.getAsBoolean()) {
            assertThat(System.nanoTime()).as("it did not come about in time").isLessThan(end);
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private long held(String journal) {
        return federations.reading(population, part -> part.heads().getOrDefault(journal, 0L));
    }

    @Test
    void what_one_node_says_is_soon_known_on_the_other_in_both_directions() {
        join();
        var here = new AnimalId(UUID.randomUUID(), harbour.nodeId());
        await(() -> !federations.reading(population, Participant::fenced));
        federations.write(population, List.of(Saying.toAll(new Statement.AnimalEntered(here))));
        await(() -> upland.hints.get() > 0);
        upland.pull(population, harbour);
        assertThat(upland.<Object>with(population, part -> part.whereabouts(here)))
                .isEqualTo(new Whereabouts.Held(harbour.nodeId(), false));

        var there = new AnimalId(UUID.randomUUID(), upland.id());
        upland.with(population, part -> part.write(List.of(Saying.toAll(new Statement.AnimalEntered(there)))));
        await(() -> federations
                .reading(population, part -> part.whereabouts(there))
                .equals(new Whereabouts.Held(upland.id(), false)));

        get("").statusCode(200)
                .body("population", equalTo(population.toString()))
                .body("founder", equalTo(harbour.nodeId()))
                .body("fenced", equalTo(false))
                .body("nodes.code", containsInAnyOrder("H", "U"))
                .body("nodes.entriesBehind", contains(0, 0))
                .body("nodes.find { it.code == 'U' }.entries", equalTo(2))
                .body("nodes.find { it.code == 'U' }.cosigners", contains(harbour.nodeId()))
                .body("alarms", equalTo(0));
        get("/alarms").statusCode(200).body("$", hasSize(0));
    }

    @Test
    void what_a_transaction_took_back_was_never_said() {
        long before = held(harbour.nodeId());
        var lost = entered();
        assertThatThrownBy(() -> QuarkusTransaction.requiringNew().run(() -> {
                    federations.write(population, List.of(lost));
                    assertThat(held(harbour.nodeId())).isEqualTo(before + 1);
                    throw new IllegalArgumentException("the caller fails");
                }))
                .hasMessage("the caller fails");
        assertThat(held(harbour.nodeId())).isEqualTo(before);

        var kept = federations.write(population, List.of(entered()));
        assertThat(kept).extracting(Entry::seq).containsExactly(before + 1);
        assertThat(entries()).isEqualTo(before + 1);
    }

    @Test
    void whoever_is_refused_does_not_spoil_it_for_those_who_write_at_the_same_moment() throws Exception {
        long before = held(harbour.nodeId());
        var foreign = Saying.toAll(new Statement.AnimalEntered(new AnimalId(UUID.randomUUID(), upland.id())));
        var writers = Executors.newFixedThreadPool(16);
        var written = new ArrayList<Future<List<Entry>>>();
        for (int i = 0; i < 200; i++) {
            var saying = i % 10 == 0 ? foreign : entered();
            Callable<List<Entry>> write = () -> federations.write(population, List.of(saying));
            written.add(writers.submit(write));
        }
        int refused = 0;
        var seqs = new ArrayList<Long>();
        for (var one : written) {
            try {
                seqs.add(one.get().get(0).seq());
            } catch (java.util.concurrent.ExecutionException e) {
                assertThat(e.getCause()).isInstanceOf(Refused.class);
                refused++;
            }
        }
        writers.shutdown();
        assertThat(refused).isEqualTo(20);
        assertThat(seqs).hasSize(180).doesNotHaveDuplicates().allMatch(seq -> seq > before && seq <= before + 180);
        assertThat(entries()).isEqualTo(before + 180);
    }

    @Test
    void entries_can_be_blanked_and_neither_changed_nor_deleted_by_the_server_s_role() throws SQLException {
        federations.write(population, List.of(entered()));
        var app = TestServer.database().app();
        try (var plain = DriverManager.getConnection(TestServer.database().jdbcUrl(), app.name(), app.password());
                var statement = plain.createStatement()) {
            for (var forbidden : List.of(
                    "update demebook.federated_entry set digest = digest",
                    "update demebook.federated_entry set seq = seq + 1",
                    "delete from demebook.federated_entry",
                    "update demebook.federation_alarm set sentence = ''",
                    "delete from demebook.federation_alarm")) {
                assertThatThrownBy(() -> statement.executeUpdate(forbidden))
                        .as(forbidden)
                        .hasMessageContaining("permission denied");
            }
            assertThat(statement.executeUpdate("update demebook.federated_entry set entry = null, salt = null"))
                    .as("and behind the wall there is nothing to blank")
                    .isZero();
        }
    }

    @Test
    void an_animal_is_named_once_and_every_node_is_told_that_it_was_registered() {
        var number = colony.female("wren");
        var animal = UUID.fromString(Backstage.ask("select id::text from demebook.animal where number = ?", number)
                .get(0));
        assertThat(federations.animalId(population, animal)).isEmpty();
        var name =
                QuarkusTransaction.requiringNew().call(() -> federations.name(population, UUID.randomUUID(), animal));
        var again =
                QuarkusTransaction.requiringNew().call(() -> federations.name(population, UUID.randomUUID(), animal));
        assertThat(again).isEqualTo(name);
        assertThat(federations.animalId(population, animal)).contains(name);
        assertThat(federations.localId(population, name)).contains(animal);
        assertThat(federations.<Object>reading(population, part -> part.whereabouts(name)))
                .isEqualTo(new Whereabouts.Held(harbour.nodeId(), false));
    }

    @Test
    void a_node_without_a_seat_is_told_nothing_not_even_whether_the_population_is_here() {
        upland.follow(population, harbour.nodeId());
        upland.pull(population, harbour);
        assertThat(upland.<Optional<?>>with(population, Participant::charter)).isEmpty();
        var nowhere = UUID.randomUUID();
        assertThat(answerTo(population)).isEqualTo(answerTo(nowhere));
    }

    private String answerTo(UUID asked) {
        try {
            upland.node.client.get(
                    harbour,
                    "/federation/populations/%s/journals/%s/entries?after=0&most=10".formatted(asked, harbour.nodeId()),
                    1_000);
            return "entries";
        } catch (org.demebook.peering.PeerTrouble trouble) {
            return trouble.status() + " " + trouble.error();
        }
    }

    @Test
    void seats_have_codes_of_their_own_and_are_given_to_nodes_that_were_let_in() {
        post("/seats", Map.of("node", upland.id(), "code", "H"))
                .statusCode(409)
                .body("type", equalTo("/problems/seat-taken"));
        post("/seats", Map.of("node", "A".repeat(43), "code", "X"))
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-peer"));
        post("", Map.of()).statusCode(409).body("type", equalTo("/problems/already-shared"));
        post("/nodes/" + upland.id() + "/setting-aside", Map.of())
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-peer"));
        join();
        post("/seats", Map.of("node", upland.id(), "code", "UP"))
                .statusCode(200)
                .body("nodes.code", containsInAnyOrder("H", "UP"));
        assertThat(federations.nodeOfSeat(population, "UP")).contains(upland.id());
        assertThat(federations.codeOfNode(population, upland.id())).contains("UP");
        post("/nodes/" + upland.id() + "/setting-aside", Map.of())
                .statusCode(200)
                .body("nodes.find { it.code == 'UP' }.setAside", equalTo(true));
        assertThat(federations.<Object>reading(population, Participant::others))
                .asString()
                .isEqualTo("[]");
        post("/nodes/" + upland.id() + "/readmission", Map.of()).statusCode(200);
        assertThat(federations.<Object>reading(population, Participant::others))
                .asString()
                .contains(upland.id());
    }

    private long entries() {
        return Long.parseLong(Backstage.ask(
                        "select count(*)::text from demebook.federated_entry where population_id = ? and node_id = ?",
                        population,
                        harbour.nodeId())
                .get(0));
    }
}
