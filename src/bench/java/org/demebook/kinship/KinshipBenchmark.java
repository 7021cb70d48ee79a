package org.demebook.kinship;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
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

/** How long the engine takes on a pedigree of the given size; the figures stand in docs/performance.md. */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgs = "-Xmx3g")
@State(Scope.Benchmark)
public class KinshipBenchmark {
    @Param("1000000")
    int animals;

    private GrownPedigree grown;
    private Births births;
    private Pedigree pedigree;
    private Pedigree growing;
    private int[] living;
    private int[] lastYear;
    private final SplittableRandom random = new SplittableRandom(5);

    @Setup
    public void grow() {
        grown = new GrownPedigree(animals);
        births = new BirthOrder(grown.told()).births();
        pedigree = grown.told().build();
        growing = pedigree;
        living = grown.living();
        lastYear = grown.lastYear();
    }

    /** Work that the engine shares among the threads of the pool it is called in. */
    @State(Scope.Benchmark)
    public static class Threads {
        @Param({"1", "2"})
        int threads;

        private ForkJoinPool pool;

        @Setup
        public void open() {
            pool = new ForkJoinPool(threads);
        }

        @TearDown(Level.Trial)
        public void close() {
            pool.shutdown();
        }

        <T> T run(Callable<T> work) throws ExecutionException, InterruptedException {
            return pool.submit(work).get();
        }
    }

    /** Told in rows, put in order, F of all. */
    @Benchmark
    public Object built(Threads threads) throws Exception {
        return threads.run(() -> grown.told().build());
    }

    @Benchmark
    public Object order() {
        return new BirthOrder(grown.told()).births();
    }

    @Benchmark
    public Object inbreedingOfAll(Threads threads) throws Exception {
        return threads.run(() -> Relationship.ofAll(births, null));
    }

    /** What memory allows: the traffic of one A·v at 72 bytes to an animal, half read and half written. */
    @Benchmark
    public Object bound_copyOfTheSameTraffic(Copy copy) {
        System.arraycopy(copy.from, 0, copy.to, 0, copy.from.length);
        return copy.to;
    }

    @State(Scope.Benchmark)
    public static class Copy {
        @Param("1000000")
        int animals;

        private double[] from;
        private double[] to;

        @Setup
        public void fill() {
            from = new double[animals * 9 / 2];
            to = new double[from.length];
            Arrays.fill(from, 1);
            Arrays.fill(to, 2);
        }
    }

    @Benchmark
    public double meanKinshipOfTheLiving() {
        var pool = pedigree.pool(living);
        double sum = pool.geneDiversity() + pool.founderGenomeEquivalents();
        for (int animal : living) {
            sum += pool.meanKinship(animal);
        }
        return sum;
    }

    @Benchmark
    public Object pairs_60x80(Threads threads) throws Exception {
        int[] males = GrownPedigree.some(living, 60, 1);
        int[] females = GrownPedigree.some(living, 80, 2);
        return threads.run(() -> pedigree.kinship(males, females));
    }

    @Benchmark
    public Object pairs_500x500(Threads threads) throws Exception {
        int[] males = GrownPedigree.some(living, 500, 3);
        int[] females = GrownPedigree.some(living, 500, 4);
        return threads.run(() -> pedigree.kinship(males, females));
    }

    /** A birth by the parents of some animal of the last year, and its F. */
    @Benchmark
    public double birth() {
        int row = growing.size();
        var builder = growing.extended(1);
        grown.tell(builder, row, lastYear[random.nextInt(lastYear.length)]);
        growing = builder.build();
        return growing.inbreeding(row);
    }

    /** The same, and the gene diversity of the living with it. */
    @Benchmark
    public double birthAndGeneDiversity() {
        double inbreeding = birth();
        int[] grownPool = Arrays.copyOf(living, living.length + 1);
        grownPool[living.length] = growing.size() - 1;
        return inbreeding + growing.pool(grownPool).geneDiversity();
    }

    /** Kinship of the parents of some animal of the last year. */
    @Benchmark
    public double kinshipOfOnePair() {
        int young = lastYear[random.nextInt(lastYear.length)];
        return pedigree.kinship(grown.sireOf(young), grown.damOf(young));
    }
}
