package org.demebook.start;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

/** The packaged server as a process of its own, as an operator starts it; for tests that end it the hard way. */
final class ServerProcess implements AutoCloseable {
    static final String ADMINISTRATOR_PASSWORD = "only-for-tests-4711";
    private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
    private static final Duration PATIENCE = Duration.ofMinutes(3);

    private final Process process;
    private final int port;
    final Duration startedIn;

    private ServerProcess(Process process, int port, Duration startedIn) {
        this.process = process;
        this.port = port;
        this.startedIn = startedIn;
    }

    static ServerProcess start(Path state, String... settings) throws IOException, InterruptedException {
        int port = freePort();
        List<String> command = new ArrayList<>(List.of(
                ProcessHandle.current().info().command().orElse("java"),
                "-Xmx1g",
                "-Ddemebook.state=" + state,
                "-Ddemebook.administrator.password=" + ADMINISTRATOR_PASSWORD,
                "-Dquarkus.http.port=" + port));
        command.addAll(List.of(settings));
        command.addAll(List.of("-jar", JAR.toString()));
        Files.createDirectories(state);
        long begin = System.nanoTime();
        var process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        state.resolve("server.log").toFile()))
                .start();
        while (!ready(port)) {
            if (!process.isAlive() || System.nanoTime() - begin > PATIENCE.toNanos()) {
                process.destroyForcibly();
                throw new IllegalStateException("did not start:\n" + Files.readString(state.resolve("server.log")));
            }
            Thread.sleep(20);
        }
        return new ServerProcess(process, port, Duration.ofNanos(System.nanoTime() - begin));
    }

    private static boolean ready(int port) {
        try {
            return given().baseUri("http://127.0.0.1:" + port)
                            .get("/q/health/ready")
                            .statusCode()
                    == 200;
        } catch (Exception refused) {
            return false;
        }
    }

    static int freePort() throws IOException {
        try (var socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            return socket.getLocalPort();
        }
    }

    String address() {
        return "http://127.0.0.1:" + port;
    }

    RequestSpecification anonymous() {
        return given().baseUri(address())
                .contentType(ContentType.JSON)
                .header("Idempotency-Key", UUID.randomUUID().toString());
    }

    RequestSpecification as(String token) {
        return anonymous().auth().preemptive().oauth2(token);
    }

    String signIn(String name, String password) {
        return anonymous()
                .body(Map.of("name", name, "password", password))
                .post("/api/v1/tokens")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token");
    }

    /** A keeper with an account of their own; gives their token. */
    String openAccount(String name, String password) {
        String secret = as(signIn("administrator", ADMINISTRATOR_PASSWORD))
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(200)
                .extract()
                .path("secret");
        return anonymous()
                .body(Map.of("secret", secret, "name", name, "fullName", name, "password", password))
                .post("/api/v1/invitations/acceptances")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token");
    }

    /** What a power cut does to it, as far as a process can feel one. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** What Ctrl-C does. */
    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }

    boolean isAlive() {
        return process.isAlive();
    }
}
