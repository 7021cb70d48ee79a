package org.demebook.consent;

import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.WREN;

import io.restassured.response.ValidatableResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.demebook.Colony;

/**
 * What there is in one population, and the plain oracle of who may read which word of it. It is written from the rules of
 * consent and knows nothing of the code. {@link CanaryStory} fills it.
 */
final class CanaryWorld {
    static final List<String> KEEPERS = List.of(WREN, INES, DOV);
    static final String COORDINATOR = WREN;
    private static final String COARSE_PLACE = "coarse-place";
    private static final List<String> GROUPS = List.of(
            "identity",
            "marks-and-photos",
            "custody",
            COARSE_PLACE,
            "parentage",
            "health",
            "notes",
            "breeding-results");

    final Random random;
    final CanaryWords words;
    Colony colony = Colony.foundPrivate();
    final Map<String, Animal> animals = new LinkedHashMap<>();

    /** Collection of each keeper. */
    final Map<String, String> collections = new HashMap<>();

    /** Where each keeper's collection is. */
    final Map<String, String> regions = new HashMap<>();

    private final List<Grant> grants = new ArrayList<>();
    private final List<Thing> things = new ArrayList<>();

    /** Whose collection somebody knows because both agreed to an approach. */
    private final Map<String, Set<String>> knownCollections = new HashMap<>();

    /** What an address tells whoever has it, by design. */
    private final Map<String, Set<String>> toldByAddress = new HashMap<>();

    /** Whose eyes an address lends to whoever has it. */
    private final Map<String, String> eyesByAddress = new HashMap<>();

    /**
     * @param parties who holds and who owns it; what is not a party's own is granted by every one of them
     * @param sides who gives or receives it in a transfer; they see IDENTITY and PARENTAGE in that transfer
     * @param namers who knows its number otherwise
     * @param words by the field group that they belong to
     */
    record Animal(
            String number,
            String sex,
            Set<String> parties,
            Set<String> sides,
            Set<String> namers,
            List<String> parents,
            Map<String, Set<String>> words) {
        Animal(String number, String sex, String keeper, List<String> parents) {
            this(
                    number,
                    sex,
                    new TreeSet<>(Set.of(keeper)),
                    new TreeSet<>(),
                    new TreeSet<>(),
                    parents,
                    new HashMap<>());
        }

        void say(String group, String word) {
            words.computeIfAbsent(group, any -> new TreeSet<>()).add(word);
        }

        /** Its region is that of whoever has it. */
        void livesIn(String region) {
            words.put(COARSE_PLACE, Set.of(region));
        }

        Stream<String> everyWord() {
            return words.values().stream().flatMap(Set::stream);
        }
    }

    /** @param writers who may do something with it; its id is no secret */
    record Thing(String kind, String id, Set<String> writers) {}

    /** @param recipient a keeper, or {@code members} or {@code coordinators} */
    private record Grant(String keeper, String recipient, Set<String> animals, Set<String> groups) {
        boolean covers(String asker, String party, String number, String group) {
            return keeper.equals(party)
                    && groups.contains(group)
                    && (animals.isEmpty() || animals.contains(number))
                    && (recipient.equals(asker)
                            || recipient.equals("members") && KEEPERS.contains(asker)
                            || recipient.equals("coordinators") && asker.equals(COORDINATOR));
        }
    }

    CanaryWorld(Random random, CanaryWords words) {
        this.random = random;
        this.words = words;
    }

    // ── what there is ────────────────────────────────────────────────────────────────────────────────────────────────

    void thing(String kind, String id, String... writers) {
        things.add(new Thing(kind, id, new TreeSet<>(List.of(writers))));
    }

    Set<String> ids(String kind) {
        return ids(kind, "nobody");
    }

    /** Those of a kind that somebody may do nothing with. */
    Set<String> ids(String kind, String but) {
        var ids = new TreeSet<String>();
        things.stream()
                .filter(thing -> thing.kind.equals(kind) && !thing.writers.contains(but))
                .forEach(thing -> ids.add(thing.id));
        return ids;
    }

    void address(String address, String... tells) {
        toldByAddress.put(address, Set.of(tells));
    }

    /** What an address tells some, by design, and nobody else. */
    void addressFor(String asker, String address, Stream<String> tells) {
        var told = toldByAddress.computeIfAbsent(asker + " " + address, any -> new TreeSet<>());
        tells.forEach(told::add);
    }

    /** Tells somebody the number of an animal, and in which collection it is. */
    void know(String asker, String number, String keeper) {
        animals.get(number).namers.add(asker);
        knownCollections.computeIfAbsent(asker, any -> new TreeSet<>()).add(keeper);
    }

    void eyes(String address, String keeper) {
        eyesByAddress.put(address, keeper);
    }

    static String created(ValidatableResponse answer, String path) {
        int status = answer.extract().statusCode();
        assertThat(status).as("%s", answer.extract().asString()).isBetween(200, 299);
        return path.isEmpty() ? "" : answer.extract().path(path).toString();
    }

    /** A random grant of a random keeper, with a text that is theirs alone. */
    void giveSomething() {
        var keeper = KEEPERS.get(random.nextInt(KEEPERS.size()));
        var recipients = new ArrayList<>(List.of("members", "coordinators"));
        KEEPERS.stream().filter(other -> !other.equals(keeper)).forEach(recipients::add);
        var recipient = recipients.get(random.nextInt(recipients.size()));
        var scope = new TreeSet<String>();
        if (random.nextBoolean()) {
            animals.values().stream()
                    .filter(animal -> animal.parties.contains(keeper) && random.nextBoolean())
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
        body.put("conditions", words.text("own", keeper));
        thing("grant", created(colony.post(keeper, "/grants", body), "id"), keeper);
        grants.add(new Grant(keeper, recipient, scope, groups));
    }

    /** Who the animals are and who their parents, for coordinators. */
    void letCoordinatorsPlan(String keeper, List<String> numbers) {
        var groups = List.of("identity", "parentage");
        var body = new HashMap<String, Object>(Map.of("recipient", Map.of("kind", "coordinators")));
        body.putAll(Map.of("animals", numbers, "fieldGroups", groups, "actions", List.of("read")));
        body.put("purposes", List.of("pedigree-view", "pairing-computation"));
        thing("grant", created(colony.post(keeper, "/grants", body), "id"), keeper);
        grants.add(new Grant(keeper, "coordinators", new TreeSet<>(numbers), new TreeSet<>(groups)));
    }

    // ── the oracle ───────────────────────────────────────────────────────────────────────────────────────────────────

    /** Whose it is sees all of it; everybody else what each of those has granted. */
    boolean granted(String asker, Animal animal, String group) {
        return animal.parties.contains(asker)
                || animal.parties.stream().allMatch(party -> grants.stream()
                        .anyMatch(grant -> grant.covers(asker, party, animal.number, group)));
    }

    /** Without its identity there is nothing of an animal. */
    private boolean shown(String asker, Animal animal, String group) {
        return granted(asker, animal, "identity") && granted(asker, animal, group)
                // the offer is the consent: both sides of a transfer see who the animal is
                || group.equals("identity") && animal.sides.contains(asker);
    }

    /** Whether the number of an animal may stand in an answer. */
    boolean knows(String asker, Animal animal) {
        return shown(asker, animal, "identity")
                // a dispute tells it to its sides and to coordinators, a claim to both keepers
                || animal.namers.contains(asker)
                // the number of a parent belongs to the parentage of its young
                || animals.values().stream()
                        .anyMatch(young -> young.parents.contains(animal.number)
                                && granted(asker, young, "identity")
                                && granted(asker, young, "parentage"));
    }

    /** Everything that somebody may not read. */
    Set<String> denied(String asker) {
        var denied = new TreeSet<String>();
        var told = new TreeSet<String>();
        for (var animal : animals.values()) {
            animal.words.forEach((group, said) -> {
                (shown(asker, animal, group) ? told : denied).addAll(said);
            });
            if (!knows(asker, animal)) {
                denied.add(animal.number);
            }
        }
        // what is said of several animals is read by whoever is shown one of them: a keeper's region, a transponder on
        // two records
        denied.removeAll(told);
        denied.addAll(words.deniedTo(asker));
        collections.forEach((keeper, collection) -> {
            boolean isKnown = keeper.equals(asker)
                    || knownCollections.getOrDefault(asker, Set.of()).contains(keeper)
                    || animals.values().stream()
                            .anyMatch(animal -> animal.parties.contains(keeper) && shown(asker, animal, "custody"));
            if (!isKnown) {
                denied.add(collection);
            }
        });
        return denied;
    }

    /** The same at an address that tells whoever has it more: the check of a printed sheet, the link of a calendar. */
    Set<String> denied(String asker, String address) {
        var eyes = eyesByAddress.get(address);
        var denied = denied(eyes == null ? asker : eyes);
        denied.removeAll(toldByAddress.getOrDefault(address, Set.of()));
        denied.removeAll(toldByAddress.getOrDefault(asker + " " + address, Set.of()));
        if (isOfTransfers(address)) {
            // in a transfer its two sides know who the animal is, and so read what else of it is granted to them
            animals.values().stream()
                    .filter(animal -> animal.sides.contains(asker))
                    .forEach(animal -> animal.words.forEach((group, said) -> {
                        if (granted(asker, animal, group)) {
                            denied.removeAll(said);
                        }
                    }));
        }
        if (eyes != null) {
            denied.retainAll(denied(asker)); // nobody loses by it what they may read anyway
        }
        return denied;
    }

    /** What a page may not tell: it is composed of what several addresses tell the one who looks at it. */
    Set<String> deniedOnPages(String asker) {
        var denied = denied(asker, "/transfers");
        toldByAddress.forEach((address, told) -> {
            if (address.startsWith(asker + " ")) {
                denied.removeAll(told);
            }
        });
        return denied;
    }

    boolean isPlain(String asker, String address) {
        return !toldByAddress.containsKey(address)
                && !toldByAddress.containsKey(asker + " " + address)
                && !eyesByAddress.containsKey(address)
                && !isOfTransfers(address);
    }

    private static boolean isOfTransfers(String address) {
        return address.contains("/transfers") || address.endsWith("/my-archive");
    }

    /** Words of animals that are not the asker's own. */
    Stream<String> ofOthers(String asker) {
        return animals.values().stream()
                .filter(animal -> !animal.parties.contains(asker))
                .flatMap(Animal::everyWord);
    }
}
