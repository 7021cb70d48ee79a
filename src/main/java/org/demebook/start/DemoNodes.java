package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;

/**
 * The demo with a second node: with {@code -Ddemebook.demo.nodes=2} this one is the harbour node, and starts an upland node beside it, a
 * process with its own database and keepers. Both administrators let the other in, and the population is shared, all of it
 * through the API as people would.
 */
final class DemoNodes {
    private static final String NODES = "demebook.demo.nodes";
    private static final String PASSWORD = "demebook.administrator.password";
    private static final Duration PATIENCE = Duration.ofSeconds(90);
    private static final String LINES = """

              A second node, the upland node, runs at http://127.0.0.1:%1$d with its own database; mara keeps animals there (same password).
              Sell her an animal and watch it arrive: sign in here as wren, open %2$s, choose "To somebody on another node", node U,
              receiver mara. Within two seconds the offer waits for her there: sign in as mara at http://127.0.0.1:%1$d and accept it. The
              pages of the sale say on both sides where the animal is, until it has arrived with its ancestry.

            """;

    private final DemoClient harbour;
    private final DemoClient upland;
    private final ObjectMapper json;
    private final int uplandPort;

    private DemoNodes(DemoClient harbour, int port, ObjectMapper json) {
        this.harbour = harbour;
        this.uplandPort = port + 1;
        this.upland = new DemoClient(uplandPort, json);
        this.json = json;
    }

    static boolean areTwo() {
        return Integer.getInteger(NODES, 1) == 2;
    }

    /** Before the server of this process is configured. */
    static void prepare() {
        if (areTwo()) {
            System.setProperty("demebook.federation", "on");
            System.setProperty("demebook.federation.name", "Harbour");
        }
    }

    /** Starts the upland node and brings the two together, where that was not done before. */
    static void begin(DemoClient harbour, int port, String state, Path folder, JsonNode world, ObjectMapper json)
            throws IOException, InterruptedException {
        var nodes = new DemoNodes(harbour, port, json);
        nodes.startUpland(Path.of(state, "upland"), folder.resolve("upland"), port);
        nodes.upland.awaitServer();
        nodes.meet(world, json.readTree(folder.resolve("upland/world.json").toFile()));
        System.out.printf(LINES, nodes.uplandPort, world.at("/crossing/animal").asText());
    }

    private void startUpland(Path state, Path folder, int port) throws IOException {
        var federationPort = Integer.getInteger("demebook.federation.port", 8444);
        var command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Ddemebook.state=" + state,
                "-Ddemebook.demo=" + folder,
                "-Ddemebook.stop-with-parent=true",
                "-Ddemebook.node.code=U",
                "-Ddemebook.federation=on",
                "-Ddemebook.federation.name=Upland",
                "-Ddemebook.federation.port=" + (federationPort + 1),
                "-D" + PASSWORD + "=" + System.getProperty(PASSWORD),
                "-Dquarkus.http.port=" + (port + 1),
                "-jar",
                System.getProperty("java.class.path"));
        new ProcessBuilder(command).inheritIO().start();
    }

    private void meet(JsonNode world, JsonNode uplandWorld) throws IOException, InterruptedException {
        var here = administrator(harbour);
        var there = administrator(upland);
        var code = world.at("/population/code").asText();
        if (!upland.get(there, "/api/v1/peers").isEmpty()) {
            return; // they met at an earlier start
        }
        var harbourIdentity = harbour.get(here, "/api/v1/node/identity");
        var uplandIdentity = upland.get(there, "/api/v1/node/identity");
        harbour.post(here, "/api/v1/peers", described(uplandIdentity, "Upland"));
        upland.post(there, "/api/v1/peers", described(harbourIdentity, "Harbour"));
        var federation = "/api/v1/populations/" + code + "/federation";
        var shared = harbour.post(here, federation, json.createObjectNode());
        harbour.post(
                here,
                federation + "/seats",
                json.createObjectNode()
                        .put("node", uplandIdentity.get("nodeId").asText())
                        .put("code", "U"));
        upland.post(
                there,
                "/api/v1/federated-populations",
                json.createObjectNode()
                        .put("population", shared.get("population").asText())
                        .put("founder", harbourIdentity.get("nodeId").asText()));
        moveIn(there, code, uplandWorld);
    }

    /** The keepers of the upland node become members there. */
    private void moveIn(String administrator, String code, JsonNode world) throws IOException, InterruptedException {
        for (var keeper : world.get("keepers")) {
            var name = keeper.get("name").asText();
            upland.post(
                    administrator,
                    "/api/v1/populations/" + code + "/members",
                    json.createObjectNode()
                            .put("name", name)
                            .put("role", keeper.get("role").asText()));
            upland.openCollection(
                    signIn(upland, name, world.get("password").asText()),
                    "/api/v1/populations/" + code,
                    keeper.get("collection").asText(),
                    keeper.get("sharing").asText());
        }
    }

    private JsonNode described(JsonNode identity, String name) {
        return json.valueToTree(Map.of(
                "address", identity.get("address").asText(),
                "fingerprint", identity.get("fingerprint").asText(),
                "name", name));
    }

    /** The upland node's accounts are opened by itself, after its server answers. */
    private String administrator(DemoClient node) throws IOException, InterruptedException {
        return signIn(node, "administrator", System.getProperty(PASSWORD));
    }

    private String signIn(DemoClient node, String name, String password) throws IOException, InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        var body = json.createObjectNode().put("name", name).put("password", password);
        while (true) {
            try {
                return node.post(null, "/api/v1/tokens", body)
                        .get("access_token")
                        .asText();
            } catch (IllegalStateException notYet) {
                if (System.nanoTime() > end) {
                    throw notYet;
                }
                Thread.sleep(500);
            }
        }
    }
}
