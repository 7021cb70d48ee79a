package org.demebook.ancestry;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/**
 * Since when and until when each animal that is shown is known to have lived: by row, and nothing of one that is not shown.
 *
 * <p>It lives from the latest day on which it may have been born, or, where that is not known, from the birth of its first young; until
 * the earliest day on which it may have died, or, where that is not known, until the birth of its last young.
 */
final class Lifetimes {
    private final Snapshot snapshot;
    private final @Nullable LocalDate[] since;
    private final @Nullable LocalDate[] lastYoung;

    Lifetimes(Snapshot snapshot) {
        this.snapshot = snapshot;
        since = new LocalDate[snapshot.size()];
        lastYoung = new LocalDate[snapshot.size()];
        var firstYoung = new LocalDate[snapshot.size()];
        for (int row = 0; row < snapshot.size(); row++) {
            if (snapshot.isShown(row)) {
                since[row] = snapshot.bornLatest(row);
                for (int parent : new int[] {snapshot.shownDam(row), snapshot.shownSire(row)}) {
                    if (parent != Pedigree.UNKNOWN) {
                        firstYoung[parent] = earlier(firstYoung[parent], snapshot.bornLatest(row));
                        lastYoung[parent] = later(lastYoung[parent], snapshot.bornEarliest(row));
                    }
                }
            }
        }
        for (int row = 0; row < since.length; row++) {
            if (since[row] == null && snapshot.isShown(row)) {
                since[row] = firstYoung[row];
            }
        }
    }

    private static @Nullable LocalDate earlier(@Nullable LocalDate day, @Nullable LocalDate other) {
        return day == null || other != null && other.isBefore(day) ? other : day;
    }

    private static @Nullable LocalDate later(@Nullable LocalDate day, @Nullable LocalDate other) {
        return day == null || other != null && other.isAfter(day) ? other : day;
    }

    /** Null where nobody knows. */
    @Nullable
    LocalDate since(int row) {
        return since[row];
    }

    /** The first day of which it is known; null where there is none. */
    @Nullable
    LocalDate first() {
        return Arrays.stream(since)
                .filter(day -> day != null)
                .min(LocalDate::compareTo)
                .orElse(null);
    }

    /** Rows of those known to live on a day, ascending. */
    int[] on(LocalDate day) {
        return IntStream.range(0, since.length)
                .filter(row -> since[row] != null && !since[row].isAfter(day) && livesOn(row, day))
                .toArray();
    }

    private boolean livesOn(int row, LocalDate day) {
        if (snapshot.alive(row)) {
            return true;
        }
        var died = snapshot.diedEarliest(row);
        if (died != null) {
            return died.isAfter(day);
        }
        return lastYoung[row] != null && !lastYoung[row].isBefore(day);
    }
}
