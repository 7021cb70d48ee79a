package org.demebook.federation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.as;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.vertx.core.Vertx;
import jakarta.inject.Inject;
import java.net.URI;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.demebook.peering.Node;
import org.demebook.peering.Peer;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Participant;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/** Figures for docs/performance.md; run by name, not with the tests: {@code -Dtest=FederationFigures -Ddemebook.figures=true}. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class FederationFigures {
    private static final int SECONDS = Integer.getInteger("demebook.figures.seconds", 20);
    private static final int BACKFILL = Integer.getInteger("demebook.figures.entries", 100_000);
    private static final int AT_ONCE = 500;

    @Inject
    Federations federations;

    @Inject
    Node node;

    @Inject
    Vertx vertx;

    private static int founded;

    private UUID share() {
        var code = "F" + (100 + founded++);
        as("administrator")
                .body(Map.of(
                        "code", code,
                        "name", "Marrowfin Cay",
                        "taxon", "insular dwarf Boa",
                        "locality", "Marrowfin Cay",
                        "birthMode", "live-bearing"))
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        String id = as("administrator")
                .body("{}")
                .post("/api/v1/populations/" + code + "/federation")
                .then()
                .statusCode(201)
                .extract()
                .path("population");
        return UUID.fromString(id);
    }

    private double writesPerSecond(List<UUID> populations, int writersEach) throws InterruptedException {
        var me = federations.nodeId();
        var written = new AtomicLong();
        var writers = Executors.newFixedThreadPool(populations.size() * writersEach);
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
        for (var population : populations) {
            for (int i = 0; i < writersEach; i++) {
                writers.submit(() -> {
                    while (System.nanoTime() < end) {
                        var animal = new AnimalId(UUID.randomUUID(), me);
                        federations.write(population, List.of(Saying.toAll(new Statement.AnimalEntered(animal))));
                        written.incrementAndGet();
                    }
                });
            }
        }
        writers.shutdown();
        assertThat(writers.awaitTermination(SECONDS + 60L, TimeUnit.SECONDS)).isTrue();
        return written.get() / (double) SECONDS;
    }

    @Test
    void signed_durable_writes() throws InterruptedException {
        var populations = new ArrayList<UUID>();
        for (int i = 0; i < 16; i++) {
            populations.add(share());
        }
        writesPerSecond(populations, 2); // warm
        System.out.printf("FIGURE one journal, one writer: %.0f/s%n", writesPerSecond(populations.subList(0, 1), 1));
        System.out.printf("FIGURE one journal, 32 writers: %.0f/s%n", writesPerSecond(populations.subList(1, 2), 32));
        System.out.printf("FIGURE 16 journals, 2 writers each: %.0f/s%n", writesPerSecond(populations, 2));
        System.out.printf("FIGURE 16 journals, 8 writers each: %.0f/s%n", writesPerSecond(populations, 8));
    }

    @Test
    void verified_backfill() throws Exception {
        var population = share();
        var code = "F" + (100 + founded - 1);
        try (var upland =
                new OtherNode(vertx, Files.createTempDirectory("upland").resolve("federation"), "Upland")) {
            var identity = node.identity();
            URI address =
                    URI.create(as("administrator").get("/api/v1/node/identity").path("address"));
            var harbour = new Peer(
                    identity.nodeId(), "Harbour", address, identity.tlsPin(), identity.keys(), Peer.State.ACTIVE);
            upland.node.admit(harbour);
            upland.follow(population, harbour.nodeId());
            as("administrator")
                    .body(Map.of(
                            "address", upland.node.address().toString(),
                            "fingerprint", upland.node.identity.fingerprint(),
                            "name", "Upland"))
                    .post("/api/v1/peers")
                    .then()
                    .statusCode(201);
            as("administrator")
                    .body(Map.of("node", upland.id(), "code", "U"))
                    .post("/api/v1/populations/" + code + "/federation/seats")
                    .then()
                    .statusCode(200);
            upland.pull(population, harbour);
            peer(upland, "setting-aside");
            fill(upland, population);
            peer(upland, "readmission");
            long begin = System.nanoTime();
            upland.node.client.post(harbour, "/federation/populations/%s/hint".formatted(population), new byte[0]);
            while (held(population, upland.id()) <= BACKFILL) {
                assertThat(System.nanoTime() - begin).isLessThan(TimeUnit.MINUTES.toNanos(10));
                Thread.sleep(50);
            }
            System.out.printf(
                    "FIGURE verified backfill of %d entries: %.1f s%n", BACKFILL, (System.nanoTime() - begin) / 1e9);
        }
    }

    private static void peer(OtherNode other, String act) {
        as("administrator")
                .body("{}")
                .post("/api/v1/peers/" + other.id() + "/" + act)
                .then()
                .statusCode(200);
    }

    private void fill(OtherNode upland, UUID population) {
        upland.with(population, part -> {
            for (int written = 0; written < BACKFILL; written += AT_ONCE) {
                var sayings = new ArrayList<Saying>();
                for (int i = 0; i < AT_ONCE; i++) {
                    var animal = new AnimalId(UUID.randomUUID(), upland.id());
                    sayings.add(Saying.toAll(new Statement.AnimalEntered(animal)));
                }
                part.write(sayings);
            }
            return true;
        });
    }

    private long held(UUID population, String journal) {
        return federations.reading(population, Participant::heads).getOrDefault(journal, 0L);
    }
}
