package org.demebook.start;

import static org.assertj.core.api.Assertions.fail;

import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpRequest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.demebook.ContractFilter;

/**
 * The packaged server in its profile keycloak beside a Keycloak, both as an operator starts them; once for all tests that
 * want them. The server is started first, when there is no Keycloak yet.
 */
final class KeycloakWorld {
    private static final Path STATE = Path.of("target", "keycloak-state").toAbsolutePath();
    private static final Duration SOON = Duration.ofSeconds(20);
    private static final int MIRROR_SECONDS = 2;
    static final String CANNOT_KEEP = "groups cannot be kept just now";
    private static final AtomicInteger FOUNDED = new AtomicInteger();
    private static KeycloakWorld world;

    /** How the server answered before there was a Keycloak. */
    record WithoutKeycloak(Duration startedIn, Response open, Response bearer, int browserStatus) {}

    final ServerProcess server;
    final WithoutKeycloak withoutKeycloak;
    final KeycloakServer keycloak;
    private final Map<String, String> idOfName = new ConcurrentHashMap<>();
    private final Map<String, String> tokenOfName = new ConcurrentHashMap<>();

    private KeycloakWorld() throws IOException, InterruptedException {
        KeycloakServer.build();
        TestServer.deleteAll(STATE);
        int port = ServerProcess.freePort();
        server = ServerProcess.start(
                STATE,
                "-Dquarkus.profile=keycloak",
                "-Ddemebook.keycloak.url=http://127.0.0.1:" + port,
                "-Ddemebook.keycloak.secret=" + KeycloakServer.SECRET,
                "-Ddemebook.keycloak.admin-secret=" + KeycloakServer.ADMIN_SECRET,
                "-Ddemebook.keycloak.mirror-every=" + MIRROR_SECONDS + "s",
                "-Ddemebook.stop-with-parent=true");
        Runtime.getRuntime().addShutdownHook(new Thread(server::close));
        withoutKeycloak = new WithoutKeycloak(
                server.startedIn,
                server.anonymous().get("/api/v1/node"),
                server.as("not.a.token").get("/api/v1/populations"),
                new Browser().get(server.address() + "/sign-in").statusCode());
        foundInTheDatabase("EARLY");
        await(() -> log().contains(CANNOT_KEEP), () -> "nothing in the log of groups that cannot be kept");
        Thread.sleep(MIRROR_SECONDS * 2_000L); // two more attempts
        keycloak = KeycloakServer.start(port, server.address());
        Runtime.getRuntime().addShutdownHook(new Thread(keycloak::close));
    }

    /** A population of nobody, behind the server's back: while Keycloak is away nobody can sign in and found one. */
    private static void foundInTheDatabase(String code) throws IOException {
        var postgresql = STATE.resolve("postgresql");
        var secrets = new Properties();
        try (var reader = Files.newBufferedReader(postgresql.resolve("secrets.properties"))) {
            secrets.load(reader);
        }
        var port = Files.readAllLines(postgresql.resolve("data").resolve("postmaster.pid"))
                .get(3);
        try (var connection = DriverManager.getConnection(
                        DatabaseSetup.jdbcUrl(Integer.parseInt(port.strip()), DatabaseSetup.DATABASE),
                        DatabaseSetup.OWNER,
                        secrets.getProperty("owner.password"));
                var insert = connection.prepareStatement(
                        "insert into demebook.journal_head (population_id, code, node_code, seq) values (?, ?, 'H', 0)")) {
            insert.setObject(1, UUID.randomUUID());
            insert.setString(2, code);
            insert.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    static synchronized KeycloakWorld start() throws IOException, InterruptedException {
        if (world == null) {
            world = new KeycloakWorld();
        }
        return world;
    }

    // ── people ───────────────────────────────────────────────────────────────────────────────────────────────────────

    /** Gives somebody an account in Keycloak, of which the server knows nothing; returns its id. */
    String account(String name) {
        return idOfName.computeIfAbsent(name, keycloak::addUser);
    }

    String token(String name) {
        account(name);
        return tokenOfName.computeIfAbsent(name, known -> freshToken(known, "demebook-program"));
    }

    String freshToken(String name, String clientId) {
        account(name);
        try {
            return Browser.token(keycloak.realm(), clientId, name);
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    RequestSpecification as(String name) {
        return withToken(token(name));
    }

    /** A request with a token; its answer is held against the contract. */
    RequestSpecification withToken(String token) {
        return server.as(token).filter(new ContractFilter());
    }

    /** A request that a page makes in this browser, cookies and all. */
    HttpRequest.Builder byCookie(String path) {
        return HttpRequest.newBuilder(URI.create(server.address() + path));
    }

    // ── populations ──────────────────────────────────────────────────────────────────────────────────────────────────

    String found(String coordinator) {
        var code =
                "K" + Integer.toString(36 * 36 + FOUNDED.incrementAndGet(), 36).toUpperCase();
        as(coordinator)
                .body(population(code))
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        return code;
    }

    static Map<String, Object> population(String code) {
        var population = new HashMap<String, Object>();
        population.put("code", code);
        population.put("name", "Marrowfin Cay");
        population.put("taxon", "insular dwarf Boa");
        population.put("locality", "Marrowfin Cay");
        population.put("birthMode", "live-bearing");
        return population;
    }

    ValidatableResponse admit(String coordinator, String code, String name, String role) {
        return as(coordinator)
                .body(Map.of("name", name, "role", role))
                .post("/api/v1/populations/" + code + "/members")
                .then();
    }

    /** Waits until exactly these are in Keycloak's group populations/CODE/ROLE. */
    void awaitGroup(String code, String role, Set<String> usernames) {
        await(() -> keycloak.group(code, role).equals(usernames), () -> "populations/%s/%s holds %s"
                .formatted(code, role, keycloak.group(code, role)));
    }

    static void await(BooleanSupplier wanted, Supplier<String> otherwise) {
        long end = System.nanoTime() + SOON.toNanos();
        while (!wanted.getAsBoolean()) {
            if (System.nanoTime() > end) {
                fail(otherwise.get());
            }
            try {
                Thread.sleep(200);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    static String log() {
        try {
            return Files.readString(STATE.resolve("server.log"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
