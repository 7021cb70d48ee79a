package org.demebook.web;

import static io.restassured.RestAssured.given;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * The packaged server with the demo world, as a newcomer starts it, on a folder of its own that is deleted at the end.
 * With {@code -Ddemebook.server=http://127.0.0.1:8080} the tests visit a demo that runs already; it keeps what they do.
 */
final class DemoServer implements AutoCloseable {
    static final String ADMINISTRATOR = "administrator";
    static final String ADMINISTRATOR_PASSWORD = "only-for-tests-4711";
    private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
    private static final Path DEMO = Path.of("demo-data").toAbsolutePath();
    private static final Duration PATIENCE = Duration.ofMinutes(3);
    private static final String READY = "Demebook is ready: ";
    private static final String FAILED = "The demo world could not be loaded";

    private static DemoServer shared;

    private final URI address;
    private final @Nullable Process process;
    private final @Nullable Path state;
    private final Map<String, String> tokens = new ConcurrentHashMap<>();

    private DemoServer(URI address, @Nullable Process process, @Nullable Path state) {
        this.address = address;
        this.process = process;
        this.state = state;
    }

    /** The one that all tests of this JVM share; it ends with the JVM. */
    static synchronized DemoServer shared() {
        if (shared == null) {
            var running = System.getProperty("demebook.server");
            shared = running == null ? started() : at(URI.create(running));
        }
        return shared;
    }

    /** A server that somebody else started. */
    static DemoServer at(URI address) {
        return new DemoServer(address, null, null);
    }

    /** A fresh one, for tests that leave nothing as it was. The caller closes it. */
    static DemoServer started() {
        try {
            int port = freePort();
            var state = Files.createTempDirectory("demebook-browser-");
            var log = state.resolve("server.log");
            var command = List.of(
                    ProcessHandle.current().info().command().orElse("java"),
                    "-Xmx1g",
                    "-Ddemebook.state=" + state.resolve("node"),
                    "-Ddemebook.demo=" + DEMO,
                    "-Ddemebook.administrator.password=" + ADMINISTRATOR_PASSWORD,
                    "-Ddemebook.stop-with-parent=true",
                    "-Dquarkus.http.port=" + port,
                    "-jar",
                    JAR.toString());
            var process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(log.toFile())
                    .start();
            var server = new DemoServer(URI.create("http://127.0.0.1:" + port), process, state);
            Runtime.getRuntime().addShutdownHook(new Thread(server::close, "demo-last"));
            server.awaitDemo(log);
            return server;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The demo prints its text when all of it is there. */
    private void awaitDemo(Path log) throws IOException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (true) {
            var said = Files.readString(log);
            if (said.contains(READY)) {
                return;
            }
            if (said.contains(FAILED) || !process.isAlive() || System.nanoTime() > end) {
                close();
                throw new IllegalStateException("The demo did not start. It said:\n" + said);
            }
            try {
                Thread.sleep(100);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            return socket.getLocalPort();
        }
    }

    URI address() {
        return address;
    }

    /** What the server wrote to its terminal. */
    String log() {
        try {
            return state == null ? "" : Files.readString(state.resolve("server.log"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    // ── the API, to look up what pages show and to prepare what they are about ───────────────────────────────────────

    static String password() {
        try {
            JsonNode world =
                    new ObjectMapper().readTree(DEMO.resolve("world.json").toFile());
            return world.get("password").asText();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    RequestSpecification anonymous() {
        return given().baseUri(address.toString())
                .contentType(ContentType.JSON)
                .header("Idempotency-Key", UUID.randomUUID().toString());
    }

    RequestSpecification as(String keeper) {
        return anonymous().auth().preemptive().oauth2(token(keeper));
    }

    String token(String keeper) {
        return tokens.computeIfAbsent(keeper, name -> anonymous()
                .body(Map.of("name", name, "password", password()))
                .post("/api/v1/tokens")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token"));
    }

    // ── the end ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** As Ctrl-C does. */
    @Override
    public void close() {
        if (process == null) {
            return;
        }
        process.destroy();
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
        deleteAll(state);
    }

    private static void deleteAll(Path folder) {
        if (!Files.exists(folder)) {
            return;
        }
        try (var files = Files.walk(folder)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
