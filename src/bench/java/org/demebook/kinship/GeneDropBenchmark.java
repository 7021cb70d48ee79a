package org.demebook.kinship;

import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
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

/** Ten thousand loci dropped through 24 000 animals. */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgs = "-Xmx1g")
@State(Scope.Benchmark)
public class GeneDropBenchmark {
    private static final int ANIMALS = 24_000;
    private static final int LOCI = 10_000;

    @Param({"1", "2"})
    int threads;

    /** Whether all are in the pool, or the last tenth, of whom not all others are ancestors. */
    @Param({"true", "false"})
    boolean allLiving;

    private ForkJoinPool workers;
    private GenePool pool;

    @Setup
    public void grow() {
        var pedigree = new GrownPedigree(ANIMALS).told().build();
        int first = allLiving ? 0 : ANIMALS * 9 / 10;
        pool = pedigree.pool(IntStream.range(first, ANIMALS).toArray());
        workers = new ForkJoinPool(threads);
    }

    @TearDown(Level.Trial)
    public void close() {
        workers.shutdown();
    }

    @Benchmark
    public Object geneDrop() throws Exception {
        return workers.submit(() -> pool.geneDrop(LOCI, 1)).get();
    }
}
