package org.demebook.census;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.demebook.ancestry.Snapshot;
import org.jspecify.annotations.Nullable;

/** Which animals are counted on a day, and as what. */
final class Headcount {
    private final Snapshot snapshot;
    private final LocalDate day;
    private final int daysOfAgeToBreed;
    private final IntFunction<@Nullable String> region;
    private final int[] rows;

    /**
     * @param granted whether the keepers of a row let it be counted in what is published
     * @param region of a row; null where it is to be counted as not stated
     */
    Headcount(
            Snapshot snapshot,
            LocalDate day,
            int daysOfAgeToBreed,
            IntPredicate granted,
            IntFunction<@Nullable String> region) {
        this.snapshot = snapshot;
        this.day = day;
        this.daysOfAgeToBreed = daysOfAgeToBreed;
        this.region = region;
        this.rows = IntStream.range(0, snapshot.size())
                .filter(row -> isCounted(row) && granted.test(row))
                .toArray();
    }

    /**
     * Those of this node that are known to live on the day; where a birth or a death is known roughly, both are taken as early.
     */
    private boolean isCounted(int row) {
        var born = snapshot.bornEarliest(row);
        var died = snapshot.diedEarliest(row);
        return snapshot.node(row) == null
                && (born == null || !born.isAfter(day))
                && (snapshot.alive(row) || died != null && died.isAfter(day));
    }

    /** Rows of the snapshot, ascending. */
    int[] rows() {
        return rows.clone();
    }

    List<CountedAnimal> animals() {
        return Arrays.stream(rows).mapToObj(this::counted).toList();
    }

    private CountedAnimal counted(int row) {
        var earliest = snapshot.bornEarliest(row);
        var latest = snapshot.bornLatest(row);
        return new CountedAnimal(
                snapshot.number(row),
                snapshot.sex(row).word(),
                AgeClass.on(day, earliest, latest, daysOfAgeToBreed).word(),
                CountedAnimal.decade(earliest, latest),
                holder(snapshot, row),
                Objects.requireNonNull(snapshot.owner(row)),
                region.apply(row));
    }

    /** The collection where an animal lives; its owner's while it is in a transfer. */
    static UUID holder(Snapshot snapshot, int row) {
        return Objects.requireNonNullElseGet(
                snapshot.collection(row), () -> Objects.requireNonNull(snapshot.owner(row)));
    }
}
