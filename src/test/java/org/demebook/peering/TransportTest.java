package org.demebook.peering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import io.vertx.core.Vertx;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.demebook.peering.PeerTrouble.Kind;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two nodes with real TLS on loopback, and whatever else may stand in the place of one. */
class TransportTest {
    private static final UUID POPULATION = UUID.fromString("0197f3a2-0000-7000-8000-000000000001");
    private static final byte[] NOTHING = {};

    @TempDir
    static Path state;

    private static Vertx vertx;
    private static TestNode harbour;
    private static TestNode upland;

    /** What harbour was asked by peers whom it believed. */
    private static final ConcurrentLinkedQueue<String> ASKED = new ConcurrentLinkedQueue<>();

    /** What harbour answers when it is asked for entries. */
    private static volatile Supplier<Conversation.Reply> answer;

    @BeforeAll
    static void start() {
        vertx = Vertx.vertx();
        harbour = new TestNode(vertx, state.resolve("harbour"), "Harbour", new Conversation() {
            @Override
            public Reply entries(String asking, UUID population, String node, long after, int most, String start) {
                ASKED.add("%s entries %s %s %d %d \"%s\"".formatted(asking, population, node, after, most, start));
                return answer.get();
            }

            @Override
            public Reply hint(String asking, UUID population) {
                ASKED.add("%s hint %s".formatted(asking, population));
                return Reply.done();
            }
        });
        upland = new TestNode(vertx, state.resolve("upland"), "Upland", new FederationPort.NothingToTell());
        harbour.admit(upland.asPeer());
        answer = () -> Conversation.Reply.ok("{\"entries\":[]}".getBytes(StandardCharsets.UTF_8));
    }

    @AfterAll
    static void stop() {
        harbour.close();
        upland.close();
        vertx.close();
    }

    private static String entries() {
        return "/federation/populations/%s/journals/%s/entries".formatted(POPULATION, harbour.identity.nodeId());
    }

    private static PeerTrouble troubleOf(ThrowingCallable asking) {
        return catchThrowableOfType(PeerTrouble.class, asking);
    }

    private static Peer at(int port, String pin) {
        var peer = harbour.asPeer();
        return new Peer(
                peer.nodeId(), peer.name(), URI.create("https://127.0.0.1:" + port), pin, peer.keys(), peer.state());
    }

    // ── who may ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_admitted_peer_is_answered() {
        ASKED.clear();
        var said = upland.client.get(harbour.asPeer(), entries() + "?after=17&most=5&start=a.b-c", 1_000);
        assertThat(new String(said, StandardCharsets.UTF_8)).isEqualTo("{\"entries\":[]}");
        upland.client.post(harbour.asPeer(), "/federation/populations/" + POPULATION + "/hint", NOTHING);
        var uplandId = upland.identity.nodeId();
        assertThat(ASKED)
                .containsExactly(
                        "%s entries %s %s 17 5 \"a.b-c\"".formatted(uplandId, POPULATION, harbour.identity.nodeId()),
                        "%s hint %s".formatted(uplandId, POPULATION));
        assertThat(harbour.heardOf.get(uplandId)).isPositive();
    }

    @Test
    void a_typed_error_reaches_who_asked() {
        answer = () -> Conversation.Reply.error(410, "cursor-too-old");
        var trouble = troubleOf(() -> upland.client.get(harbour.asPeer(), entries(), 1_000));
        answer = () -> Conversation.Reply.ok("{\"entries\":[]}".getBytes(StandardCharsets.UTF_8));
        assertThat(trouble.kind()).isEqualTo(Kind.REFUSED);
        assertThat(trouble.status()).isEqualTo(410);
        assertThat(trouble.error()).isEqualTo("cursor-too-old");
    }

    @Test
    void what_has_another_form_than_the_addresses_is_refused_before_anybody_is_asked() {
        ASKED.clear();
        for (var query : List.of(
                "?after=-1",
                "?after=01",
                "?after=9007199254740992",
                "?most=0",
                "?most=10001",
                "?after=1&after=2",
                "?x=1",
                "?after",
                "?start=%2e")) {
            var trouble = answerTo("GET", entries() + query, token("GET", entries() + query, NOTHING), NOTHING);
            assertThat(trouble).as(query).isEqualTo("400 {\"error\":\"malformed-request\"}");
        }
        for (var target : List.of("/federation/", "/federation/populations", "/federation/populations/x/hint")) {
            assertThat(answerTo("POST", target, token("POST", target, NOTHING), NOTHING))
                    .as(target)
                    .isEqualTo("404 {\"error\":\"no-such-address\"}");
        }
        assertThat(answerTo("GET", "/api/v1/node", null, NOTHING)).isEqualTo("404 {\"error\":\"no-such-address\"}");
        assertThat(ASKED).isEmpty();
    }

    @Test
    void a_stranger_learns_nothing_but_that_it_is_one() throws IOException {
        try (var stranger =
                new TestNode(vertx, state.resolve("stranger"), "Stranger", new FederationPort.NothingToTell())) {
            ASKED.clear();
            var trouble = troubleOf(() -> stranger.client.get(harbour.asPeer(), entries(), 1_000));
            assertThat(trouble.status() + trouble.error()).isEqualTo("401unknown-peer");
            // in a peer's name
            var target = entries();
            var forged = RequestToken.header(stranger.identity, harbour.identity.nodeId(), "GET", target, NOTHING);
            assertThat(answerTo("GET", target, forged, NOTHING)).isEqualTo("401 {\"error\":\"unknown-peer\"}");
            var inUplandsName = stranger.identity
                    .sign(
                            "demebook-request",
                            RequestToken.parse(token("GET", target, NOTHING))
                                    .signed()
                                    .payload())
                    .compact();
            assertThat(answerTo("GET", target, "Node " + inUplandsName, NOTHING))
                    .isEqualTo("401 {\"error\":\"unknown-peer\"}");
            assertThat(ASKED).isEmpty();
        }
    }

    @Test
    void a_token_is_good_for_its_addressee_its_target_and_its_body_alone() {
        ASKED.clear();
        var target = entries();
        var good = token("GET", target, NOTHING);
        assertThat(answerTo("GET", target, null, NOTHING)).isEqualTo("401 {\"error\":\"no-token\"}");
        assertThat(answerTo("GET", target, "Bearer abc", NOTHING)).isEqualTo("401 {\"error\":\"malformed-token\"}");
        assertThat(answerTo("GET", target, good + "A", NOTHING)).isEqualTo("401 {\"error\":\"malformed-token\"}");
        assertThat(answerTo("GET", target + "?after=1", good, NOTHING)).isEqualTo("401 {\"error\":\"wrong-target\"}");
        var hint = "/federation/populations/" + POPULATION + "/hint";
        assertThat(answerTo("POST", hint, token("GET", hint, NOTHING), NOTHING))
                .isEqualTo("401 {\"error\":\"wrong-target\"}");
        var elsewhere = RequestToken.header(upland.identity, upland.identity.nodeId(), "GET", target, NOTHING);
        assertThat(answerTo("GET", target, elsewhere, NOTHING)).isEqualTo("401 {\"error\":\"wrong-addressee\"}");
        assertThat(answerTo("POST", hint, token("POST", hint, new byte[] {1}), NOTHING))
                .isEqualTo("401 {\"error\":\"wrong-body\"}");
        assertThat(ASKED).isEmpty();
        assertThat(answerTo("GET", target, good, NOTHING)).startsWith("200 ");
    }

    @Test
    void a_peer_that_was_set_aside_is_told_so_and_nothing_else() {
        try (var aside = new TestNode(vertx, state.resolve("aside"), "Aside", new FederationPort.NothingToTell())) {
            var peer = aside.asPeer();
            harbour.admit(new Peer(
                    peer.nodeId(), peer.name(), peer.address(), peer.tlsPin(), peer.keys(), Peer.State.SET_ASIDE));
            ASKED.clear();
            var trouble = troubleOf(() -> aside.client.get(harbour.asPeer(), entries(), 1_000));
            assertThat(trouble.status() + trouble.error()).isEqualTo("403set-aside");
            assertThat(ASKED).isEmpty();
        }
    }

    // ── keys that go on ────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void after_a_rotation_the_next_key_is_learnt_and_the_old_one_refused() {
        try (var turning =
                new TestNode(vertx, state.resolve("turning"), "Turning", new FederationPort.NothingToTell())) {
            harbour.admit(turning.asPeer());
            var target = entries();
            var old = RequestToken.header(turning.identity, harbour.identity.nodeId(), "GET", target, NOTHING);
            assertThat(answerTo("GET", target, old, NOTHING)).startsWith("200 ");
            turning.identity.rotate();
            turning.identity.rotate();
            // it is known by its new keys without anybody's doing
            assertThat(turning.client.get(harbour.asPeer(), target, 1_000)).isNotEmpty();
            assertThat(harbour.peers.get(turning.identity.nodeId()).keys()).isEqualTo(turning.identity.keys());
            assertThat(answerTo("GET", target, old, NOTHING)).isEqualTo("401 {\"error\":\"old-key\"}");
        }
    }

    @Test
    void keys_are_taken_only_from_their_holder_and_only_if_they_follow() {
        try (var thief = new TestNode(vertx, state.resolve("thief"), "Thief", new FederationPort.NothingToTell());
                var victim =
                        new TestNode(vertx, state.resolve("victim"), "Victim", new FederationPort.NothingToTell())) {
            var before = victim.identity.keys();
            harbour.admit(victim.asPeer());
            victim.identity.rotate();
            // a true chain, brought by somebody else
            var document = CanonicalJson.write(victim.identity.keys().toJson());
            var token = RequestToken.header(thief.identity, harbour.identity.nodeId(), "POST", Routes.KEYS, document);
            assertThat(answerTo("POST", Routes.KEYS, token, document)).isEqualTo("401 {\"error\":\"unknown-peer\"}");
            // and by whoever it is: no peer is told from a stranger
            var nobodys = "{}".getBytes(StandardCharsets.UTF_8);
            for (var from : List.of(victim.identity.nodeId(), "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k")) {
                var inItsName = thief.identity
                        .sign(
                                RequestToken.TYPE,
                                RequestToken.payload(from, harbour.identity.nodeId(), "POST " + Routes.KEYS, nobodys))
                        .compact();
                assertThat(answerTo("POST", Routes.KEYS, "Node " + inItsName, nobodys))
                        .isEqualTo("400 {\"error\":\"malformed-keys\"}");
            }
            // brought by another peer
            harbour.admit(thief.asPeer());
            assertThat(answerTo("POST", Routes.KEYS, token, document)).isEqualTo("401 {\"error\":\"unknown-peer\"}");
            var rubbish = "{\"founding\":\"x\",\"links\":[]}".getBytes(StandardCharsets.UTF_8);
            token = RequestToken.header(thief.identity, harbour.identity.nodeId(), "POST", Routes.KEYS, rubbish);
            assertThat(answerTo("POST", Routes.KEYS, token, rubbish)).isEqualTo("400 {\"error\":\"malformed-keys\"}");
            assertThat(harbour.peers.get(victim.identity.nodeId()).keys()).isEqualTo(before);
            // a shorter chain than the one that is known
            thief.identity.rotate();
            assertThat(thief.client.get(harbour.asPeer(), entries(), 1_000)).isNotEmpty();
            var known = harbour.peers.get(thief.identity.nodeId()).keys();
            assertThat(harbour.learn(
                            thief.identity.nodeId(),
                            KeyChain.parse(thief.asPeer().keys().toJson())))
                    .isTrue();
            assertThat(harbour.peers.get(thief.identity.nodeId()).keys()).isEqualTo(known);
        }
    }

    @Test
    void the_key_document_is_open_and_vouches_for_the_tls_key() {
        var document = NodeDocument.parse(answerTo("GET", Routes.NODE, null, NOTHING)
                .substring("200 ".length())
                .getBytes(StandardCharsets.UTF_8));
        assertThat(document.keys().nodeId()).isEqualTo(harbour.identity.nodeId());
        assertThat(document.tlsPin()).isEqualTo(harbour.identity.tlsPin());
        assertThat(document.name()).isEqualTo("Harbour");
        assertThat(contact().fetch(harbour.address())).isEqualTo(document);
    }

    @Test
    void somebody_in_between_who_passes_the_key_document_on_is_noticed() throws Exception {
        var true_ = answerTo("GET", Routes.NODE, null, NOTHING).substring("200 ".length());
        try (var between = RawTls.tls(TlsKey.generate(), RawTls.answers(true_))) {
            var trouble = troubleOf(() -> contact().fetch(URI.create("https://127.0.0.1:" + between.port())));
            assertThat(trouble.kind()).isEqualTo(Kind.WRONG_TLS_KEY);
            assertThat(trouble).hasMessageContaining(harbour.identity.tlsPin());
        }
    }

    private static FirstContact contact() {
        return new FirstContact(Duration.ofSeconds(5), Duration.ofSeconds(10));
    }

    // ── pins ───────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void another_key_than_the_pinned_one_is_not_spoken_to() throws Exception {
        var pinnedToUpland = at(harbour.port(), upland.identity.tlsPin());
        assertThat(troubleOf(() -> upland.client.get(pinnedToUpland, entries(), 1_000))
                        .kind())
                .isEqualTo(Kind.WRONG_TLS_KEY);
        var heads = new CountDownLatch(1);
        try (var other = RawTls.tls(TlsKey.generate(), socket -> heads.countDown())) {
            assertThat(troubleOf(() -> upland.client.get(at(other.port(), harbour.identity.tlsPin()), entries(), 1_000))
                            .kind())
                    .isEqualTo(Kind.WRONG_TLS_KEY);
            assertThat(other.connections).hasPositiveValue();
            assertThat(heads.await(300, TimeUnit.MILLISECONDS))
                    .as("a request was sent to whoever it was")
                    .isFalse();
        }
    }

    @Test
    void older_tls_and_plain_http_are_not_spoken() throws Exception {
        var plain = vertx.createHttpServer()
                .requestHandler(request -> request.response().end("{}"))
                .listen(0, "127.0.0.1")
                .toCompletionStage()
                .toCompletableFuture()
                .join();
        assertThat(troubleOf(() ->
                                upland.client.get(at(plain.actualPort(), harbour.identity.tlsPin()), entries(), 1_000))
                        .kind())
                .isEqualTo(Kind.NO_TLS);
        plain.close();
        var key = TlsKey.generate();
        try (var older = RawTls.tls(key, "TLSv1.2", RawTls.answers("{}"))) {
            assertThat(troubleOf(() -> upland.client.get(at(older.port(), key.pin()), entries(), 1_000))
                            .kind())
                    .isEqualTo(Kind.NO_TLS);
        }
        // and harbour speaks neither
        assertThatThrownBy(() -> HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + harbour.port() + Routes.NODE))
                                        .timeout(Duration.ofSeconds(5))
                                        .build(),
                                BodyHandlers.ofString()))
                .isInstanceOf(IOException.class);
    }

    // ── answers ────────────────────────────────────────────────────────────────────────────────────────────────────

    @Test
    void an_answer_that_cannot_be_used_has_its_name() throws Exception {
        var key = TlsKey.generate();
        try (var elsewhere = RawTls.plain(RawTls.answers("{}"))) {
            var there = "127.0.0.1:" + elsewhere.port();
            assertThat(kindOf(
                            key,
                            RawTls.says("HTTP/1.1 302 Found\r\nLocation: http://" + there
                                    + "/\r\nContent-Length: 0\r\n\r\n")))
                    .isEqualTo(Kind.REDIRECTED);
            assertThat(kindOf(
                            key,
                            RawTls.says("HTTP/1.1 307 T\r\nLocation: https://" + there
                                    + "/federation/node\r\nContent-Length: 0\r\n\r\n")))
                    .isEqualTo(Kind.REDIRECTED);
            assertThat(kindOf(key, RawTls.answers("{\"address\":\"https://" + there + "\"}")))
                    .isNull();
            assertThat(kindOf(key, RawTls.says("HTTP/1.1 503 No\r\nContent-Length: 11\r\n\r\n<b>down</b>")))
                    .isEqualTo(Kind.NOT_UNDERSTOOD);
            assertThat(elsewhere.connections)
                    .as("connections to an address that a peer named")
                    .hasValue(0);
        }
        assertThat(kindOf(key, RawTls.answers("x".repeat(1_001)))).isEqualTo(Kind.ANSWER_TOO_LARGE);
        assertThat(kindOf(key, RawTls.answers("x".repeat(1_000)))).isNull();
        assertThat(kindOf(
                        key, RawTls.says("HTTP/1.1 200 OK\r\nContent-Encoding: gzip\r\nContent-Length: 3\r\n\r\nxyz")))
                .isEqualTo(Kind.NOT_UNDERSTOOD);
        assertThat(kindOf(key, RawTls.says("no HTTP at all\r\n\r\n"))).isEqualTo(Kind.UNREACHABLE);
    }

    @Test
    void reading_stops_where_an_answer_is_too_large_although_it_never_ends() throws Exception {
        var key = TlsKey.generate();
        var cut = new CountDownLatch(1);
        assertThat(kindOf(key, socket -> {
                    var out = socket.getOutputStream();
                    out.write("HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\n".getBytes(StandardCharsets.UTF_8));
                    try {
                        while (true) {
                            out.write("400\r\n".getBytes(StandardCharsets.UTF_8));
                            out.write(new byte[0x400]);
                            out.write("\r\n".getBytes(StandardCharsets.UTF_8));
                        }
                    } catch (IOException gone) {
                        cut.countDown();
                    }
                }))
                .isEqualTo(Kind.ANSWER_TOO_LARGE);
        assertThat(cut.await(5, TimeUnit.SECONDS))
                .as("the connection was dropped")
                .isTrue();
    }

    @Test
    void an_answer_that_does_not_come_in_time_is_given_up_wherever_it_halts() throws Exception {
        var key = TlsKey.generate();
        var impatient = new PinnedClient(upland.identity, Duration.ofMillis(500), Duration.ofMillis(700));
        RawTls.Script never = socket -> Thread.sleep(10_000);
        RawTls.Script halfway = socket -> {
            RawTls.says("HTTP/1.1 200 OK\r\nContent-Length: 100\r\n\r\nhalf").play(socket);
            Thread.sleep(10_000);
        };
        RawTls.Script drop = socket -> {
            RawTls.says("HTTP/1.1 200 OK\r\nContent-Length: 100\r\n\r\n").play(socket);
            for (int i = 0; i < 100; i++) {
                RawTls.says("x").play(socket);
                Thread.sleep(200);
            }
        };
        for (var script : List.of(never, halfway, drop)) {
            try (var slow = RawTls.tls(key, script)) {
                var begin = System.nanoTime();
                assertThat(troubleOf(() -> impatient.get(at(slow.port(), key.pin()), entries(), 1_000))
                                .kind())
                        .isEqualTo(Kind.TIMED_OUT);
                assertThat(Duration.ofNanos(System.nanoTime() - begin)).isLessThan(Duration.ofSeconds(4));
            }
        }
    }

    @Test
    void nothing_listening_is_told_as_that() throws IOException {
        int port;
        try (var closed = RawTls.plain(socket -> {})) {
            port = closed.port();
        }
        assertThat(troubleOf(() -> upland.client.get(at(port, harbour.identity.tlsPin()), entries(), 1_000))
                        .kind())
                .isEqualTo(Kind.UNREACHABLE);
    }

    private static Kind kindOf(TlsKey key, RawTls.Script script) throws Exception {
        try (var server = RawTls.tls(key, script)) {
            var trouble = troubleOf(() -> upland.client.get(at(server.port(), key.pin()), entries(), 1_000));
            return trouble == null ? null : trouble.kind();
        }
    }

    // ── limits of the server ───────────────────────────────────────────────────────────────────────────────────────

    @Test
    void a_head_or_a_body_that_is_too_large_is_not_read() {
        var target = entries();
        assertThat(answerTo("GET", target, "Node " + "A".repeat(10_000), NOTHING))
                .isEqualTo("431 {\"error\":\"head-too-large\"}");
        var longTarget = "/federation/" + "a".repeat(3_000);
        assertThat(answerTo("GET", longTarget, null, NOTHING)).isEqualTo("431 {\"error\":\"head-too-large\"}");
        var hint = "/federation/populations/" + POPULATION + "/hint";
        var body = new byte[10];
        assertThat(answerTo("POST", hint, token("POST", hint, body), body)).isEqualTo("413 {\"error\":\"too-large\"}");
        var large = new byte[Limits.MOST_BODY_BYTES + 1];
        assertThat(answerTo("POST", Routes.KEYS, token("POST", Routes.KEYS, large), large))
                .isEqualTo("413 {\"error\":\"too-large\"}");
    }

    @Test
    void one_peer_cannot_take_every_turn() throws Exception {
        var go = new CountDownLatch(1);
        var waiting = new CountDownLatch(Limits.MOST_AT_A_TIME);
        answer = () -> {
            waiting.countDown();
            try {
                go.await(20, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return Conversation.Reply.ok("{}".getBytes(StandardCharsets.UTF_8));
        };
        try (var other = new TestNode(vertx, state.resolve("other"), "Other", new FederationPort.NothingToTell())) {
            harbour.admit(other.asPeer());
            var asked = new ArrayList<CompletableFuture<byte[]>>();
            for (int i = 0; i < Limits.MOST_AT_A_TIME; i++) {
                asked.add(CompletableFuture.supplyAsync(
                        () -> upland.client.get(harbour.asPeer(), entries(), 1_000), work -> new Thread(work).start()));
            }
            assertThat(waiting.await(10, TimeUnit.SECONDS)).isTrue();
            var trouble = troubleOf(() -> upland.client.get(harbour.asPeer(), entries(), 1_000));
            assertThat(trouble.status() + trouble.error()).isEqualTo("429too-many-requests");
            // another one is still served
            other.client.post(harbour.asPeer(), "/federation/populations/" + POPULATION + "/hint", NOTHING);
            go.countDown();
            for (var one : asked) {
                assertThat(one.get(10, TimeUnit.SECONDS)).isNotEmpty();
            }
        } finally {
            go.countDown();
            answer = () -> Conversation.Reply.ok("{\"entries\":[]}".getBytes(StandardCharsets.UTF_8));
        }
        assertThat(upland.client.get(harbour.asPeer(), entries(), 1_000)).isNotEmpty();
    }

    @Test
    void a_conversation_that_fails_tells_the_peer_nothing_of_it() {
        answer = () -> {
            throw new IllegalStateException("the animal MC-H-1-X is wren's");
        };
        var said = answerTo("GET", entries(), token("GET", entries(), NOTHING), NOTHING);
        answer = () -> Conversation.Reply.ok("{\"entries\":[]}".getBytes(StandardCharsets.UTF_8));
        assertThat(said).isEqualTo("500 {\"error\":\"failed\"}");
    }

    @Test
    void a_target_elsewhere_is_a_bug_of_ours() {
        for (var target : List.of("/api/v1/node", "https://127.0.0.1/federation/", "/federation/x y", "@127.0.0.1/")) {
            assertThatThrownBy(() -> upland.client.get(harbour.asPeer(), target, 10))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    // ── a request of any form, from upland's address ─────────────────────────────────────────────────────────────────

    private static String token(String method, String target, byte[] body) {
        return RequestToken.header(upland.identity, harbour.identity.nodeId(), method, target, body);
    }

    /** Status and body. */
    private static String answerTo(String method, String target, String authorization, byte[] body) {
        var request = HttpRequest.newBuilder(URI.create("https://127.0.0.1:" + harbour.port() + target))
                .timeout(Duration.ofSeconds(15))
                .method(method, body.length == 0 ? BodyPublishers.noBody() : BodyPublishers.ofByteArray(body));
        if (authorization != null) {
            request.header("Authorization", authorization);
        }
        try {
            HttpResponse<String> answer = Wire.client(PinTrust.only(harbour.identity.tlsPin()), Duration.ofSeconds(5))
                    .send(request.build(), BodyHandlers.ofString());
            return answer.statusCode() + " " + answer.body();
        } catch (IOException e) {
            return "broken: " + e;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
