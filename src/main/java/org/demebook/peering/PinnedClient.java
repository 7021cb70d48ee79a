package org.demebook.peering;

import static org.demebook.peering.PeerTrouble.Kind.NOT_UNDERSTOOD;

import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;

/**
 * Asks other nodes over TLS 1.3, each by its pinned key and by no other. Needs no container. Safe for use by several threads.
 *
 * <p>Where a peer does not know this node's key in use, it is sent the chain, and asked again.
 */
public final class PinnedClient implements PeerClient {
    private static final Pattern TARGET = Pattern.compile("/federation/[A-Za-z0-9/_.?=&~-]*");
    private static final Pattern ERROR = Pattern.compile("[a-z][a-z0-9-]{1,39}");
    private static final Duration TOLD_AGAIN_AFTER = Duration.ofMinutes(1);
    private static final byte[] NOTHING = {};

    private final NodeIdentity self;
    private final Duration connecting;
    private final Duration answering;

    /** By pin: a connection is good for nothing else. */
    private final Map<String, HttpClient> clients = new ConcurrentHashMap<>();

    /** Which peers were sent which of this node's keys; not again with every request of a peer that does not want them. */
    private final Cache<String, Boolean> toldKeys =
            Caffeine.newBuilder().expireAfterWrite(TOLD_AGAIN_AFTER).build();

    public PinnedClient(NodeIdentity self) {
        this(self, Limits.CONNECTING, Limits.ANSWERING);
    }

    PinnedClient(NodeIdentity self, Duration connecting, Duration answering) {
        this.self = self;
        this.connecting = connecting;
        this.answering = answering;
    }

    @Override
    public byte[] get(Peer peer, String target, int mostBytes) {
        var answer = ask(peer, "GET", target, NOTHING, mostBytes);
        if (answer.statusCode() != 200) {
            throw new PeerTrouble(NOT_UNDERSTOOD, "It answered %d to a question.".formatted(answer.statusCode()));
        }
        return answer.body();
    }

    @Override
    public void post(Peer peer, String target, byte[] body) {
        if (body.length > Limits.MOST_BODY_BYTES) {
            throw new IllegalArgumentException(body.length + " bytes");
        }
        ask(peer, "POST", target, body, Limits.MOST_ERROR_BYTES);
    }

    private HttpResponse<byte[]> ask(Peer peer, String method, String target, byte[] body, int mostBytes) {
        if (!TARGET.matcher(target).matches()) {
            throw new IllegalArgumentException(target);
        }
        try {
            return once(peer, method, target, body, mostBytes);
        } catch (PeerTrouble trouble) {
            var keys = self.keys();
            var told = peer.nodeId() + " " + keys.current().x();
            if (!trouble.error().equals("unknown-peer")
                    || keys.keys().size() == 1
                    || toldKeys.asMap().putIfAbsent(told, true) != null) {
                throw trouble;
            }
            tell(peer, keys, told);
            return once(peer, method, target, body, mostBytes);
        }
    }

    private void tell(Peer peer, KeyChain keys, String told) {
        try {
            once(peer, "POST", Routes.KEYS, CanonicalJson.write(keys.toJson()), Limits.MOST_ERROR_BYTES);
        } catch (PeerTrouble trouble) {
            if (!trouble.error().equals("unknown-peer")) {
                toldKeys.invalidate(told); // it may go better another time
            }
            throw trouble;
        }
    }

    private HttpResponse<byte[]> once(Peer peer, String method, String target, byte[] body, int mostBytes) {
        var request = HttpRequest.newBuilder(at(peer.address(), target))
                .header("Authorization", RequestToken.header(self, peer.nodeId(), method, target, body))
                .timeout(answering)
                .method(method, body.length == 0 ? BodyPublishers.noBody() : BodyPublishers.ofByteArray(body))
                .build();
        var client = clients.computeIfAbsent(peer.tlsPin(), pin -> Wire.client(PinTrust.only(pin), connecting));
        var answer = Wire.send(client, request, mostBytes, answering);
        if (answer.statusCode() != 200 && answer.statusCode() != 204) {
            throw PeerTrouble.refused(peer, answer.statusCode(), error(answer));
        }
        return answer;
    }

    static URI at(URI address, String target) {
        return URI.create("https://" + address.getRawAuthority() + target);
    }

    private static String error(HttpResponse<byte[]> answer) {
        try {
            ObjectNode said = CanonicalJson.read(answer.body(), Limits.MOST_ERROR_BYTES);
            var error = said.path("error").asText();
            if (ERROR.matcher(error).matches()) {
                return error;
            }
        } catch (Malformed notOurs) {
            // told below
        }
        throw new PeerTrouble(
                NOT_UNDERSTOOD, "It answered %d, without a word of ours why.".formatted(answer.statusCode()));
    }
}
