package org.demebook.consent;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.demebook.Colony.DOV;
import static org.demebook.Colony.INES;
import static org.demebook.Colony.OUTSIDER;
import static org.demebook.Colony.WREN;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.enterprise.inject.spi.BeanManager;
import jakarta.inject.Inject;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.zip.ZipInputStream;
import org.demebook.Colony;
import org.demebook.start.TestServer;
import org.demebook.web.Browsing;
import org.demebook.web.PageAddresses;
import org.jboss.logging.Logger;
import org.junit.jupiter.api.Test;

/**
 * Every text that three keepers write is a word that stands nowhere else. Then everybody asks everything: each operation that
 * reads, taken from the contract, and every page, for each thing that there is, under random grants. No answer (headers and body) may hold a
 * word that its asker was not granted, by the plain oracle of {@link CanaryWorld}. No line of the log may hold any word.
 *
 * <p>Then everybody writes about what is not theirs: each operation that writes, on things of others and with animals of others named in
 * it. No answer holds what is denied, nothing is done to an animal of others, and a refusal of what is hidden is, number for number, the
 * refusal of what does not exist. What is said in a refused request is told to nobody else.
 *
 * <p>A check is one answer looked through for one word that is denied. An operation that this test does not know how to ask
 * fails it, so that a new one is covered on the day it appears. A zip is looked through file by file; pictures and PDF
 * are asked for and not looked through.
 */
@QuarkusTest
@QuarkusTestResource(TestServer.class)
class CanaryTest {
    private static final long SEED = Long.getLong("demebook.canary.seed", 4_242);
    private static final int CHECKS = Integer.getInteger("demebook.canary.checks", 100_000);
    private static final int FEWEST_ROUNDS = Integer.getInteger("demebook.canary.rounds", 2);
    private static final String NOBODY = "nobody";
    private static final String ADMINISTRATOR = "administrator";
    private static final List<String> ASKERS = List.of(WREN, INES, DOV, OUTSIDER, ADMINISTRATOR, NOBODY);

    private final Random random = new Random(SEED);
    private final CanaryWords words = new CanaryWords(random);
    private final Map<String, Set<String>> deniedTo = new HashMap<>();
    private final List<String> leaks = new ArrayList<>();
    private CanaryWorld world;

    @Inject
    BeanManager beans;

    private int checks;
    private int answers;
    private int told;
    private int written;
    private int compared;
    private int unzipped;
    private int pages;

    /** How many writes were refused by type of problem. */
    private final Map<String, Integer> refusals = new TreeMap<>();

    @Test
    void no_answer_and_no_line_of_the_log_holds_a_word_that_its_asker_was_not_granted() throws IOException {
        var contract =
                new YAMLMapper().readTree(Path.of("openapi", "openapi.yaml").toFile());
        try (var log = new LogWatch()) {
            Logger.getLogger(CanaryTest.class).info("the watch hears this");
            assertThat(log.read()).contains("the watch hears this");
            for (int round = 0; round < FEWEST_ROUNDS || checks < CHECKS; round++) {
                words.forget();
                world = new CanaryWorld(random, words);
                Colony.token(OUTSIDER);
                new CanaryStory(world).write();
                for (int grant = 0; grant < 6 * round; grant++) {
                    world.giveSomething();
                }
                deniedTo.clear();
                ASKERS.forEach(asker -> deniedTo.put(asker, world.denied(asker)));
                askEverything(contract);
                writeAboutOthers(contract);
                leaks.forEach(System.out::println);
                assertThat(leaks).as("seed %d, round %d", SEED, round).isEmpty();
                holdsNothing(log.read());
            }
        }
        assertThat(checks).isGreaterThanOrEqualTo(CHECKS);
        // what was granted is told, or there would be nothing to find
        assertThat(unzipped).as("files that were unpacked").isGreaterThan(50);
        assertThat(pages).as("pages that were looked through").isGreaterThan(500);
        assertThat(told).as("words of others that were granted, and told").isGreaterThan(100);
        // what was sent could have been meant: it was refused for what it asks, and not for how it was written
        int refused = refusals.values().stream().mapToInt(Integer::intValue).sum();
        assertThat(refused).as("writes that were refused").isGreaterThan(written / 2);
        assertThat(refusals)
                .doesNotContainKeys(
                        "/problems/unknown-field", "/problems/unreadable-body", "/problems/unsupported-media-type");
        assertThat(compared)
                .as("refusals of what is hidden, held against what does not exist")
                .isGreaterThan(100);
        System.out.printf(
                "%d words looked for in %d answers, among them %d pages; %d of others told as granted; %d writes, %d refused, %d held against"
                        + " nothing%n%s%n",
                checks, answers, pages, told, written, refused, compared, refusals);
    }

    private void askEverything(JsonNode contract) {
        var reads = new CanaryReads(world);
        for (var path : contract.path("paths").properties()) {
            if (path.getValue().has("get")) {
                for (var address : reads.addresses(path.getKey())) {
                    ASKERS.forEach(asker -> look(asker, address));
                }
            }
        }
        ASKERS.forEach(asker -> look(asker, world.colony.path("/animals?limit=200")));
        askPages(reads);
    }

    /** Pages stand on the same doors; what they are composed of is looked through as a browser gets it. */
    private void askPages(CanaryReads reads) {
        for (var page : PageAddresses.all(beans)) {
            for (var address : reads.addresses(page)) {
                for (var asker : ASKERS) {
                    var browser = asker.equals(NOBODY) ? Browsing.anonymous() : Browsing.as(asker);
                    var response = browser.get(address);
                    pages += response.statusCode() == 200 ? 1 : 0;
                    look(asker, "the page " + address, "", address, response, world.deniedOnPages(asker));
                }
            }
        }
    }

    private void look(String asker, String address) {
        try {
            look(asker, "GET " + address, "", address, as(asker).get(address));
        } catch (AssertionError notInTheContract) {
            leaks.add(asker + ": " + notInTheContract.getMessage());
        }
    }

    private void look(String asker, String asked, String sent, String address, Response response) {
        look(asker, asked, sent, address, response, deniedAt(asker, address));
    }

    /** Looks through an answer for all that is denied, but for what the asker brought along. */
    private void look(String asker, String asked, String sent, String address, Response response, Set<String> denied) {
        var type = String.valueOf(response.contentType());
        if (type.startsWith("image/") || type.equals("application/pdf")) {
            return;
        }
        if (response.statusCode() >= 500) {
            leaks.add("%s, asking %s %s: %d".formatted(asker, asked, sent, response.statusCode()));
        }
        var text = response.headers() + "\n" + (type.endsWith("/zip") ? unzipped(response) : response.asString());
        checks += denied.size();
        answers++;
        var found = words.in(text);
        if (found.isEmpty()) {
            return;
        }
        told += (int) world.ofOthers(asker)
                .filter(word -> found.contains(word) && !denied.contains(word))
                .count();
        found.retainAll(denied);
        found.removeAll(words.in(address + "\n" + sent));
        if (!found.isEmpty()) {
            leaks.add("%s, asking %s %s, is told %s, which nobody granted: %s"
                    .formatted(asker, asked, sent, found, text));
        }
    }

    /** Names and contents of all files but pictures. */
    private String unzipped(Response response) {
        var text = new StringBuilder();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(response.asByteArray()))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                text.append(entry.getName()).append('\n');
                if (!entry.getName().endsWith(".jpg")) {
                    text.append(new String(zip.readAllBytes(), UTF_8)).append('\n');
                    unzipped++;
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** What an address does not tell, and what others said in vain, which no address tells. */
    private Set<String> deniedAt(String asker, String address) {
        var always = deniedTo.get(asker);
        if (world.isPlain(asker, address)) {
            return always;
        }
        var denied = world.denied(asker, address);
        always.stream().filter(word -> word.startsWith("said")).forEach(denied::add);
        return denied;
    }

    // ── what is written ──────────────────────────────────────────────────────────────────────────────────────────────

    /** After the reads of a round, so that what was granted stays as the oracle has it. */
    private void writeAboutOthers(JsonNode contract) {
        for (var asker : ASKERS) {
            for (var foreign : foreignTo(asker)) {
                var writes = new CanaryWrites(world, asker, foreign);
                for (var path : contract.path("paths").properties()) {
                    for (var verb : List.of("post", "put", "delete")) {
                        var operation = path.getValue().path(verb);
                        if (!operation.isMissingNode()) {
                            writes.of(verb.toUpperCase(Locale.ROOT), path.getKey(), operation.has("requestBody"))
                                    .forEach(write -> sendOnce(asker, foreign, writes, write));
                        }
                    }
                }
            }
        }
    }

    /** An animal of others: mostly one that is hidden from the asker, now and then one that is not. */
    private List<String> foreignTo(String asker) {
        var foreign = new ArrayList<String>();
        var seen = new ArrayList<String>();
        world.animals.values().stream()
                .filter(animal -> !animal.parties().contains(asker)
                        && !animal.sides().contains(asker)
                        && !animal.namers().contains(asker))
                .forEach(animal -> (world.knows(asker, animal) ? seen : foreign).add(animal.number()));
        var some = foreign.isEmpty() || !seen.isEmpty() && random.nextInt(3) == 0 ? seen : foreign;
        return some.isEmpty() ? List.of() : List.of(some.get(random.nextInt(some.size())));
    }

    private void sendOnce(String asker, String foreign, CanaryWrites writes, CanaryWrites.Write write) {
        try {
            send(asker, foreign, writes, write);
        } catch (AssertionError notInTheContract) {
            leaks.add(asker + ": " + notInTheContract.getMessage());
        }
    }

    private void send(String asker, String foreign, CanaryWrites writes, CanaryWrites.Write write) {
        var asked = write.verb() + " " + write.address();
        boolean hidden = deniedTo.get(asker).contains(foreign);
        var response = answer(asker, writes, write);
        look(asker, asked, write.sent(), write.address(), response);
        written++;
        boolean isRefused = response.statusCode() >= 400;
        if (isRefused) {
            refusals.merge(response.path("type"), 1, Integer::sum);
            // nobody else is told what was said in vain
            var said = words.in(write.address() + write.sent());
            said.removeIf(word -> !word.startsWith("said"));
            ASKERS.stream().filter(other -> !other.equals(asker)).forEach(other -> deniedTo.get(other)
                    .addAll(said));
        } else if (write.address().contains(foreign) && !isCoordinators(asker, write)) {
            leaks.add("%s did %s %s: %s".formatted(asker, asked, write.sent(), response.asString()));
        } else if (!hidden) {
            // an own record that names an animal which the asker sees: who sees the record is told the number
            deniedTo.values().forEach(denied -> denied.remove(foreign));
        }
        boolean isPlain = isRefused || write.address().endsWith("/import-checks");
        if (hidden && isPlain && (write.address() + write.sent()).contains(foreign)) {
            var nothing = answer(asker, writes, write.about(writes.absent, foreign));
            if (!plain(nothing, writes.absent).equals(plain(response, foreign))) {
                leaks.add("%s, asking %s %s, sees that it exists: %s, not %s"
                        .formatted(
                                asker, asked, write.sent(), plain(response, foreign), plain(nothing, writes.absent)));
            }
            compared++;
        }
    }

    /** Whether an animal that they see is to breed is also a coordinator's to say. */
    private static boolean isCoordinators(String asker, CanaryWrites.Write write) {
        return asker.equals(CanaryWorld.COORDINATOR) && write.address().contains("/breeding-hold");
    }

    private static String plain(Response response, String number) {
        return response.statusCode() + " " + response.asString().replace(number, "NUMBER");
    }

    private Response answer(String asker, CanaryWrites writes, CanaryWrites.Write write) {
        var request = as(asker).contentType(write.type());
        if (asker.equals(NOBODY)) {
            request.header("Idempotency-Key", UUID.randomUUID().toString());
        }
        if (write.tagged()) {
            request.header("If-Match", writes.tag(write));
        }
        if (write.body() instanceof byte[] bytes) {
            request.body(bytes);
        } else if (!write.sent().isEmpty()) {
            request.body(write.sent());
        }
        return request.request(write.verb(), write.address());
    }

    private static RequestSpecification as(String asker) {
        return asker.equals(NOBODY) ? Colony.anonymous() : Colony.as(asker);
    }

    private void holdsNothing(String log) {
        var found = new TreeSet<>(words.in(log));
        found.retainAll(words.unloggable());
        assertThat(found).as("words in the log: %s", log).isEmpty();
    }
}
