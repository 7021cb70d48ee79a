package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.hamcrest.Matchers.equalTo;

import io.vertx.core.Vertx;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.demebook.peering.Conversation;
import org.demebook.peering.NodeIdentity;
import org.demebook.peering.Peer;
import org.demebook.peering.PeerTrouble;
import org.demebook.peering.TestNode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The packaged server as one node, and another node in this process: keys at the first start, a lost key, a folder that others can read. */
class FederationStartIT {
    /** Not a temporary folder of the test's own user: PostgreSQL runs as another one. */
    private final Path folder = Path.of("target", "federation-state").toAbsolutePath();

    private final Vertx vertx = Vertx.vertx();

    @BeforeEach
    void onAnEmptyFolder() {
        TestServer.deleteAll(folder);
    }

    private ServerProcess start(int port, String... more) throws Exception {
        var settings = new ArrayList<>(List.of("-Ddemebook.federation=on", "-Ddemebook.federation.port=" + port));
        settings.addAll(List.of(more));
        return ServerProcess.start(folder.resolve("node"), settings.toArray(String[]::new));
    }

    @Test
    void a_node_of_its_own_process_keeps_its_id_through_kill_and_lost_key_and_its_secrets_to_itself() throws Exception {
        int port = ServerProcess.freePort();
        var keys = folder.resolve("node").resolve("federation");
        try (var upland = new TestNode(vertx, folder.resolve("upland"), "Upland", new Nothing())) {
            String nodeId;
            try (var server = start(port)) {
                var administrator = server.signIn("administrator", ServerProcess.ADMINISTRATOR_PASSWORD);
                server.as(administrator)
                        .body(Map.of(
                                "address", upland.address().toString(),
                                "fingerprint", upland.identity.fingerprint(),
                                "name", "Upland"))
                        .post("/api/v1/peers")
                        .then()
                        .statusCode(201);
                nodeId = server.as(administrator)
                        .get("/api/v1/node/identity")
                        .then()
                        .statusCode(200)
                        .body("address", equalTo("https://127.0.0.1:" + port))
                        .extract()
                        .path("nodeId");
                assertThat(answer(upland, keys, port)).isEqualTo("404 not-a-member");
                server.kill();
            }
            Files.move(keys.resolve("recovery.key"), folder.resolve("safe"));
            try (var server = start(port)) {
                assertThat(NodeIdentity.in(keys).nodeId()).isEqualTo(nodeId);
                assertThat(answer(upland, keys, port)).isEqualTo("404 not-a-member");
                server.kill();
            }
            Files.delete(keys.resolve("node.key"));
            refusedWith(port, "node.key");
            try (var server = start(port, "-Ddemebook.federation.recovery-key=" + folder.resolve("safe"))) {
                assertThat(NodeIdentity.in(keys).nodeId()).isEqualTo(nodeId);
                assertThat(NodeIdentity.in(keys).keys().keys()).hasSize(2);
                assertThat(answer(upland, keys, port)).isEqualTo("404 not-a-member");
                assertThat(server.isAlive()).isTrue();
            }
            Files.setPosixFilePermissions(keys.resolve("node.key"), PosixFilePermissions.fromString("rw-r--r--"));
            refusedWith(port, "chmod -R go=");
        } finally {
            vertx.close();
        }
        var log = Files.readString(folder.resolve("node").resolve("server.log"));
        assertThat(log).contains("Move ", "recovery.key");
        for (var file : new String[] {"federation/node.key", "federation/recovery.key", "../safe"}) {
            var seed = Files.readString(folder.resolve("node").resolve(file)).split("\"")[3];
            assertThat(seed).hasSize(43);
            assertThat(log).doesNotContain(seed.substring(0, 20));
        }
    }

    /** The server does not start, and says why in sentences. */
    private void refusedWith(int port, String words) throws Exception {
        var log = folder.resolve("node").resolve("server.log");
        var before = Files.size(log);
        assertThatThrownBy(() -> start(port)).isInstanceOf(IllegalStateException.class);
        var said = new String(Files.readAllBytes(log), StandardCharsets.UTF_8).substring((int) before);
        assertThat(said).contains("Demebook cannot start.").contains(words).doesNotContain("\tat org.demebook");
    }

    /** What the server says to upland when it is asked for entries. */
    private static String answer(TestNode upland, Path keys, int port) {
        var identity = NodeIdentity.in(keys);
        var server = new Peer(
                identity.nodeId(),
                "Harbour",
                URI.create("https://127.0.0.1:" + port),
                identity.tlsPin(),
                identity.keys(),
                Peer.State.ACTIVE);
        var target = "/federation/populations/%s/journals/%s/entries"
                .formatted(UUID.fromString("0197f3a2-0000-7000-8000-000000000003"), identity.nodeId());
        var trouble = catchThrowableOfType(PeerTrouble.class, () -> upland.client.get(server, target, 1_000));
        return trouble.status() + " " + trouble.error();
    }

    /** Of the other node nothing is asked here. */
    private static final class Nothing implements Conversation {
        @Override
        public Reply entries(String asking, UUID population, String node, long after, int most, String start) {
            return Reply.error(404, "no-such-journal");
        }

        @Override
        public Reply hint(String asking, UUID population) {
            return Reply.done();
        }
    }
}
