package org.demebook.start;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jboss.logging.Logger;

/**
 * A year of a collection, entered month by month as its keepers would: a population of its own, a sheet with what was there
 * at the start, and a diary. Every line of the diary is one request.
 */
final class DemoYear {
    private static final Logger LOG = Logger.getLogger(DemoYear.class);

    private final DemoClient client;
    private final Path folder;
    private final JsonNode year;
    private final Map<String, String> tokens;
    private final DiaryWorld world;
    private final Map<String, DiaryVerb> verbs = new HashMap<>();

    /**
     * @param folder of the demo's data
     * @param year the part of world.json that tells of it
     * @param tokens of the keepers, by sign-in name
     */
    DemoYear(DemoClient client, ObjectMapper json, Path folder, JsonNode year, Map<String, String> tokens) {
        this.client = client;
        this.folder = folder;
        this.year = year;
        this.tokens = tokens;
        this.world = new DiaryWorld(client, json, year.at("/population/code").asText(), tokens);
        verbs.putAll(new BreedingVerbs(world).verbs());
        verbs.putAll(new CareVerbs(world).verbs());
        verbs.putAll(new RegisterVerbs(world).verbs());
    }

    /** Founds the population and enters what was there at the start. */
    void begin() throws IOException, InterruptedException {
        var population = "/api/v1/populations/" + year.at("/population/code").asText();
        var keepers = year.get("keepers");
        var coordinator = keepers.get(0).get("name").asText();
        client.post(tokens.get(coordinator), "/api/v1/populations", year.get("population"));
        for (var keeper : keepers) {
            var name = keeper.get("name").asText();
            if (!name.equals(coordinator)) {
                var member = world.body().put("name", name).put("role", "member");
                client.post(tokens.get(coordinator), population + "/members", member);
            }
            client.openCollection(
                    tokens.get(name),
                    population,
                    keeper.get("collection").asText(),
                    keeper.get("sharing").asText());
        }
        var sheet = Files.readAllBytes(folder.resolve(year.get("sheet").asText()));
        client.importSheet(tokens.get(coordinator), population, sheet);
        meetAll(coordinator, population);
    }

    /** Whom the sheet brought, under the names that it calls them by. */
    private void meetAll(String keeper, String population) throws IOException, InterruptedException {
        for (var animal : client.get(tokens.get(keeper), population + "/animals?limit=200")
                .get("items")) {
            for (var identifier : animal.at("/held/identifiers")) {
                if (identifier.get("kind").asText().equals("own-reference")) {
                    world.meet(
                            identifier.get("value").asText(),
                            animal.get("number").asText(),
                            animal.get("alive").asBoolean() ? keeper : null,
                            false);
                }
            }
        }
    }

    /** The months of the diary, the first first. */
    List<Path> months() throws IOException {
        try (var files = Files.list(folder.resolve(year.get("diary").asText()))) {
            return files.filter(file -> file.toString().endsWith(".csv"))
                    .sorted()
                    .toList();
        }
    }

    /**
     * Enters what a month's diary tells.
     *
     * @return the number of lines
     * @throws IllegalStateException with file and line, when the server refuses one
     */
    int enter(Path month) throws IOException, InterruptedException {
        var lines = DiaryLine.read(month);
        for (var line : lines) {
            var verb = verbs.get(line.what());
            if (verb == null) {
                throw new IllegalStateException("%s: nobody knows how to \"%s\"".formatted(line.where(), line.what()));
            }
            try {
                verb.tell(line);
            } catch (IllegalArgumentException | IllegalStateException refused) {
                throw new IllegalStateException("%s: %s".formatted(line.where(), refused.getMessage()), refused);
            }
        }
        return lines.size();
    }

    void tell() throws IOException, InterruptedException {
        begin();
        for (var month : months()) {
            LOG.infof(
                    "%s: %d lines of the diary", month.getFileName().toString().replace(".csv", ""), enter(month));
        }
    }
}
