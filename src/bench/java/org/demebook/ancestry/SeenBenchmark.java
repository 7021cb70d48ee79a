package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.demebook.consent.LensOf;
import org.demebook.notation.Origin;
import org.demebook.notation.Sex;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * How long it takes until a population is as one asker may see it: thirty collections, half of which let their animals be
 * computed with and not be seen, and two grant nothing; the figures stand in docs/performance.md.
 */
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(value = 1, jvmArgs = "-Xmx2g")
@State(Scope.Benchmark)
public class SeenBenchmark {
    private static final int COLLECTIONS = 30;
    private static final int FOUNDERS = 60;

    @Param("5000")
    int animals;

    private final SplittableRandom random = new SplittableRandom(5);
    private final List<UUID> collections = new ArrayList<>();
    private Snapshot whole;
    private LensOf asker;
    private SeenSnapshots kept;

    @Setup
    public void register() {
        for (int i = 0; i < COLLECTIONS; i++) {
            collections.add(new UUID(random.nextLong(), random.nextLong()));
        }
        var records = new ArrayList<PedigreeRow>();
        for (int row = 0; row < animals; row++) {
            records.add(record(row, records));
        }
        whole = Snapshot.of(1, records);
        asker = new LensOf(collections.get(0), collections);
        kept = new SeenSnapshots();
        kept.of(whole, asker.lens());
    }

    private PedigreeRow record(int row, List<PedigreeRow> before) {
        var collection = collections.get(random.nextInt(COLLECTIONS));
        boolean founder = row < FOUNDERS;
        var born = LocalDate.of(1990, 1, 1).plusDays(row * 13_000L / animals);
        return new PedigreeRow(
                new UUID(random.nextLong(), random.nextLong()),
                new StudbookNumber("MC", "H", row + 1L).toString(),
                row % 2 == 0 ? Sex.FEMALE : Sex.MALE,
                born.toString(),
                born,
                born,
                row > animals * 3 / 4,
                null,
                founder ? Origin.WILD_CAUGHT : Origin.CAPTIVE_BRED,
                founder ? null : before.get(parent(row, 0)).id(),
                founder ? new Sire.Unknown() : new Sire.Known(before.get(parent(row, 1)).id(), false),
                collection,
                collection,
                null,
                null,
                1);
    }

    /** One of the last fifth, or of the founders, of a sex. */
    private int parent(int row, int sex) {
        int from = Math.max(0, row - Math.max(FOUNDERS, row / 5));
        return (from + random.nextInt(row - from - 1)) / 2 * 2 + sex;
    }

    /** The first answer to somebody who sees what nobody else sees, after something happened. */
    @Benchmark
    public Object fresh() {
        return new SeenSnapshots().of(whole, asker.lens());
    }

    /** Every further one. */
    @Benchmark
    public Object kept() {
        return kept.of(whole, asker.lens());
    }

    /** What the first answer to who sees everything costs more: the looking alone. */
    @Benchmark
    public Object looked() {
        return Sight.of(whole.records(), asker.lens());
    }
}
