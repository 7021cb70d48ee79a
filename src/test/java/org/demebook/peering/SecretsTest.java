package org.demebook.peering;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.as;

import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.jboss.logmanager.formatters.PatternFormatter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The private keys of a node stay in its folder. {@link SecretWatch} looks through the answers of all other tests of resources, too.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class SecretsTest {
    @TempDir
    Path state;

    @TestHTTPResource("/")
    URI here;

    /** Every line of the log, at whatever level it is written, with what was thrown. */
    private static final class Listening extends Handler implements AutoCloseable {
        private static final PatternFormatter FORM = new PatternFormatter("%p %c %s%e");
        private final Logger room = Logger.getLogger("org.demebook");
        private final Level before = room.getLevel();
        final Queue<String> lines = new ConcurrentLinkedQueue<>();

        Listening() {
            setLevel(Level.ALL);
            room.setLevel(Level.ALL);
            Logger.getLogger("").addHandler(this);
        }

        @Override
        public void publish(LogRecord told) {
            lines.add(FORM.format(told));
        }

        @Override
        public void flush() {}

        @Override
        public void close() {
            room.setLevel(before);
            Logger.getLogger("").removeHandler(this);
        }
    }

    @Test
    void making_turning_losing_and_recovering_keys_logs_none_of_them() throws IOException {
        var folder = state.resolve("federation");
        var secrets = new HashSet<String>();
        try (var log = new Listening()) {
            var identity = NodeIdentity.in(folder);
            secrets.addAll(SecretWatch.of(folder));
            identity.rotate();
            secrets.addAll(SecretWatch.of(folder));
            var safe = state.resolve("safe");
            Files.move(folder.resolve("recovery.key"), safe);
            Files.delete(folder.resolve("node.key"));
            assertThatThrownBy(() -> NodeIdentity.in(folder))
                    .satisfies(told -> SecretWatch.requireNone("a refusal", told.toString(), secrets));
            var recovered = NodeIdentity.in(folder, safe);
            secrets.addAll(SecretWatch.of(folder));
            for (Object thing : new Object[] {recovered, recovered.signingKey(), recovered.tls(), recovered.keys()}) {
                SecretWatch.requireNone("a thing as text", String.valueOf(thing), secrets);
            }
            SecretWatch.requireNone(
                    "the node document", new String(recovered.document("Harbour"), StandardCharsets.UTF_8), secrets);
            var lines = String.join("\n", log.lines);
            assertThat(lines).contains("Move ").contains("recovery.key").contains("was lost");
            SecretWatch.requireNone("the log", lines, secrets);
        }
        assertThat(secrets).hasSizeGreaterThan(30);
    }

    @Test
    void the_watch_finds_a_key_that_is_told() throws IOException {
        NodeIdentity.in(state.resolve("federation"));
        var secrets = SecretWatch.of(state.resolve("federation"));
        var told = Files.readString(state.resolve("federation").resolve("node.key"));
        assertThatThrownBy(() -> SecretWatch.requireNone("node.key", told, secrets))
                .isInstanceOf(AssertionError.class);
    }

    @Test
    void no_answer_of_any_address_holds_one() throws IOException {
        var colony = Colony.found();
        colony.female(INES);
        var contract =
                new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
        int answers = 0;
        try (var log = new Listening()) {
            as("administrator").post("/api/v1/node/key-rotations").then().statusCode(200);
            for (var path : contract.path("paths").properties()) {
                if (!path.getValue().has("get")) {
                    continue;
                }
                var address = path.getKey().replace("{population}", colony.code).replaceAll("\\{[^}]+}", "none");
                for (var asker : new String[] {INES, "administrator"}) {
                    SecretWatch.requireNone(
                            address,
                            given().baseUri(here.toString())
                                    .auth()
                                    .preemptive()
                                    .oauth2(Colony.token(asker))
                                    .get(address));
                    answers++;
                }
            }
            as(INES).get(colony.path("/my-archive")).then().statusCode(200);
            SecretWatch.requireNone(
                    "the log", String.join("\n", log.lines), SecretWatch.of(TestServer.federationFolder()));
        }
        assertThat(answers).isGreaterThan(100);
    }
}
