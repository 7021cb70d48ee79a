package org.demebook.peering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.as;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import io.vertx.core.Vertx;
import jakarta.inject.Inject;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.demebook.Backstage;
import org.demebook.Colony;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An administrator lets another node in, and what the two can say to each other then; the other one is real, and in this process. */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class PeersTest {
    private static final String ADMINISTRATOR = "administrator";
    private static final UUID POPULATION = UUID.fromString("0197f3a2-0000-7000-8000-000000000002");
    private static final byte[] NOTHING = {};

    @TempDir
    Path state;

    @Inject
    Vertx vertx;

    @Inject
    Node node;

    @Inject
    Peers peers;

    @Inject
    PeerClient client;

    @Inject
    FederationPort port;

    private final ConcurrentLinkedQueue<String> hints = new ConcurrentLinkedQueue<>();
    private TestNode upland;

    @BeforeEach
    void start() {
        upland = new TestNode(vertx, state.resolve("upland"), "Upland", new Conversation() {
            @Override
            public Reply entries(String asking, UUID population, String of, long after, int most, String start) {
                return Reply.ok("{\"entries\":[]}".getBytes(StandardCharsets.UTF_8));
            }

            @Override
            public Reply hint(String asking, UUID population) {
                hints.add(asking + " " + population);
                return Reply.done();
            }
        });
    }

    @AfterEach
    void stop() {
        upland.close();
    }

    /** This server, as upland's administrator knows it. */
    private Peer here() {
        return new Peer(
                node.identity().nodeId(),
                "Here",
                URI.create(port.address()),
                node.identity().tlsPin(),
                node.identity().keys(),
                Peer.State.ACTIVE);
    }

    private Map<String, Object> described() {
        var described = new HashMap<String, Object>();
        described.put("address", upland.address().toString());
        described.put("fingerprint", upland.identity.fingerprint());
        described.put("name", "Upland");
        return described;
    }

    private ValidatableResponse admit(Map<String, Object> described) {
        return as(ADMINISTRATOR).body(described).post("/api/v1/peers").then();
    }

    private String entries() {
        return "/federation/populations/%s/journals/%s/entries"
                .formatted(POPULATION, node.identity().nodeId());
    }

    private PeerTrouble uplandIsTold() {
        return catchThrowableOfType(PeerTrouble.class, () -> upland.client.get(here(), entries(), 1_000));
    }

    @Test
    void an_administrator_reads_who_this_node_is_and_nobody_else_does() {
        as(ADMINISTRATOR)
                .get("/api/v1/node/identity")
                .then()
                .statusCode(200)
                .body("nodeId", equalTo(node.identity().nodeId()))
                .body("fingerprint", equalTo(node.identity().fingerprint()))
                .body("tlsPin", equalTo(node.identity().tlsPin()))
                .body("address", equalTo(port.address()));
        as(INES).get("/api/v1/node/identity").then().statusCode(403);
        // what everybody reads of a node is still there
        Colony.anonymous().get("/api/v1/node").then().statusCode(200).body("code", equalTo("H"));
    }

    @Test
    void a_node_with_the_fingerprint_that_was_told_is_let_in_which_binds_only_this_side() {
        admit(described())
                .statusCode(201)
                .body("nodeId", equalTo(upland.identity.nodeId()))
                .body("tlsPin", equalTo(upland.identity.tlsPin()))
                .body("state", equalTo("active"))
                .body("lastTrouble", nullValue());
        var peer = peers.find(upland.identity.nodeId()).orElseThrow();
        assertThat(peers.active()).extracting(Peer::nodeId).contains(peer.nodeId());
        // upland's administrator has not let this node in yet
        assertThat(catchThrowableOfType(
                                PeerTrouble.class,
                                () -> client.post(peer, "/federation/populations/" + POPULATION + "/hint", NOTHING))
                        .error())
                .isEqualTo("unknown-peer");
        assertThat(hints).isEmpty();
        as(ADMINISTRATOR)
                .get("/api/v1/peers")
                .then()
                .body("find { it.nodeId == '" + peer.nodeId() + "' }.lastTrouble", containsString("unknown-peer"));
    }

    @Test
    void what_two_that_let_each_other_in_say_arrives() {
        admit(described()).statusCode(201);
        upland.admit(here());
        var peer = peers.find(upland.identity.nodeId()).orElseThrow();
        client.post(peer, "/federation/populations/" + POPULATION + "/hint", NOTHING);
        assertThat(hints).containsExactly(node.identity().nodeId() + " " + POPULATION);
        assertThat(client.get(peer, entries(), 1_000)).isNotEmpty();
        // the other way round; it has a seat in no population of this server, and learns of none
        var told = uplandIsTold();
        assertThat(told.error()).isEqualTo("not-a-member");
        assertThat(lastContact()).isNotNull();
    }

    private String lastContact() {
        return Backstage.ask(
                        "select last_contact_at::text from demebook.peer where node_id = ?", upland.identity.nodeId())
                .get(0);
    }

    @Test
    void another_fingerprint_or_pin_than_the_one_that_answers_is_refused_with_both() {
        var wrong = described();
        wrong.put("fingerprint", "kPrK _qmx VWaY VA9w wBF6 Iuo3 vVzz 7TxH CTwX Bygr S4k");
        admit(wrong)
                .statusCode(422)
                .body("type", equalTo("/problems/peer-keys-differ"))
                .body("detail", containsString("kPrK _qmx"))
                .body("detail", containsString(upland.identity.fingerprint()));
        var otherCase = described();
        otherCase.put("fingerprint", upland.identity.nodeId().toLowerCase());
        admit(otherCase).statusCode(422).body("type", equalTo("/problems/peer-keys-differ"));
        var wrongPin = described();
        wrongPin.put("tlsPin", node.identity().tlsPin());
        admit(wrongPin).statusCode(422).body("type", equalTo("/problems/peer-keys-differ"));
        assertThat(peers.find(upland.identity.nodeId())).isEmpty();
        var right = described();
        right.put("tlsPin", upland.identity.tlsPin());
        right.put("fingerprint", " " + upland.identity.nodeId() + " ");
        admit(right).statusCode(201);
    }

    @Test
    void addresses_of_another_form_are_never_called() throws Exception {
        try (var plain = RawTls.plain(RawTls.answers("{}"))) {
            var there = "127.0.0.1:" + plain.port();
            for (var address : List.of(
                    "http://" + there,
                    "https://" + there + "/federation",
                    "https://ines@" + there,
                    "https://" + there + "?x",
                    "https://" + there + "#x",
                    "file:///etc/passwd",
                    "https:///nowhere",
                    "not an address")) {
                var described = described();
                described.put("address", address);
                admit(described).statusCode(422).body("type", equalTo("/problems/invalid-values"));
            }
            assertThat(plain.connections).hasValue(0);
        }
    }

    @Test
    void who_does_not_answer_or_is_no_node_is_told_as_that() throws Exception {
        int closed;
        try (var nobody = RawTls.plain(socket -> {})) {
            closed = nobody.port();
        }
        var described = described();
        described.put("address", "https://127.0.0.1:" + closed);
        admit(described).statusCode(422).body("type", equalTo("/problems/peer-not-reached"));
        var target = RawTls.plain(RawTls.answers("{}"));
        for (var says : List.of(
                RawTls.answers("{}"),
                RawTls.says("HTTP/1.1 404 No\r\nContent-Length: 0\r\n\r\n"),
                RawTls.says("HTTP/1.1 302 Found\r\nLocation: https://127.0.0.1:" + target.port()
                        + "/federation/node\r\nContent-Length: 0\r\n\r\n"))) {
            try (var other = RawTls.tls(TlsKey.generate(), says)) {
                described.put("address", "https://127.0.0.1:" + other.port());
                admit(described).statusCode(422).body("type", equalTo("/problems/peer-not-reached"));
            }
        }
        assertThat(target.connections).hasValue(0);
        target.close();
        assertThat(peers.find(upland.identity.nodeId())).isEmpty();
    }

    @Test
    void this_node_is_not_its_own_peer() {
        var itself = described();
        itself.put("fingerprint", node.identity().fingerprint());
        itself.put("address", port.address());
        admit(itself).statusCode(422).body("type", equalTo("/problems/peer-is-this-node"));
    }

    @Test
    void a_node_that_was_set_aside_is_told_so_until_it_is_readmitted() {
        admit(described()).statusCode(201);
        assertThat(uplandIsTold().status()).isEqualTo(404);
        var below = "/api/v1/peers/" + upland.identity.nodeId();
        as(ADMINISTRATOR).post(below + "/setting-aside").then().statusCode(200).body("state", equalTo("set-aside"));
        assertThat(uplandIsTold().error()).isEqualTo("set-aside");
        assertThat(peers.active()).extracting(Peer::nodeId).doesNotContain(upland.identity.nodeId());
        as(ADMINISTRATOR).post(below + "/readmission").then().statusCode(200).body("state", equalTo("active"));
        assertThat(uplandIsTold().status()).isEqualTo(404);
        as(ADMINISTRATOR)
                .post("/api/v1/peers/" + "x".repeat(43) + "/setting-aside")
                .then()
                .statusCode(404)
                .body("type", equalTo("/problems/no-such-peer"));
    }

    @Test
    void a_known_node_that_moved_gets_its_new_address_and_tls_key() {
        admit(described()).statusCode(201);
        upland.close();
        upland = new TestNode(vertx, state.resolve("upland"), "Upland", new FederationPort.NothingToTell());
        var moved = described();
        moved.put("name", "Upland, moved");
        admit(moved).statusCode(200).body("address", equalTo(upland.address().toString()));
        as(ADMINISTRATOR)
                .get("/api/v1/peers")
                .then()
                .statusCode(200)
                .body(
                        "findAll { it.nodeId == '" + upland.identity.nodeId() + "' }.name",
                        equalTo(List.of("Upland, moved")));
    }

    @Test
    void both_rotate_their_keys_and_still_know_each_other() {
        admit(described()).statusCode(201);
        upland.admit(here());
        upland.identity.rotate();
        assertThat(uplandIsTold().status()).isEqualTo(404);
        assertThat(peers.find(upland.identity.nodeId()).orElseThrow().keys()).isEqualTo(upland.identity.keys());
        int before = node.identity().keys().keys().size();
        as(ADMINISTRATOR)
                .post("/api/v1/node/key-rotations")
                .then()
                .statusCode(200)
                .body("nodeId", equalTo(here().nodeId()))
                .body("keyNumber", equalTo(before + 1));
        as(INES).post("/api/v1/node/key-rotations").then().statusCode(403);
        var peer = peers.find(upland.identity.nodeId()).orElseThrow();
        client.post(peer, "/federation/populations/" + POPULATION + "/hint", NOTHING);
        assertThat(hints).hasSize(1);
        assertThat(upland.peers.get(here().nodeId()).keys())
                .isEqualTo(node.identity().keys());
    }

    @Test
    void trouble_is_shown_until_the_node_is_heard_of_again() {
        admit(described()).statusCode(201);
        peers.troubled(upland.identity.nodeId(), "It did not answer within 30 seconds.");
        var shown = "find { it.nodeId == '" + upland.identity.nodeId() + "' }.lastTrouble";
        as(ADMINISTRATOR).get("/api/v1/peers").then().body(shown, containsString("30 seconds"));
        uplandIsTold();
        as(ADMINISTRATOR).get("/api/v1/peers").then().body(shown, nullValue());
    }

    @Test
    void each_port_has_what_is_its_own_and_nothing_of_the_other() throws Exception {
        for (var target : List.of("/federation/node", "/federation/keys", entries())) {
            assertThat(Colony.anonymous().get(target).statusCode()).as(target).isEqualTo(404);
        }
        var wire = Wire.client(PinTrust.only(node.identity().tlsPin()), Duration.ofSeconds(5));
        for (var target :
                List.of("/", "/api/v1/node", "/openapi", "/q/health", "/q/metrics", "/today", "/federation")) {
            var answer = wire.send(
                    HttpRequest.newBuilder(URI.create(port.address() + target)).build(), BodyHandlers.ofString());
            assertThat(answer.statusCode()).as(target).isEqualTo(404);
        }
        assertThat(wire.send(
                                HttpRequest.newBuilder(URI.create(port.address() + "/federation/node"))
                                        .build(),
                                BodyHandlers.ofString())
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void a_node_that_takes_no_part_says_how_it_would() {
        var off = new Node();
        assertThatThrownBy(off::identity)
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.problem().type()).isEqualTo(ProblemType.FEDERATION_OFF.uri()))
                .hasMessageContaining("-Ddemebook.federation=on");
    }
}
