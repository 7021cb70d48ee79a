package org.demebook.start;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** The words of the diary that are about pairs, signs and births. */
final class BreedingVerbs {
    private static final Pattern COUNT = Pattern.compile("(\\d+) (live|stillborn|part-developed|unfertilised)");

    private final DiaryWorld world;

    BreedingVerbs(DiaryWorld world) {
        this.world = world;
    }

    Map<String, DiaryVerb> verbs() {
        return Map.of(
                "introduction", this::introduction,
                "separation", this::separation,
                "copulation", line -> sign(line, "copulation"),
                "ovulation", line -> sign(line, "ovulation"),
                "shed after ovulation", line -> sign(line, "post-ovulation-shed"),
                "labour starts", line -> sign(line, "labour-started"),
                "labour ends", line -> sign(line, "labour-finished"),
                "birth", this::birth,
                "birth corrected", this::corrected);
    }

    private void introduction(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body(line, "fromOn").put("female", world.animal(line)).put("male", world.number(line.with()));
        var recorded = world.post(line, "/introductions", body);
        world.begin(pair(line), recorded.at("/introduction/id"));
    }

    private void separation(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body().put("untilOn", line.on().toString());
        world.post(line, "/introductions/" + world.id(pair(line)) + "/end", body);
    }

    private static String pair(DiaryLine line) {
        return line.animal() + " with " + line.with();
    }

    private void sign(DiaryLine line, String kind) throws IOException, InterruptedException {
        var body = world.body(line, "happenedOn").put("kind", kind);
        if (!line.with().isEmpty()) {
            body.put("male", world.number(line.with()));
        }
        line.told("at").ifPresent(time -> body.put("happenedAt", line.on() + "T" + time + ":00Z"));
        if (line.value().equals("skin found")) {
            body.put("howKnown", "skin-found");
        }
        world.post(line, "/animals/" + world.animal(line) + "/breeding-signs", body);
    }

    private void birth(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body(line, "born").put("dam", world.animal(line));
        counts(line, body);
        if (line.with().equals("worked out")) {
            body.putObject("sire").put("kind", "worked-out");
        } else {
            body.putObject("sire").put("kind", "known").put("animal", world.number(line.with()));
        }
        var registered = world.post(line, "/litters", body);
        world.begin("litter of " + line.animal(), registered.at("/litter/id"));
        world.meetYoung(line.animal(), line.keeper(), registered.get("young"));
    }

    private void corrected(DiaryLine line) throws IOException, InterruptedException {
        var body = world.body();
        counts(line, body);
        var litter = "/litters/" + world.id("litter of " + line.animal());
        var corrected = world.put(line, litter, litter + "/outcome", body);
        world.meetYoung(line.animal(), line.keeper(), corrected.get("young"));
    }

    /** What is not counted was not there; the ova found are the sum, as a keeper counts them. */
    private static void counts(DiaryLine line, ObjectNode body) {
        var counts = new HashMap<String, Integer>();
        var found = COUNT.matcher(line.value());
        while (found.find()) {
            counts.merge(found.group(2), Integer.parseInt(found.group(1)), Integer::sum);
        }
        body.put("liveBorn", counts.getOrDefault("live", 0))
                .put("stillborn", counts.getOrDefault("stillborn", 0))
                .put("partDeveloped", counts.getOrDefault("part-developed", 0))
                .put("unfertilised", counts.getOrDefault("unfertilised", 0))
                .put("ovaFound", counts.values().stream().mapToInt(n -> n).sum());
    }
}
