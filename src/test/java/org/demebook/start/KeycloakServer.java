package org.demebook.start;

import static io.restassured.RestAssured.given;
import static java.util.stream.Collectors.toSet;

import io.restassured.http.ContentType;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

/**
 * A real Keycloak from its distribution, on a database in memory, with the realm that deploy/keycloak gives to operators.
 * What tests need beyond it (people, further clients) they add as an operator would, by the administration API.
 */
final class KeycloakServer implements AutoCloseable {
    static final String SECRET = "for-tests-alone-0123456789abcdef0123";
    static final String ADMIN_SECRET = "for-tests-alone-fedcba9876543210fedc";
    static final String PASSWORD = "a long walk on the cay";

    private static final Path HOME = Path.of(System.getProperty("keycloak.home", "target/keycloak/keycloak-26.7.3"))
            .toAbsolutePath();
    private static final Path REALM = Path.of("deploy", "keycloak", "demebook-realm.json");
    private static final Path LOG = Path.of("target", "keycloak.log").toAbsolutePath();
    private static final String OPERATOR = "operator";
    private static final Duration PATIENCE = Duration.ofMinutes(3);
    // ends Keycloak when its standard input ends: also when this JVM was killed
    private static final String UNTIL_INPUT_ENDS = "\"$@\" & child=$!; read -r nothing; kill -TERM $child; wait $child";

    private final Process process;
    private final String address;

    private KeycloakServer(Process process, String address) {
        this.process = process;
        this.address = address;
    }

    /** Prepares the distribution, once for as long as it stays unpacked; takes about half a minute the first time. */
    static void build() throws IOException, InterruptedException {
        var built = HOME.resolve("built-for-tests");
        if (Files.exists(built)) {
            return;
        }
        var build = process(List.of("build", "--db=dev-mem"), Map.of()).start();
        build.getOutputStream().close();
        if (!build.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS) || build.exitValue() != 0) {
            build.destroyForcibly();
            throw new IllegalStateException("kc.sh build failed:\n" + Files.readString(LOG));
        }
        Files.createFile(built);
    }

    /** @param demebook address of the server that sends browsers here */
    static KeycloakServer start(int port, String demebook) throws IOException, InterruptedException {
        var imports = Files.createDirectories(HOME.resolve("data").resolve("import"));
        Files.copy(REALM, imports.resolve(REALM.getFileName()), StandardCopyOption.REPLACE_EXISTING);
        var address = "http://127.0.0.1:" + port;
        var arguments = List.of(
                "start",
                "--optimized",
                "--import-realm",
                "--http-enabled=true",
                "--http-host=127.0.0.1",
                "--http-port=" + port,
                "--hostname=" + address,
                "--cache=local");
        var environment = Map.of(
                "KC_BOOTSTRAP_ADMIN_USERNAME", OPERATOR,
                "KC_BOOTSTRAP_ADMIN_PASSWORD", PASSWORD,
                "DEMEBOOK_URL", demebook,
                "DEMEBOOK_KEYCLOAK_SECRET", SECRET,
                "DEMEBOOK_KEYCLOAK_ADMIN_SECRET", ADMIN_SECRET);
        var keycloak = new KeycloakServer(process(arguments, environment).start(), address);
        long begin = System.nanoTime();
        while (!keycloak.ready()) {
            if (!keycloak.process.isAlive() || System.nanoTime() - begin > PATIENCE.toNanos()) {
                keycloak.close();
                throw new IllegalStateException("Keycloak did not start:\n" + Files.readString(LOG));
            }
            Thread.sleep(100);
        }
        return keycloak;
    }

    private static ProcessBuilder process(List<String> arguments, Map<String, String> environment) {
        var command = new ArrayList<>(List.of("sh", "-c", UNTIL_INPUT_ENDS, "sh"));
        if (arguments.contains("build")) {
            command = new ArrayList<>();
        }
        command.add(HOME.resolve("bin").resolve("kc.sh").toString());
        command.addAll(arguments);
        var builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.to(LOG.toFile()));
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().put("JAVA_OPTS_KC_HEAP", "-Xms64m -Xmx400m");
        builder.environment().put("JAVA_OPTS_APPEND", "-XX:TieredStopAtLevel=1");
        builder.environment().putAll(environment);
        return builder;
    }

    private boolean ready() {
        try {
            return given().get(realm()).statusCode() == 200;
        } catch (Exception refused) {
            return false;
        }
    }

    String realm() {
        return address + "/realms/demebook";
    }

    // ── as its operator ──────────────────────────────────────────────────────────────────────────────────────────────

    /** A token of another realm of the same Keycloak. */
    String operatorToken() {
        return given().formParams(Map.of(
                        "grant_type", "password", "client_id", "admin-cli", "username", OPERATOR, "password", PASSWORD))
                .post(address + "/realms/master/protocol/openid-connect/token")
                .then()
                .statusCode(200)
                .extract()
                .path("access_token");
    }

    private RequestSpecification operator() {
        return given().baseUri(address)
                .basePath("/admin/realms/demebook")
                .contentType(ContentType.JSON)
                .auth()
                .preemptive()
                .oauth2(operatorToken());
    }

    /** Gives somebody an account; returns its id. */
    String addUser(String username) {
        var user = new HashMap<String, Object>(Map.of(
                "username",
                username,
                "enabled",
                true,
                "firstName",
                "Keeper",
                "lastName",
                "Of Snakes",
                "email",
                UUID.randomUUID() + "@example.org",
                "emailVerified",
                true));
        user.put("credentials", List.of(Map.of("type", "password", "value", PASSWORD, "temporary", false)));
        var location = operator()
                .body(user)
                .post("/users")
                .then()
                .statusCode(201)
                .extract()
                .header("Location");
        return location.substring(location.lastIndexOf('/') + 1);
    }

    void giveRole(String userId, String role) {
        operator()
                .body(List.of(role(role)))
                .post("/users/" + userId + "/role-mappings/realm")
                .then()
                .statusCode(204);
    }

    void takeRole(String userId, String role) {
        operator()
                .body(List.of(role(role)))
                .delete("/users/" + userId + "/role-mappings/realm")
                .then()
                .statusCode(204);
    }

    private Map<String, Object> role(String role) {
        return operator()
                .get("/roles/" + role)
                .then()
                .statusCode(200)
                .extract()
                .jsonPath()
                .getMap("");
    }

    void rename(String userId, String username) {
        // the realm lets nobody change their own username; its operator may for a moment
        operator().body(Map.of("editUsernameAllowed", true)).put("").then().statusCode(204);
        Map<String, Object> user = operator().get("/users/" + userId).jsonPath().getMap("");
        user.put("username", username);
        operator().body(user).put("/users/" + userId).then().statusCode(204);
    }

    /** A further client of the realm, whose tokens live for some seconds. */
    void addClient(String clientId, boolean forDemebook, int tokenSeconds) {
        var audience = Map.of(
                "name", "audience",
                "protocol", "openid-connect",
                "protocolMapper", "oidc-audience-mapper",
                "config", Map.of("included.client.audience", "demebook", "access.token.claim", "true"));
        operator()
                .body(Map.of(
                        "clientId",
                        clientId,
                        "publicClient",
                        true,
                        "standardFlowEnabled",
                        true,
                        "redirectUris",
                        List.of("http://127.0.0.1/*"),
                        "attributes",
                        Map.of("access.token.lifespan", Integer.toString(tokenSeconds)),
                        "protocolMappers",
                        forDemebook ? List.of(audience) : List.of()))
                .post("/clients")
                .then()
                .statusCode(201);
    }

    /** The usernames in populations/CODE/ROLE; nobody where there is no such group. */
    Set<String> group(String populationCode, String role) {
        return groupId(populationCode, role)
                .map(id -> operator().get("/groups/" + id + "/members").jsonPath().<String>getList("username").stream()
                        .collect(toSet()))
                .orElse(Set.of());
    }

    boolean hasGroup(String populationCode, String role) {
        return groupId(populationCode, role).isPresent();
    }

    void takeFromGroup(String userId, String populationCode, String role) {
        var id = groupId(populationCode, role).orElseThrow();
        operator().delete("/users/" + userId + "/groups/" + id).then().statusCode(204);
    }

    void putIntoGroup(String userId, String populationCode, String role) {
        var id = groupId(populationCode, role).orElseThrow();
        operator().put("/users/" + userId + "/groups/" + id).then().statusCode(204);
    }

    private Optional<String> groupId(String populationCode, String role) {
        var answer = operator().get("/group-by-path/populations/" + populationCode + "/" + role);
        return answer.statusCode() == 404 ? Optional.empty() : Optional.of(answer.path("id"));
    }

    // ── as bad luck ──────────────────────────────────────────────────────────────────────────────────────────────────

    /** It takes connections and says nothing, until {@link #thaw}. */
    void freeze() throws IOException, InterruptedException {
        signal("-STOP");
    }

    void thaw() throws IOException, InterruptedException {
        signal("-CONT");
    }

    private void signal(String signal) throws IOException, InterruptedException {
        for (var java : process.descendants().toList()) {
            if (java.info().command().orElse("").endsWith("java")) {
                new ProcessBuilder("kill", signal, Long.toString(java.pid()))
                        .start()
                        .waitFor();
            }
        }
    }

    @Override
    public void close() {
        var all = process.descendants().toList();
        try {
            process.getOutputStream().close();
            if (process.waitFor(10, TimeUnit.SECONDS)) {
                return;
            }
        } catch (IOException e) {
            // it has ended already
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        all.forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
    }
}
