package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What the reader of a diary remembers: which number an animal got that the diary calls by a name, who holds it, and the
 * ids of what goes on.
 */
final class DiaryWorld {
    /** @param holder sign-in name; nothing once it is dead or with somebody who does not take part */
    private record Named(String number, @Nullable String holder, boolean bornHere) {}

    final ObjectMapper json;
    private final DemoClient client;
    private final String population;
    private final Map<String, String> tokens;
    private final Map<String, Named> animals = new LinkedHashMap<>();
    private final Map<String, String> ids = new HashMap<>();

    DiaryWorld(DemoClient client, ObjectMapper json, String code, Map<String, String> tokens) {
        this.client = client;
        this.json = json;
        this.population = "/api/v1/populations/" + code;
        this.tokens = tokens;
    }

    // ── requests ─────────────────────────────────────────────────────────────────────────────────────────────────────

    ObjectNode body() {
        return json.createObjectNode();
    }

    /** A body with the day and the notes of a line. */
    ObjectNode body(DiaryLine line, String dayField) {
        var body = body().put(dayField, line.on().toString());
        return line.notes().isEmpty() ? body : body.put("notes", line.notes());
    }

    JsonNode get(DiaryLine line, String below) throws IOException, InterruptedException {
        return client.get(token(line), population + below);
    }

    JsonNode post(DiaryLine line, String below, JsonNode body) throws IOException, InterruptedException {
        return client.post(token(line), population + below, body);
    }

    JsonNode postJpeg(DiaryLine line, String below, byte[] jpeg) throws IOException, InterruptedException {
        return client.post(token(line), population + below, "image/jpeg", jpeg);
    }

    /** A request that is of no population. */
    JsonNode postToNode(DiaryLine line, String path, JsonNode body) throws IOException, InterruptedException {
        return client.post(token(line), path, body);
    }

    JsonNode put(DiaryLine line, String read, String below, JsonNode body) throws IOException, InterruptedException {
        return client.put(token(line), population + read, population + below, body);
    }

    private String token(DiaryLine line) {
        var token = tokens.get(line.keeper());
        if (token == null) {
            throw new IllegalArgumentException("No keeper signs in as " + line.keeper());
        }
        return token;
    }

    // ── animals ──────────────────────────────────────────────────────────────────────────────────────────────────────

    void meet(String name, String number, @Nullable String holder, boolean bornHere) {
        if (animals.putIfAbsent(name, new Named(number, holder, bornHere)) != null) {
            throw new IllegalArgumentException("Two animals are called " + name);
        }
    }

    /** The young of a litter, named {@code Ash/1}, {@code Ash/2} and so on after those that are there already. */
    void meetYoung(String dam, String holder, JsonNode young) {
        int n = (int) animals.keySet().stream()
                .filter(name -> name.startsWith(dam + "/"))
                .count();
        for (var one : young) {
            meet(dam + "/" + ++n, one.get("number").asText(), holder, true);
        }
    }

    void gone(String name, @Nullable String holder) {
        animals.computeIfPresent(name, (key, named) -> new Named(named.number(), holder, named.bornHere()));
    }

    String number(String name) {
        return named(name).number();
    }

    String animal(DiaryLine line) {
        return number(line.animal());
    }

    private Named named(String name) {
        var named = animals.get(name);
        if (named == null) {
            throw new IllegalArgumentException("No animal is called \"%s\" so far".formatted(name));
        }
        return named;
    }

    /**
     * The names that a line is about: {@code Ash}, {@code Ash, Briar}, {@code Ash/*} (the young of a dam that the keeper
     * still has), {@code the young}, {@code the rack} (all but the young), each perhaps {@code without Clover, Dulse}.
     */
    List<String> names(DiaryLine line) {
        var words = line.animal().split(" without ");
        var left = words.length == 1 ? List.<String>of() : DiaryLine.parts(words[1], ",");
        left.forEach(this::named);
        return switch (words[0]) {
            case "the rack" -> held(line.keeper(), "", false, left);
            case "the young" -> held(line.keeper(), "", true, left);
            default ->
                words[0].endsWith("/*")
                        ? held(line.keeper(), words[0].substring(0, words[0].length() - 1), true, left)
                        : DiaryLine.parts(words[0], ",");
        };
    }

    private List<String> held(String keeper, String start, boolean bornHere, List<String> left) {
        var names = animals.entrySet().stream()
                .filter(entry -> keeper.equals(entry.getValue().holder())
                        && entry.getValue().bornHere() == bornHere
                        && entry.getKey().startsWith(start)
                        && !left.contains(entry.getKey()))
                .map(Map.Entry::getKey)
                .toList();
        if (names.isEmpty()) {
            throw new IllegalArgumentException("%s has none of those".formatted(keeper));
        }
        return names;
    }

    // ── what goes on ─────────────────────────────────────────────────────────────────────────────────────────────────

    void begin(String what, JsonNode id) {
        ids.put(what, id.asText());
    }

    /** The id of what was begun under that name. */
    String id(String what) {
        var id = ids.get(what);
        if (id == null) {
            throw new IllegalArgumentException("Nothing was begun that is called \"%s\"".formatted(what));
        }
        return id;
    }
}
