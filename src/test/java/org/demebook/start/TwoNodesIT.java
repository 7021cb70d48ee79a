package org.demebook.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import org.demebook.start.Nodes.Member;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two real nodes, TLS on loopback, everything by REST: what one says reaches the other, whatever comes in between. */
class TwoNodesIT {
    private static final Path STATE = Path.of("target", "two-nodes").toAbsolutePath();
    private static final long SEED = Long.getLong("demebook.seed", 4711);
    private static final Duration PATIENCE = Duration.ofSeconds(90);

    private static Nodes nodes;
    private static int said;

    @BeforeAll
    static void start() throws IOException, InterruptedException {
        nodes = new Nodes(STATE, SEED);
        await("both journals have begun, nobody is fenced", () -> nodes.each().allMatch(member -> {
            var seen = member.federation().extract();
            return !seen.<Boolean>path("fenced")
                    && seen.<List<Integer>>path("nodes.entries").size() == 2
                    && seen.<List<Integer>>path("nodes.entries").stream().allMatch(entries -> entries > 0);
        }));
    }

    @AfterAll
    static void stop() throws IOException {
        if (nodes != null) {
            nodes.close();
        }
    }

    private static void await(String what, BooleanSupplier holds) throws InterruptedException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!holds.getAsBoolean()) {
            assertThat(System.nanoTime()).as(what + ", seed " + SEED).isLessThan(end);
            Thread.sleep(10);
        }
    }

    /** A code that was not there before. */
    private static String next() {
        return "U" + Integer.toString(1296 + said++, 36).toUpperCase().substring(0, 3);
    }

    private static boolean knows(Member member, String code) {
        return member.federation().extract().<List<String>>path("nodes.code").contains(code);
    }

    @Test
    void what_one_node_says_is_seen_at_the_other_within_two_seconds() throws InterruptedException {
        var millis = new ArrayList<Long>();
        for (int i = 0; i < 30; i++) {
            var code = next();
            nodes.seat(code);
            long begin = System.nanoTime();
            await("it arrives", () -> knows(nodes.upland, code));
            millis.add((System.nanoTime() - begin) / 1_000_000);
        }
        millis.sort(null);
        System.out.printf(
                "from a write to its appearance at the peer, ms: median %d, slowest of 30 %d%n",
                millis.get(15), millis.get(29));
        assertThat(millis.get(15)).as("the median of %s", millis).isLessThan(2_000);
        assertNobodyIsAccused();
    }

    @Test
    void through_storms_and_kills_everything_that_was_acknowledged_is_at_both_nodes() throws Exception {
        var chance = new SplittableRandom(SEED);
        long before = entries(nodes.harbour);
        int acknowledged = 0;
        var last = "";
        for (int round = 0; round < 4; round++) {
            nodes.each().forEach(member -> member.before.is(Proxy.Weather.STORM));
            int writes = 3 + chance.nextInt(8);
            for (int i = 0; i < writes; i++) {
                last = next();
                nodes.seat(last);
                acknowledged++;
            }
            var victim = chance.nextBoolean() ? nodes.harbour : nodes.upland;
            Thread.sleep(chance.nextInt(1_500));
            victim.kill();
            Thread.sleep(chance.nextInt(500));
            victim.startAgain();
            if (round % 2 == 1) {
                nodes.each().forEach(member -> member.before.is(Proxy.Weather.CALM));
            }
            await(
                    "the harbour may write again",
                    () -> !nodes.harbour.federation().extract().<Boolean>path("fenced"));
        }
        nodes.each().forEach(member -> member.before.is(Proxy.Weather.CALM));
        var code = last;
        await("the last word arrives", () -> knows(nodes.upland, code));
        long after = entries(nodes.harbour);
        assertThat(after - before).as("seed %d", SEED).isEqualTo(acknowledged);
        await("the upland has them all", () -> entriesOfHarbour(nodes.upland) == after);
        var storms = nodes.each().map(member -> member.before).toList();
        assertThat(storms.stream().mapToInt(proxy -> proxy.cuts.get()).sum())
                .as("cuts")
                .isPositive();
        assertThat(storms.stream().mapToInt(proxy -> proxy.delays.get()).sum())
                .as("delays")
                .isPositive();
        assertNobodyIsAccused();
    }

    private static long entries(Member member) {
        return entriesOfHarbour(member);
    }

    private static long entriesOfHarbour(Member member) {
        return member.federation()
                .extract()
                .<Integer>path("nodes.find { it.node == '%s' }.entries".formatted(nodes.harbour.id));
    }

    private static void assertNobodyIsAccused() {
        nodes.each().forEach(member -> assertThat(member.alarms())
                .as("alarms at " + member.name)
                .isEmpty());
    }
}
