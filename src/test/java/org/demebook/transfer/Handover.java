package org.demebook.transfer;

import static org.demebook.Backstage.change;

import io.restassured.RestAssured;
import io.restassured.config.HttpClientConfig;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.demebook.Colony;

/** What the two sides of a transfer send. */
final class Handover {
    private static final AtomicInteger ADDRESSES = new AtomicInteger();

    private final Colony colony;

    Handover(Colony colony) {
        this.colony = colony;
    }

    ValidatableResponse offer(String from, String animal, String kind, String to) {
        return colony.post(from, "/transfers", Map.of("animal", animal, "kind", kind, "to", to));
    }

    /** A sale on offer; its id. */
    String offered(String from, String animal, String to) {
        return offer(from, animal, "sale", to).statusCode(201).extract().path("transfer.id");
    }

    /** An animal handed out to somebody without an account. */
    ValidatableResponse handOut(String from, String animal) {
        return colony.post(from, "/transfers", Map.of("animal", animal, "kind", "sale", "withClaimCode", true));
    }

    /** The animal is the other keeper's, and the transfer at its end. */
    String accepted(String from, String animal, String kind, String to) {
        String id = offer(from, animal, kind, to).statusCode(201).extract().path("transfer.id");
        answer(to, id, "acceptance").statusCode(200);
        return id;
    }

    ValidatableResponse answer(String keeper, String id, String answer) {
        return answer(keeper, id, answer, Map.of());
    }

    ValidatableResponse answer(String keeper, String id, String answer, Map<String, ?> body) {
        return colony.post(keeper, "/transfers/" + id + "/" + answer, body);
    }

    ValidatableResponse get(String keeper, String id) {
        return colony.get(keeper, "/transfers/" + id);
    }

    String collection(String keeper) {
        return colony.get(keeper, "/collections").extract().path("[0].id");
    }

    /** An offer whose time is over, without waiting for it. */
    static void runOut(String id) {
        change("update demebook.transfer set expires_at = offered_at where id = ?", UUID.fromString(id));
    }

    static Map<String, Object> with(Map<String, ?> body, String field, Object value) {
        var changed = new HashMap<String, Object>(body);
        changed.put(field, value);
        return changed;
    }

    /** An address of the sender's own: wrong codes that come from it count against nobody else. */
    static String freshAddress() {
        int address = ADDRESSES.incrementAndGet();
        return "127.0.%d.%d".formatted(1 + address / 250, 1 + address % 250);
    }

    static RequestSpecification from(String address, RequestSpecification sender) {
        try {
            var local = HttpClientConfig.httpClientConfig()
                    .setParam("http.route.local-address", InetAddress.getByName(address));
            return sender.config(RestAssured.config().httpClient(local));
        } catch (UnknownHostException e) {
            throw new IllegalStateException(e);
        }
    }
}
