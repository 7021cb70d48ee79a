package org.demebook.season;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** How long a season takes, from candidates to plan and bound, on one thread; docs/performance.md. */
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 1)
@Measurement(iterations = 5)
@Fork(value = 3, jvmArgs = "-Xmx1g")
@State(Scope.Benchmark)
public class SeasonBenchmark {
    /** Females, males, litters. */
    @Param({"80x60x50", "260x240x150"})
    String size;

    /** Whether as many young of each litter count, or from a half to four. */
    @Param({"true", "false"})
    boolean alike;

    private Season season;
    private SeasonPlan plan;

    @Setup
    public void make() {
        var parts = size.split("x");
        int females = Integer.parseInt(parts[0]);
        int males = Integer.parseInt(parts[1]);
        var builder = Herd.inTenCollections(5, (females + males) / 12, females, males, Integer.parseInt(parts[2]));
        for (int female = 0; female < females && !alike; female++) {
            builder.young(female, .5 * (1 + female * 7 % 8));
        }
        season = builder.build();
    }

    @Benchmark
    public SeasonPlan plan() {
        plan = (SeasonPlan) new SeasonPlanner(season, Effort.USUAL, Watch.NOBODY).plan();
        return plan;
    }

    @TearDown(Level.Trial)
    public void tell() {
        System.out.printf("gap %.4f %%%n", 100 * plan.gap());
    }
}
