package org.demebook.protocol.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.demebook.Thorough;
import org.junit.jupiter.api.Test;

/**
 * The protocol's own code in thousands of small worlds where everything breaks that can. {@code -Ddemebook.seed=17} tells the story of
 * one world; see docs/federation/simulation.md.
 */
class SimulationTest {
    private static final long SEEDS = Thorough.size("demebook.seeds", 2_000, 100_000);
    private static final int THREADS = 2;

    @Test
    void in_every_world_all_rules_hold_and_everything_that_can_happen_has_happened() throws Exception {
        var one = Long.getLong("demebook.seed");
        if (one != null) {
            tell(one);
            return;
        }
        var counts = new EnumMap<Happening, Integer>(Happening.class);
        inParallel(
                        LongStream.rangeClosed(1, SEEDS),
                        seed -> new World(seed).run().story.counts())
                .forEach(its -> its.forEach((happening, count) -> counts.merge(happening, count, Integer::sum)));
        for (var happening : Happening.values()) {
            assertThat(counts.getOrDefault(happening, 0))
                    .as("how often in %d worlds: %s; of all: %s", SEEDS, happening, counts)
                    .isGreaterThanOrEqualTo((int) (SEEDS / 40));
        }
    }

    @Test
    void the_same_seed_is_the_same_world() throws Exception {
        inParallel(LongStream.rangeClosed(1, 20), seed -> {
            var hash = new World(seed).run().story.hash();
            assertThat(new World(seed).run().story.hash()).as("seed %d", seed).isEqualTo(hash);
            return hash;
        });
    }

    /** I13. Where no offer expires, so that no clock has anything to decide, the very same happens, whatever the clocks show. */
    @Test
    void i13_wrong_clocks_change_no_custody() throws Exception {
        inParallel(LongStream.rangeClosed(1, SEEDS / 20), seed -> {
            var right = new World(seed, clocks(0, 0)).run();
            var wrong = new World(seed, clocks(96, 0.3)).run();
            assertThat(withoutClocks(wrong)).as("seed %d", seed).isEqualTo(withoutClocks(right));
            assertThat(wrong.rules.custodyOfAll()).as("seed %d", seed).isEqualTo(right.rules.custodyOfAll());
            return seed;
        });
    }

    private static World.Parts clocks(int hoursOff, double jumps) {
        return new World.Parts() {
            @Override
            Conditions conditions(Dice dice) {
                return Conditions.of(dice).withClocks(hoursOff, jumps);
            }
        };
    }

    private static List<String> withoutClocks(World world) {
        return world.story.lines().stream()
                .filter(line -> !line.contains("the clock of") && !line.contains("a world:"))
                .toList();
    }

    private static void tell(long seed) {
        var world = new World(seed);
        try {
            world.run();
        } finally {
            System.out.println(world.story.all());
        }
    }

    static <T> List<T> inParallel(LongStream seeds, LongFunction<T> world)
            throws InterruptedException, ExecutionException {
        var pool = new ForkJoinPool(THREADS);
        try {
            return pool.submit(() -> seeds.parallel().mapToObj(world).toList()).get();
        } finally {
            pool.shutdown();
        }
    }
}
