package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.Colony;
import org.demebook.keeper.RegionStory;
import org.demebook.start.TestServer;
import org.junit.jupiter.api.Test;

/**
 * Every text that three keepers write is a word that stands nowhere else. Then everybody asks everything: each operation that
 * reads, taken from the contract, for each thing that there is, under random grants. No answer (headers and body) may hold a word
 * that its asker was not granted, by a plain oracle that is written here and knows nothing of the code.
 *
 * <p>A check is one answer looked through for one word that is denied. An operation that this test does not know how to ask
 * fails it, so that a new one is covered on the day it appears. Pictures and PDF are asked for and not looked through.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CanaryTest {
    private static final long SEED = Long.getLong("demebook.canary.seed", 4_242);
    private static final int CHECKS = Integer.getInteger("demebook.canary.checks", 100_000);
    private static final int FEWEST_ROUNDS = 3;
    private static final int ANIMALS_EACH = 4;
    private static final List<String> KEEPERS = List.of(WREN, INES, DOV);
    private static final String NOBODY = "nobody";
    private static final List<String> ASKERS = List.of(WREN, INES, DOV, OUTSIDER, NOBODY);
    private static final List<String> GROUPS = List.of(
            "identity",
            "marks-and-photos",
            "custody",
            "coarse-place",
            "parentage",
            "health",
            "notes",
            "breeding-results");

    private final Random random = new Random(SEED);
    private final Map<String, Animal> animals = new LinkedHashMap<>();
    private final List<Grant> grants = new ArrayList<>();
    private final Map<String, Set<String>> ids = new HashMap<>();

    /** Where each keeper's collection is. */
    private final Map<String, String> regions = new LinkedHashMap<>();

    /** What only its keeper sees, by keeper. */
    private final Map<String, Set<String>> own = new HashMap<>();

    private Colony colony;
    private int tokens;
    private int checks;
    private int told;

    /** @param words by the field group that they belong to */
    private record Animal(String number, String keeper, List<String> parents, Map<String, Set<String>> words) {}

    /** @param recipient a keeper, or {@code members} or {@code coordinators} */
    private record Grant(String keeper, String recipient, Set<String> animals, Set<String> groups) {
        boolean covers(String asker, Animal animal, String group) {
            return keeper.equals(animal.keeper)
                    && groups.contains(group)
                    && (animals.isEmpty() || animals.contains(animal.number))
                    && (recipient.equals(asker)
                            || recipient.equals("members") && KEEPERS.contains(asker)
                            || recipient.equals("coordinators") && asker.equals(WREN));
        }
    }

    @Test
    void no_answer_holds_a_word_that_its_asker_was_not_granted() throws IOException {
        int round = 0;
        while (round < FEWEST_ROUNDS || checks < CHECKS) {
            settle();
            for (int grant = 0; grant < 6 * round; grant++) {
                giveSomething();
            }
            askEverything();
            round++;
        }
        assertThat(checks).isGreaterThanOrEqualTo(CHECKS);
        // what was granted is told, or there would be nothing to find
        assertThat(told).as("words of others that were granted, and told").isGreaterThan(20);
    }

    // ── the world ────────────────────────────────────────────────────────────────────────────────────────────────────

    private void settle() {
        animals.clear();
        grants.clear();
        ids.clear();
        own.clear();
        colony = Colony.foundPrivate();
        Colony.token(OUTSIDER);
        regions.clear();
        KEEPERS.forEach(keeper -> regions.put(keeper, word("region")));
        RegionStory.fix(colony, regions.values().toArray(String[]::new)).statusCode(200);
        for (var keeper : KEEPERS) {
            own.put(keeper, new TreeSet<>());
            String collection = colony.get(keeper, "/collections").extract().path("[0].id");
            ids.computeIfAbsent("collection", kind -> new TreeSet<>()).add(collection);
            RegionStory.state(colony, keeper, collection, regions.get(keeper)).statusCode(200);
            var dam = register(keeper, "female", null, null);
            var sire = register(keeper, "male", null, null);
            for (int i = 2; i < ANIMALS_EACH; i++) {
                register(keeper, "female", dam, sire);
            }
            writeDown(keeper, dam, sire);
        }
    }

    private String word(String kind) {
        return kind + "q" + Long.toString(Math.abs(random.nextLong()), 36) + "x" + tokens++;
    }

    private String register(String keeper, String sex, String dam, String sire) {
        var words = new HashMap<String, Set<String>>();
        var transponder = "98100%010d".formatted(1_000_000_000L + Math.abs(random.nextInt(900_000_000)));
        var mark = word("mark");
        var notes = word("note");
        var reference = word("ref");
        var animal = Colony.animal(sex, dam == null ? "2018-05-0" + (1 + random.nextInt(9)) : "2021-06-01");
        animal.put("transponders", List.of(transponder));
        animal.put("marks", List.of(mark));
        animal.put("notes", notes);
        animal.put("ownReference", reference);
        if (dam != null) {
            animal.put("dam", dam);
            animal.put("sire", Map.of("kind", "known", "animal", sire));
        }
        var number = colony.register(keeper, animal);
        words.put("marks-and-photos", Set.of(transponder, mark));
        words.put("notes", Set.of(notes));
        words.put("coarse-place", Set.of(regions.get(keeper)));
        own.get(keeper).add(reference);
        animals.put(number, new Animal(number, keeper, dam == null ? List.of() : List.of(dam, sire), words));
        return number;
    }

    private void writeDown(String keeper, String dam, String sire) {
        remember(
                "introduction",
                colony.post(
                        keeper,
                        "/introductions",
                        Map.of(
                                "female",
                                dam,
                                "male",
                                sire,
                                "fromOn",
                                "2024-01-05",
                                "untilOn",
                                "2024-02-20",
                                "notes",
                                secret(keeper))),
                "introduction.id");
        remember(
                "breeding-sign",
                colony.post(
                        keeper,
                        "/animals/" + dam + "/breeding-signs",
                        Map.of(
                                "kind",
                                "post-ovulation-shed",
                                "happenedOn",
                                "2024-03-14",
                                "howKnown",
                                "seen",
                                "notes",
                                secret(keeper))),
                "sign.id");
        remember(
                "litter",
                colony.post(
                        keeper,
                        "/litters",
                        Map.of(
                                "dam",
                                dam,
                                "born",
                                "2024-06-29",
                                "sire",
                                Map.of("kind", "known", "animal", sire),
                                "liveBorn",
                                1,
                                "ovaFound",
                                5,
                                "unfertilised",
                                4,
                                "stillborn",
                                0,
                                "malformedLive",
                                0,
                                "malformedStillborn",
                                0,
                                "notes",
                                secret(keeper))),
                "litter.id");
        remember(
                "record",
                colony.post(
                        keeper,
                        "/animals/" + dam + "/care-records",
                        Map.of("kind", "health-note", "on", "2024-07-01", "text", secret(keeper))),
                "record.id");
        remember(
                "task",
                colony.post(
                        keeper,
                        "/care-tasks",
                        Map.of(
                                "what",
                                secret(keeper),
                                "dueOn",
                                java.time.LocalDate.now().plusDays(3).toString())),
                "key");
    }

    private String secret(String keeper) {
        var secret = word("own");
        own.get(keeper).add(secret);
        return secret;
    }

    private void remember(String kind, io.restassured.response.ValidatableResponse answer, String path) {
        int status = answer.extract().statusCode();
        assertThat(status).as("%s: %s", kind, answer.extract().asString()).isBetween(200, 299);
        ids.computeIfAbsent(kind, one -> new TreeSet<>()).add(answer.extract().path(path));
    }

    private void giveSomething() {
        var keeper = KEEPERS.get(random.nextInt(KEEPERS.size()));
        var recipients = new ArrayList<>(List.of("members", "coordinators"));
        KEEPERS.stream().filter(other -> !other.equals(keeper)).forEach(recipients::add);
        var recipient = recipients.get(random.nextInt(recipients.size()));
        var scope = new TreeSet<String>();
        if (random.nextBoolean()) {
            animals.values().stream()
                    .filter(animal -> animal.keeper.equals(keeper) && random.nextBoolean())
                    .forEach(animal -> scope.add(animal.number));
        }
        var groups = new TreeSet<String>();
        while (groups.isEmpty()) {
            GROUPS.stream().filter(group -> random.nextBoolean()).forEach(groups::add);
        }
        var body = new HashMap<String, Object>();
        body.put(
                "recipient",
                KEEPERS.contains(recipient) ? Map.of("kind", "keeper", "name", recipient) : Map.of("kind", recipient));
        if (!scope.isEmpty()) {
            body.put("animals", List.copyOf(scope));
        }
        body.put("fieldGroups", List.copyOf(groups));
        body.put("purposes", List.of("pedigree-view"));
        body.put("actions", List.of("read"));
        colony.post(keeper, "/grants", body).statusCode(201);
        grants.add(new Grant(keeper, recipient, scope, groups));
    }

    // ── the oracle ───────────────────────────────────────────────────────────────────────────────────────────────────

    private boolean granted(String asker, Animal animal, String group) {
        return animal.keeper.equals(asker) || grants.stream().anyMatch(grant -> grant.covers(asker, animal, group));
    }

    private Set<String> denied(String asker) {
        var denied = new TreeSet<String>();
        var granted = new TreeSet<String>();
        for (var animal : animals.values()) {
            boolean exists = granted(asker, animal, "identity");
            animal.words.forEach((group, words) -> {
                if (!exists || !granted(asker, animal, group)) {
                    denied.addAll(words);
                } else {
                    granted.addAll(words);
                }
            });
            // the number of a parent belongs to the parentage of its young
            boolean named = animals.values().stream()
                    .anyMatch(young -> young.parents.contains(animal.number)
                            && granted(asker, young, "identity")
                            && granted(asker, young, "parentage"));
            if (!exists && !named) {
                denied.add(animal.number);
            }
        }
        // animals of a keeper live in one region: it may be told of another of them
        denied.removeAll(granted);
        own.forEach((keeper, words) -> {
            if (!keeper.equals(asker)) {
                denied.addAll(words);
            }
        });
        return denied;
    }

    // ── the questions ────────────────────────────────────────────────────────────────────────────────────────────────

    private void askEverything() throws IOException {
        var contract =
                new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
        for (var asker : ASKERS) {
            var denied = denied(asker);
            for (var path : contract.path("paths").properties()) {
                if (path.getValue().has("get")) {
                    for (var address : addresses(path.getKey(), path.getValue().get("get"))) {
                        look(asker, address, denied);
                    }
                }
            }
            look(asker, "/api/v1/populations/" + colony.code + "/animals?limit=200", denied);
        }
    }

    private void look(String asker, String address, Set<String> denied) {
        Response response = (asker.equals(NOBODY) ? Colony.anonymous() : Colony.as(asker)).get(address);
        var type = String.valueOf(response.contentType());
        if (type.startsWith("image/") || type.equals("application/pdf") || type.endsWith("/zip")) {
            return;
        }
        assertThat(response.statusCode()).as("%s as %s", address, asker).isLessThan(500);
        var text = response.headers() + "\n" + response.asString();
        told += (int) animals.values().stream()
                .filter(animal -> !animal.keeper.equals(asker))
                .flatMap(animal -> animal.words.values().stream().flatMap(Set::stream))
                .filter(word -> !denied.contains(word) && text.contains(word))
                .count();
        for (var word : denied) {
            checks++;
            // who asks for a number gets it back in what is said of it; what regions there are says nothing of who is
            // where
            if (text.contains(word) && !address.contains(word) && !isListOfRegions(address, word)) {
                fail("seed %d: %s, asking %s, is told %s, which nobody granted: %s", SEED, asker, address, word, text);
            }
        }
    }

    private boolean isListOfRegions(String address, String word) {
        return address.endsWith(colony.code + "/regions") && regions.containsValue(word);
    }

    /** The addresses of an operation, one for each thing that there is. */
    private List<String> addresses(String path, JsonNode operation) {
        var addresses = List.of(path.replace("{population}", colony.code));
        while (addresses.get(0).contains("{")) {
            var first = addresses.get(0);
            var parameter = first.substring(first.indexOf('{') + 1, first.indexOf('}'));
            var filled = new ArrayList<String>();
            for (var value : values(path, parameter)) {
                addresses.forEach(address -> filled.add(address.replace("{" + parameter + "}", value)));
            }
            addresses = filled;
        }
        return addresses;
    }

    private Set<String> values(String path, String parameter) {
        var absent = UUID.randomUUID().toString();
        return switch (parameter) {
            case "number", "other" -> animals.keySet();
            case "litter" -> and(ids("litter"), absent);
            case "record" -> and(ids("record"), absent);
            case "collection" -> and(ids("collection"), absent);
            case "key" -> and(ids("task"), absent);
            case "id" -> and(ids(path.contains("/introductions") ? "introduction" : "breeding-sign"), absent);
            case "grant", "transfer", "sheet", "photo", "claim", "dispute", "silence", "code", "secret", "type" ->
                Set.of(absent);
            case "approach" -> Set.of(absent);
            case "countedOn" -> Set.of("2024-01-01");
            case "name" -> Set.of(INES);
            default -> fail("say here what {%s} of %s may be", parameter, path);
        };
    }

    private Set<String> ids(String kind) {
        return ids.getOrDefault(kind, Set.of());
    }

    private static Set<String> and(Set<String> some, String other) {
        var all = new TreeSet<>(some);
        all.add(other);
        return all;
    }
}
