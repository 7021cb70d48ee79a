package org.demebook.start;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** The words of the diary that are about who an animal is and whose it is. */
final class RegisterVerbs {
    private final DiaryWorld world;

    RegisterVerbs(DiaryWorld world) {
        this.world = world;
    }

    Map<String, DiaryVerb> verbs() {
        return Map.of(
                "found", this::found,
                "sex", this::sex,
                "death", this::death,
                "photograph", this::photograph,
                "offer", line -> offer(line, world.body().put("to", line.with())),
                "accepted", this::accepted,
                "handed out", this::handedOut,
                "sheet", line -> world.post(line, "/animals/" + world.animal(line) + "/handover-sheets", world.body()));
    }

    private void found(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body()
                .put("sex", line.first())
                .put("born", line.told("born").orElseThrow())
                .put("origin", "wild-caught")
                .put("sourceCode", "W")
                .put("ownReference", line.animal())
                .put("notes", line.notes());
        var registered = world.post(line, "/animals", body);
        world.meet(line.animal(), registered.at("/animal/number").asText(), line.keeper(), false);
    }

    private void sex(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body().put("sex", line.first());
        line.told("by")
                .ifPresent(method ->
                        body.putObject("sexDetermination").put("method", method).put("confidence", "examined"));
        body.put("on", line.on().toString());
        var animal = "/animals/" + world.animal(line);
        world.put(line, animal, animal + "/sex", body);
    }

    private void death(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body().put("on", line.on().toString()).put("cause", line.value());
        var animal = "/animals/" + world.animal(line);
        world.put(line, animal, animal + "/death", body);
        world.gone(line.animal(), null);
    }

    /** One of each; what it shows is drawn. */
    private void photograph(DiaryLine line) throws IOException, InterruptedException {
        var query =
                "?takenOn=%s&label=%s".formatted(line.on(), URLEncoder.encode(line.value(), StandardCharsets.UTF_8));
        for (var name : world.names(line)) {
            world.postJpeg(line, "/animals/" + world.number(name) + "/photos" + query, DrawnSnake.jpeg(name));
        }
    }

    private void offer(DiaryLine line, ObjectNode body) throws IOException, InterruptedException {
        body.put("animal", world.animal(line)).put("kind", line.value()).put("note", line.notes());
        var offered = world.post(line, "/transfers", body);
        world.begin("transfer of " + line.animal(), offered.at("/transfer/id"));
    }

    private void accepted(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body().put("handedOverOn", line.on().toString());
        world.post(line, "/transfers/" + world.id("transfer of " + line.animal()) + "/acceptance", body);
        world.gone(line.animal(), line.keeper());
    }

    private void handedOut(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body()
                .put("withClaimCode", true)
                .put("handedOverOn", line.on().toString());
        offer(line, body);
        world.gone(line.animal(), null);
    }
}
