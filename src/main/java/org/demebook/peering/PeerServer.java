package org.demebook.peering;

import io.netty.handler.codec.TooLongFrameException;
import io.vertx.core.Future;
import io.vertx.core.Promise;
import io.vertx.core.Vertx;
import io.vertx.core.WorkerExecutor;
import io.vertx.core.buffer.Buffer;
import io.vertx.core.http.HttpConnection;
import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServer;
import io.vertx.core.http.HttpServerOptions;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.net.PfxOptions;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.function.Supplier;
import org.demebook.peering.Conversation.Reply;
import org.jboss.logging.Logger;

/**
 * The TLS port: a server of its own, which has the addresses of docs/federation/transport.md and no other; the ordinary port has none of
 * them. Needs no container, so that one process can be several nodes.
 */
public final class PeerServer implements AutoCloseable {
    private static final Logger LOG = Logger.getLogger(PeerServer.class);
    private static final int WORKERS = 8;

    /** Of whom it is not known yet who they are: they have their turns together. */
    private static final String STRANGERS = "";

    private static final long STARTING_SECONDS = 20;

    private final Vertx vertx;
    private final WorkerExecutor workers;
    private final Supplier<byte[]> document;
    private final Asking asking;
    private final PeerBook peers;
    private final Routes routes;
    private final Map<String, AtomicInteger> atWork = new ConcurrentHashMap<>();
    private final Connections connections;
    private final HttpServer server;

    private PeerServer(
            Vertx vertx, String host, int port, NodeIdentity self, String name, PeerBook peers, Conversation held) {
        this.vertx = vertx;
        this.workers = vertx.createSharedWorkerExecutor("federation-" + self.nodeId(), WORKERS);
        this.document = new NodeDocument.Kept(self, name);
        this.asking = new Asking(self, peers);
        this.peers = peers;
        this.routes = new Routes(held);
        this.connections = new Connections(vertx);
        this.server = vertx.createHttpServer(options(host, port, self))
                .connectionHandler(connections::opened)
                .invalidRequestHandler(this::invalid)
                .exceptionHandler(broken -> LOG.debugf("a connection to the TLS port broke: %s", broken.getMessage()))
                .requestHandler(this::handle);
    }

    /**
     * Listens when this returns.
     *
     * @param port 0 for any that is free
     * @throws IllegalStateException if it cannot listen there
     */
    public static PeerServer start(
            Vertx vertx, String host, int port, NodeIdentity self, String name, PeerBook peers, Conversation held) {
        var started = new PeerServer(vertx, host, port, self, name, peers, held);
        try {
            started.server
                    .listen()
                    .toCompletionStage()
                    .toCompletableFuture()
                    .orTimeout(STARTING_SECONDS, TimeUnit.SECONDS)
                    .join();
        } catch (CompletionException e) {
            throw new IllegalStateException(
                    "The port for other nodes, %s:%d, cannot be opened: %s. Set demebook.federation.port to a free one."
                            .formatted(host, port, e.getCause().getMessage()),
                    e);
        }
        return started;
    }

    public int port() {
        return server.actualPort();
    }

    @Override
    public void close() {
        server.close().toCompletionStage().toCompletableFuture().join();
        workers.close();
    }

    private static HttpServerOptions options(String host, int port, NodeIdentity self) {
        return new HttpServerOptions()
                .setHost(host)
                .setPort(port)
                .setSsl(true)
                .setKeyCertOptions(new PfxOptions()
                        .setValue(Buffer.buffer(self.tls().store()))
                        .setPassword(TlsKey.PASSWORD))
                .setEnabledSecureTransportProtocols(Set.of("TLSv1.3"))
                .setUseAlpn(false)
                .setSslHandshakeTimeout(Limits.CONNECTING.toSeconds())
                .setSslHandshakeTimeoutUnit(TimeUnit.SECONDS)
                .setMaxInitialLineLength(Limits.MOST_TARGET_BYTES + 64)
                .setMaxHeaderSize(Limits.MOST_HEAD_BYTES)
                .setIdleTimeout((int) Limits.IDLE.toSeconds())
                .setIdleTimeoutUnit(TimeUnit.SECONDS)
                .setDecompressionSupported(false)
                .setCompressionSupported(false);
    }

    private void handle(HttpServerRequest request) {
        connections.asked(request.connection());
        var deadline = vertx.setTimer(
                Limits.ANSWERING.toMillis(), late -> request.connection().close());
        request.response().endHandler(sent -> vertx.cancelTimer(deadline));
        request.response().closeHandler(closed -> vertx.cancelTimer(deadline));
        request.pause(); // nothing is read before it is known whether it may be sent
        work(() -> prepare(request))
                .compose(prepared ->
                        body(request, prepared.mostBodyBytes).compose(body -> work(() -> prepared.answer(body))))
                .otherwise(failure -> turned(request, failure))
                .onSuccess(reply -> send(request, reply));
    }

    private <T> Future<T> work(Supplier<T> blocking) {
        return workers.executeBlocking(blocking::get, false);
    }

    /** What is left to do when the body is there. */
    private record Prepared(int mostBodyBytes, Function<byte[], Reply> rest) {
        Reply answer(byte[] body) {
            return rest.apply(body);
        }
    }

    private Prepared prepare(HttpServerRequest request) {
        var method = request.method().name();
        var target = request.uri();
        if (method.equals("GET") && target.equals(Routes.NODE)) {
            return new Prepared(0, body -> Reply.ok(document.get()));
        }
        if (!target.startsWith("/federation/") || target.length() > Limits.MOST_TARGET_BYTES) {
            throw new Turned(404, "no-such-address");
        }
        var token = asking.claimed(request.getHeader("Authorization"), method + " " + target);
        if (method.equals("POST") && target.equals(Routes.KEYS)) {
            return new Prepared(
                    Limits.MOST_BODY_BYTES,
                    body -> counted(STRANGERS, () -> {
                        requireBody(token, body);
                        asking.learn(token, body);
                        return Reply.done();
                    }));
        }
        var peer = asking.verified(token);
        var route = routes.find(method, target);
        return new Prepared(
                route.mostBodyBytes(),
                body -> counted(peer.nodeId(), () -> {
                    requireBody(token, body);
                    peers.heardOf(peer.nodeId());
                    return route.speak().apply(peer.nodeId(), body);
                }));
    }

    private static void requireBody(RequestToken token, byte[] body) {
        if (!token.isOf(body)) {
            throw new Turned(401, "wrong-body");
        }
    }

    /** A few requests of one peer at a time, so that none takes the others' turn. */
    private Reply counted(String nodeId, Supplier<Reply> work) {
        var now = atWork.computeIfAbsent(nodeId, none -> new AtomicInteger());
        try {
            if (now.incrementAndGet() > Limits.MOST_AT_A_TIME) {
                throw new Turned(429, "too-many-requests");
            }
            return work.get();
        } finally {
            now.decrementAndGet();
        }
    }

    private static Future<byte[]> body(HttpServerRequest request, int most) {
        var read = Promise.<byte[]>promise();
        var body = Buffer.buffer();
        request.handler(chunk -> {
            if (body.length() + chunk.length() > most) {
                request.pause();
                read.tryFail(new Turned(413, "too-large"));
            } else {
                body.appendBuffer(chunk);
            }
        });
        request.exceptionHandler(read::tryFail);
        request.endHandler(end -> read.tryComplete(body.getBytes()));
        request.resume();
        return read.future();
    }

    private static Reply turned(HttpServerRequest request, Throwable failure) {
        if (failure instanceof Turned turned) {
            return turned.reply();
        }
        LOG.errorf(failure, "unexpected, at %s", Routes.shown(request.uri()));
        return Reply.error(500, "failed");
    }

    private static void send(HttpServerRequest request, Reply reply) {
        var response = request.response();
        if (response.closed() || response.ended()) {
            return;
        }
        response.setStatusCode(reply.status());
        if (reply.status() != 204) {
            response.putHeader("Content-Type", "application/json").putHeader("Cache-Control", "no-store");
        }
        if (request.isEnded()) {
            response.end(Buffer.buffer(reply.body()));
        } else { // what it still sends is not read
            response.putHeader("Connection", "close");
            response.end(Buffer.buffer(reply.body()))
                    .onComplete(sent -> request.connection().close());
        }
    }

    /** A head that is too large, or none of HTTP. */
    private void invalid(HttpServerRequest request) {
        var tooLarge = request.decoderResult().cause() instanceof TooLongFrameException;
        if (request.method() == HttpMethod.CONNECT || request.response().ended()) {
            request.connection().close();
            return;
        }
        var reply = tooLarge ? Reply.error(431, "head-too-large") : Reply.error(400, "malformed-request");
        request.response()
                .setStatusCode(reply.status())
                .putHeader("Content-Type", "application/json")
                .putHeader("Connection", "close")
                .end(Buffer.buffer(reply.body()))
                .onComplete(sent -> request.connection().close());
    }

    /** How many there are, of whom; and that each asks something soon. */
    private static final class Connections {
        private final Vertx vertx;
        private final AtomicInteger open = new AtomicInteger();
        private final Map<String, Integer> byAddress = new ConcurrentHashMap<>();
        private final Set<HttpConnection> silent = ConcurrentHashMap.newKeySet();

        Connections(Vertx vertx) {
            this.vertx = vertx;
        }

        void opened(HttpConnection connection) {
            var remote = connection.remoteAddress();
            var address = remote == null || remote.hostAddress() == null ? "" : remote.hostAddress();
            int all = open.incrementAndGet();
            int some = byAddress.merge(address, 1, Integer::sum);
            connection.closeHandler(closed -> {
                open.decrementAndGet();
                silent.remove(connection);
                byAddress.computeIfPresent(address, (key, count) -> count == 1 ? null : count - 1);
            });
            if (all > Limits.MOST_CONNECTIONS || some > Limits.MOST_CONNECTIONS_FROM_ONE_ADDRESS) {
                connection.close();
                return;
            }
            silent.add(connection);
            vertx.setTimer(Limits.IDLE.toMillis(), late -> {
                if (silent.remove(connection)) {
                    connection.close();
                }
            });
        }

        void asked(HttpConnection connection) {
            silent.remove(connection);
        }
    }
}
