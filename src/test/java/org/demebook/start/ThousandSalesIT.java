package org.demebook.start;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReference;
import org.demebook.start.Nodes.Member;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A thousand animals, or as many as {@code -Ddemebook.sales} says (250 in the ordinary build), sold from one real node to another, through a proxy that delays, cuts, doubles and truncates, while now one node and now
 * the other is killed: no animal is lost, none is in two places, and everything that was acknowledged is there.
 */
class ThousandSalesIT {
    private static final Path STATE = Path.of("target", "thousand-sales").toAbsolutePath();
    private static final long SEED = Long.getLong("demebook.seed", 1_000);
    private static final int SALES = Integer.getInteger("demebook.sales", 250);
    private static final int KILLS = 6;
    private static final Duration PATIENCE = Duration.ofMinutes(15);
    private static final String POPULATION = "/api/v1/populations/" + Nodes.CODE;

    private Nodes nodes;
    private final Map<Member, String> tokens = new HashMap<>();
    private final AtomicReference<Throwable> broken = new AtomicReference<>();
    private final Set<String> offered = ConcurrentHashMap.newKeySet();
    private final Set<String> accepted = ConcurrentHashMap.newKeySet();

    @BeforeEach
    void start() throws IOException, InterruptedException {
        nodes = new Nodes(STATE, SEED);
        nodes.each().forEach(member -> {
            tokens.put(member, member.server().signIn("administrator", ServerProcess.ADMINISTRATOR_PASSWORD));
            ask(member, "collection").body(Map.of("label", member.name)).post(POPULATION + "/collections");
        });
    }

    @AfterEach
    void stop() throws IOException {
        nodes.close();
    }

    /** Sent again after a kill, a request has the same key: it has one effect. */
    private RequestSpecification ask(Member member, String key) {
        return given().baseUri(member.server().address())
                .contentType(ContentType.JSON)
                .header("Idempotency-Key", key)
                .auth()
                .preemptive()
                .oauth2(tokens.get(member));
    }

    @Test
    void no_animal_is_lost_and_none_is_in_two_places() throws InterruptedException, IOException {
        var numbers = register();
        nodes.each().forEach(member -> member.before.is(Proxy.Weather.STORM));
        var seller = thread(() -> numbers.forEach(this::offer));
        var buyer = thread(this::acceptAll);
        var chance = new SplittableRandom(SEED);
        for (int kill = 0; kill < KILLS && broken.get() == null; kill++) {
            Thread.sleep(2_000 + chance.nextInt(6_000));
            var victim = chance.nextBoolean() ? nodes.harbour : nodes.upland;
            victim.kill();
            Thread.sleep(chance.nextInt(1_000));
            victim.startAgain();
        }
        nodes.each().forEach(member -> member.before.is(Proxy.Weather.CALM));
        seller.join(PATIENCE.toMillis());
        buyer.join(PATIENCE.toMillis());
        assertThat(broken.get()).isNull();

        long end = System.nanoTime() + PATIENCE.toNanos();
        while (all(nodes.harbour, "/crossings?state=arrived").size() < SALES) {
            assertThat(System.nanoTime()).as("all have arrived, seed %d", SEED).isLessThan(end);
            Thread.sleep(1_000);
        }
        var arrived = all(nodes.upland, "/crossings?state=arrived");
        assertThat(arrived.stream().map(crossing -> crossing.get("id")))
                .containsAll(offered)
                .containsAll(accepted);
        assertThat(all(nodes.harbour, "/crossings?state=arrived").stream().map(crossing -> crossing.get("id")))
                .containsExactlyInAnyOrderElementsOf(
                        arrived.stream().map(crossing -> crossing.get("id")).toList());
        assertThat(held(nodes.upland)).as("held by the buyer").containsExactlyInAnyOrderElementsOf(numbers);
        assertThat(held(nodes.harbour)).as("held by the seller").isEmpty();
        nodes.each().forEach(member -> assertThat(member.alarms())
                .as("alarms at " + member.name)
                .isEmpty());
        assertThat(entries(nodes.harbour))
                .as("what each knows of both journals")
                .isEqualTo(entries(nodes.upland));
        System.out.printf("%d sales through %d kills, seed %d%n", SALES, KILLS, SEED);
    }

    private List<String> register() throws InterruptedException {
        var csv = new StringBuilder("reference,sex,born,origin\n");
        for (int i = 1; i <= SALES; i++) {
            csv.append("S-").append(i).append(",female,2026-06-29,captive-bred\n");
        }
        String run = ask(nodes.harbour, "sheet")
                .contentType("text/csv")
                .body(csv.toString().getBytes())
                .post(POPULATION + "/imports")
                .then()
                .statusCode(202)
                .extract()
                .path("id");
        String state;
        do {
            Thread.sleep(200);
            state = ask(nodes.harbour, "x").get(POPULATION + "/imports/" + run).path("state");
        } while ("running".equals(state));
        assertThat(state).isEqualTo("done");
        var numbers = held(nodes.harbour);
        assertThat(numbers).hasSize(SALES);
        return numbers;
    }

    private Thread thread(Runnable work) {
        var thread = new Thread(() -> {
            try {
                work.run();
            } catch (Throwable e) {
                broken.compareAndSet(null, e);
            }
        });
        thread.start();
        return thread;
    }

    private void offer(String number) {
        var body = Map.of("animal", number, "kind", "sale", "node", nodes.upland.code, "to", "administrator");
        var answer =
                until(201, () -> ask(nodes.harbour, "sell " + number).body(body).post(POPULATION + "/crossings"));
        offered.add(answer.path("id"));
    }

    private void acceptAll() {
        while (accepted.size() < SALES && broken.get() == null) {
            List<String> ids = until(
                            200, () -> ask(nodes.upland, "x").get(POPULATION + "/crossings?state=offered&limit=100"))
                    .path("items.findAll { !it.given }.id");
            for (var id : ids) {
                until(200, () -> ask(nodes.upland, "accept " + id)
                        .body(Map.of())
                        .post(POPULATION + "/crossings/" + id + "/acceptance"));
                accepted.add(id);
            }
        }
    }

    private interface Asking {
        Response send();
    }

    /** Again while the server is away, or must not write yet. */
    private Response until(int status, Asking asking) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            try {
                var answer = asking.send();
                if (answer.statusCode() == status) {
                    return answer;
                }
                if (answer.statusCode() != 503 && answer.statusCode() != 409) {
                    throw new AssertionError(answer.statusCode() + " " + answer.asString());
                }
            } catch (RuntimeException away) {
                if (!isAway(away)) {
                    throw away;
                }
            } catch (Exception away) {
                // refused or cut: the server is being killed, or starts; the client throws what its signature does not
                // say
            }
            pause();
        }
        throw new AssertionError("no answer within " + PATIENCE);
    }

    private static boolean isAway(RuntimeException e) {
        return e.getCause() instanceof IOException;
    }

    private static void pause() {
        try {
            Thread.sleep(100);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private List<Map<String, Object>> all(Member member, String list) {
        var items = new ArrayList<Map<String, Object>>();
        var after = "";
        while (after != null) {
            var cursor = after.isEmpty() ? "" : "&after=" + after;
            var page = ask(member, "x")
                    .get(POPULATION + list + (list.contains("?") ? "&" : "?") + "limit=200" + cursor)
                    .then()
                    .statusCode(200)
                    .extract();
            items.addAll(page.path("items"));
            after = page.path("next");
        }
        return items;
    }

    private List<String> held(Member member) {
        return all(member, "/animals").stream()
                .filter(animal -> animal.containsKey("held"))
                .map(animal -> (String) animal.get("number"))
                .toList();
    }

    private static Map<String, Integer> entries(Member member) {
        List<Map<String, Object>> known = member.federation().extract().path("nodes");
        var entries = new HashMap<String, Integer>();
        known.forEach(node -> entries.put((String) node.get("node"), (Integer) node.get("entries")));
        return entries;
    }
}
