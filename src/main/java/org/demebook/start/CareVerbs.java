package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The words of the diary that are about food, sheds, masses and health; a whole rack goes in one request. */
final class CareVerbs {
    private static final int DAYS_AHEAD = 365;

    private final DiaryWorld world;

    CareVerbs(DiaryWorld world) {
        this.world = world;
    }

    Map<String, DiaryVerb> verbs() {
        var verbs = new HashMap<String, DiaryVerb>();
        verbs.put("meal", this::meal);
        verbs.put(
                "shed",
                line -> batch(line, (name, i) -> record(name, line, "shed", "on")
                        .put("complete", !line.value().equals("in pieces"))));
        verbs.put("mass", this::mass);
        verbs.put(
                "move",
                line -> batch(line, (name, i) -> record(name, line, "move", "on")
                        .put("place", world.names(line).size() == 1 ? line.value() : line.value() + " " + (i + 1))));
        verbs.put(
                "test",
                line -> batch(line, (name, i) -> record(name, line, "test", "sampledOn")
                        .put("agent", line.with())
                        .put("method", "RT-PCR")
                        .put("sample", "swab of mouth and cloaca")
                        .put("result", line.value())));
        verbs.put(
                "health note",
                line -> one(
                        line, record(line.animal(), line, "health-note", "on").put("text", line.value())));
        verbs.put("health note ends", line -> end(line, "health-note"));
        verbs.put("quarantine", line -> one(line, record(line.animal(), line, "quarantine", "from")));
        verbs.put("quarantine ends", line -> end(line, "quarantine"));
        verbs.put("task", this::task);
        verbs.put("done", this::done);
        verbs.put("calendar", line -> world.postToNode(line, "/api/v1/calendar", world.body()));
        return verbs;
    }

    /** The record of one animal of those that a line is about, by its place among them. */
    private interface Each {
        ObjectNode record(String name, int place);
    }

    private void batch(DiaryLine line, Each each) throws IOException, InterruptedException {
        ArrayNode records = world.json.createArrayNode();
        var names = world.names(line);
        for (int i = 0; i < names.size(); i++) {
            records.add(each.record(names.get(i), i));
        }
        world.post(line, "/care-records", world.body().set("records", records));
    }

    private ObjectNode record(String name, DiaryLine line, String kind, String dayField) {
        return world.body()
                .put("animal", world.number(name))
                .put("kind", kind)
                .put(dayField, line.on().toString());
    }

    private void one(DiaryLine line, JsonNode record) throws IOException, InterruptedException {
        var recorded = world.post(line, "/animals/" + world.animal(line) + "/care-records", record);
        world.begin(record.get("kind").asText() + " of " + line.animal(), recorded.at("/record/id"));
    }

    private void end(DiaryLine line, String kind) throws IOException, InterruptedException {
        var id = world.id(kind + " of " + line.animal());
        world.post(
                line,
                "/care-records/" + id + "/end",
                world.body().put("on", line.on().toString()));
    }

    private void meal(DiaryLine line) throws IOException, InterruptedException {
        var refused = called(line, "refused by");
        var assisted = called(line, "assisted");
        batch(line, (name, i) -> record(name, line, "meal", "on")
                .put("prey", line.with())
                .put(
                        "outcome",
                        refused.contains(name) ? "refused" : assisted.contains(name) ? "assisted" : line.first()));
    }

    /** Those that ate otherwise than the rest; each must be among them. */
    private List<String> called(DiaryLine line, String word) {
        var called = DiaryLine.parts(line.told(word).orElse(""), ",");
        if (!world.names(line).containsAll(called)) {
            throw new IllegalArgumentException("Not all of %s were fed".formatted(called));
        }
        return called;
    }

    private void mass(DiaryLine line) throws IOException, InterruptedException {
        var unit = line.value().substring(line.value().lastIndexOf(' ') + 1);
        var values = new ArrayList<>(DiaryLine.parts(line.value(), " "));
        values.remove(unit);
        var names = world.names(line);
        if (values.size() != names.size()) {
            throw new IllegalArgumentException(
                    "%d masses for %d animals: %s".formatted(values.size(), names.size(), String.join(", ", names)));
        }
        batch(line, (name, i) -> {
            var record = record(name, line, "measures", "on");
            record.putObject("mass").put("value", new BigDecimal(values.get(i))).put("unit", unit);
            return record;
        });
    }

    /** A task is of the days to come, whenever the diary is entered. */
    private void task(DiaryLine line) throws IOException, InterruptedException {
        int days = days(line.told("due in").orElse("0 days"));
        var body = world.body()
                .put("what", line.with())
                .put("dueOn", LocalDate.now(ZoneOffset.UTC).plusDays(days).toString());
        line.told("every").ifPresent(every -> body.put("everyDays", days(every)));
        if (!line.animal().isEmpty()) {
            body.put("animal", world.animal(line));
        }
        world.post(line, "/care-tasks", body);
    }

    private static int days(String text) {
        return Integer.parseInt(text.replace(" days", ""));
    }

    /** The first task of a kind that an animal has. */
    private void done(DiaryLine line) throws IOException, InterruptedException {
        var until = LocalDate.now(ZoneOffset.UTC).plusDays(DAYS_AHEAD);
        for (var task : world.get(line, "/care-tasks?limit=200&until=" + until).get("items")) {
            if (task.get("kind").asText().equals(line.with())
                    && task.path("animal").asText().equals(world.animal(line))) {
                var on = world.body().put("on", line.on().toString());
                world.post(line, "/care-tasks/" + task.get("key").asText() + "/completion", on);
                return;
            }
        }
        throw new IllegalStateException("%s has no task %s".formatted(line.animal(), line.with()));
    }
}
