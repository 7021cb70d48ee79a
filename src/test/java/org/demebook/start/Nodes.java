package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.response.ExtractableResponse;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Two packaged servers that are nodes to each other: processes of their own with embedded databases of their own, each reached by the other
 * through a proxy. The population {@value #CODE} was founded at the harbour and joined at the upland.
 */
final class Nodes implements AutoCloseable {
    static final String CODE = "TN";
    static final String FEDERATION = "/api/v1/populations/" + CODE + "/federation";

    final Member harbour;
    final Member upland;

    /** One node; it may be killed and started again, and stays who it is. */
    static final class Member implements AutoCloseable {
        final String name;
        final String code;
        final Proxy before;
        private final Path state;
        private final int port;
        private ServerProcess server;
        String id = "";

        private Member(Path state, String name, String code, long seed) throws IOException, InterruptedException {
            this.state = state;
            this.name = name;
            this.code = code;
            this.port = ServerProcess.freePort();
            this.before = new Proxy(port, seed);
            this.server = start();
            this.id = identity().path("nodeId");
        }

        private ServerProcess start() throws IOException, InterruptedException {
            return ServerProcess.start(
                    state,
                    "-Ddemebook.node.code=" + code,
                    "-Ddemebook.federation=on",
                    "-Ddemebook.federation.name=" + name,
                    "-Ddemebook.federation.port=" + port);
        }

        ServerProcess server() {
            return server;
        }

        RequestSpecification administrator() {
            return server.as(server.signIn("administrator", ServerProcess.ADMINISTRATOR_PASSWORD));
        }

        ExtractableResponse<Response> identity() {
            return administrator()
                    .get("/api/v1/node/identity")
                    .then()
                    .statusCode(200)
                    .extract();
        }

        /** What the node knows of the population that both share. */
        ValidatableResponse federation() {
            return administrator().get(FEDERATION).then().statusCode(200);
        }

        List<Map<String, Object>> alarms() {
            return administrator()
                    .get(FEDERATION + "/alarms")
                    .then()
                    .statusCode(200)
                    .extract()
                    .path("$");
        }

        /** Lets the other in at the address of the proxy before it. */
        private void letIn(Member other) {
            administrator()
                    .body(Map.of(
                            "address",
                            "https://127.0.0.1:" + other.before.port(),
                            "fingerprint",
                            other.identity().path("fingerprint"),
                            "name",
                            other.name))
                    .post("/api/v1/peers")
                    .then()
                    .statusCode(201);
        }

        /** What a power cut does to it. */
        void kill() throws InterruptedException {
            server.kill();
        }

        void startAgain() throws IOException, InterruptedException {
            server = start();
        }

        @Override
        public void close() throws IOException {
            server.close();
            before.close();
        }
    }

    /** @param seed of what the proxies do by chance */
    Nodes(Path folder, long seed) throws IOException, InterruptedException {
        TestServer.deleteAll(folder);
        harbour = new Member(folder.resolve("harbour"), "Harbour", "H", seed);
        try {
            upland = new Member(folder.resolve("upland"), "Upland", "U", seed + 1);
        } catch (IOException | InterruptedException | RuntimeException e) {
            harbour.close();
            throw e;
        }
        try {
            harbour.letIn(upland);
            upland.letIn(harbour);
            share();
        } catch (RuntimeException | Error e) {
            close();
            throw e;
        }
    }

    private void share() {
        harbour.administrator()
                .body(Map.of(
                        "code", CODE,
                        "name", "Marrowfin Cay",
                        "taxon", "insular dwarf Boa",
                        "locality", "Marrowfin Cay",
                        "birthMode", "live-bearing"))
                .post("/api/v1/populations")
                .then()
                .statusCode(201);
        String population = harbour.administrator()
                .body("{}")
                .post(FEDERATION)
                .then()
                .statusCode(201)
                .extract()
                .path("population");
        var joining = Map.of("population", population, "founder", harbour.id);
        assertThat(upland.administrator()
                        .body(joining)
                        .post("/api/v1/federated-populations")
                        .statusCode())
                .as("joining without a seat")
                .isEqualTo(409);
        seat(upland.code);
        upland.administrator()
                .body(joining)
                .post("/api/v1/federated-populations")
                .then()
                .statusCode(201);
    }

    /** The harbour says that the upland has this code: an entry of its journal that the upland can be asked about. */
    void seat(String code) {
        harbour.administrator()
                .body(Map.of("node", upland.id, "code", code))
                .post(FEDERATION + "/seats")
                .then()
                .statusCode(200);
    }

    Stream<Member> each() {
        return Stream.of(harbour, upland);
    }

    @Override
    public void close() throws IOException {
        try (harbour;
                upland) {
            each().forEach(member -> member.before.is(Proxy.Weather.CALM));
        }
    }
}
