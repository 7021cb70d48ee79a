package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A small client of this server's own API, for the demo. */
final class DemoClient {
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final HttpClient http = HttpClient.newHttpClient();
    private final String server;
    private final ObjectMapper json;

    DemoClient(int port, ObjectMapper json) {
        this.server = "http://127.0.0.1:" + port;
        this.json = json;
    }

    void awaitServer() throws IOException, InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (true) {
            try {
                get(null, "/api/v1/node");
                return;
            } catch (ConnectException notYet) {
                if (System.nanoTime() > end) {
                    throw notYet;
                }
                Thread.sleep(50);
            }
        }
    }

    JsonNode get(@Nullable String token, String path) throws IOException, InterruptedException {
        return send(request(token, path).GET().build());
    }

    JsonNode post(@Nullable String token, String path, JsonNode body) throws IOException, InterruptedException {
        return post(token, path, "application/json", json.writeValueAsBytes(body));
    }

    JsonNode post(@Nullable String token, String path, String contentType, byte[] body)
            throws IOException, InterruptedException {
        return send(request(token, path)
                .header("Content-Type", contentType)
                .header("Idempotency-Key", UUID.randomUUID().toString())
                .POST(BodyPublishers.ofByteArray(body))
                .build());
    }

    /** Opens a collection and shares it by a ready choice. */
    void openCollection(String token, String population, String label, String sharing)
            throws IOException, InterruptedException {
        var opened =
                post(token, population + "/collections", json.createObjectNode().put("label", label));
        var address = population + "/collections/" + opened.get("id").asText() + "/sharing";
        var choice = json.createObjectNode().put("choice", sharing);
        send(request(token, address)
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofByteArray(json.writeValueAsBytes(choice)))
                .build());
    }

    /** Reads what is there and states it anew, on the revision that was read. */
    JsonNode put(String token, String read, String path, JsonNode body) throws IOException, InterruptedException {
        var answer = http.send(request(token, read).GET().build(), BodyHandlers.ofByteArray());
        var tag = answer.headers()
                .firstValue("ETag")
                .orElseThrow(() -> new IllegalStateException("GET %s has no ETag".formatted(read)));
        return send(request(token, path)
                .header("Content-Type", "application/json")
                .header("If-Match", tag)
                .PUT(BodyPublishers.ofByteArray(json.writeValueAsBytes(body)))
                .build());
    }

    /** Sends a sheet and waits until it is in; fails with its findings when it is refused. */
    void importSheet(String token, String population, byte[] csv) throws IOException, InterruptedException {
        var run = post(token, population + "/imports", "text/csv", csv);
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (run.get("state").asText().equals("running") && System.nanoTime() < end) {
            Thread.sleep(50);
            run = get(token, population + "/imports/" + run.get("id").asText());
        }
        if (!run.get("state").asText().equals("done")) {
            throw new IllegalStateException("A sheet of the demo was not taken: " + run);
        }
    }

    private HttpRequest.Builder request(@Nullable String token, String path) {
        var request = HttpRequest.newBuilder(URI.create(server + path)).timeout(PATIENCE);
        return token == null ? request : request.header("Authorization", "Bearer " + token);
    }

    private JsonNode send(HttpRequest request) throws IOException, InterruptedException {
        var response = http.send(request, BodyHandlers.ofByteArray());
        var body = json.readTree(response.body());
        if (response.statusCode() >= 400) {
            throw new IllegalStateException("%s %s: %s".formatted(request.method(), request.uri(), body));
        }
        return body;
    }
}
