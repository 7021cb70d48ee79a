package org.demebook.planning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.demebook.ancestry.Snapshot;
import org.demebook.notation.Sex;

/**
 * Which animals may be proposed on a day. A snapshot has each animal once, so records that were merged are no candidates
 * of their own.
 *
 * @param held those that are on hold, by row
 * @param granted the rows whose keepers grant it
 * @param whereabouts the rows of which the asker may know where they live
 */
record Candidates(
        Snapshot snapshot,
        LocalDate pairOn,
        int daysOfAgeToBreed,
        BitSet granted,
        IntPredicate whereabouts,
        Map<Integer, OnHold> held) {

    /** How sure it is that an animal is old enough. */
    enum Age {
        OLD_ENOUGH,
        /** It may be, and nobody knows better. */
        UNCERTAIN,
        TOO_YOUNG
    }

    Age age(int row) {
        var youngest = snapshot.bornLatest(row);
        var oldest = snapshot.bornEarliest(row);
        if (oldest != null && oldest.plusDays(daysOfAgeToBreed).isAfter(pairOn)) {
            return Age.TOO_YOUNG;
        }
        return youngest != null && !youngest.plusDays(daysOfAgeToBreed).isAfter(pairOn)
                ? Age.OLD_ENOUGH
                : Age.UNCERTAIN;
    }

    String tooYoung(int row) {
        var born = snapshot.bornEarliest(row);
        return born == null ? "too young to breed" : "too young to breed before " + born.plusDays(daysOfAgeToBreed);
    }

    /** Rows of the living of a sex that may be proposed, ascending. */
    int[] living(Sex sex) {
        return Arrays.stream(snapshot.living())
                .filter(row -> snapshot.sex(row) == sex && granted.get(row))
                .toArray();
    }

    /** Those of them that may be proposed. */
    int[] proposable(Sex sex) {
        return Arrays.stream(living(sex)).filter(this::proposable).toArray();
    }

    /** Not on hold, and old enough, or nobody knows better. */
    boolean proposable(int row) {
        return !held.containsKey(row) && age(row) != Age.TOO_YOUNG;
    }

    /**
     * Whether two live apart, for all that the asker may know: which animals live together is not to be read from what is
     * missing. An animal that is on its way between two collections lives with no other.
     */
    boolean apart(int row, int other) {
        var collection = snapshot.collection(row);
        return collection == null
                || !collection.equals(snapshot.collection(other))
                || !(whereabouts.test(row) && whereabouts.test(other));
    }

    List<String> notes(int dam, int sire) {
        var notes = new ArrayList<String>();
        for (int row : new int[] {dam, sire}) {
            if (age(row) == Age.UNCERTAIN) {
                notes.add("When %s was born is not known well enough: make sure that it is old enough (%d days)."
                        .formatted(snapshot.number(row), daysOfAgeToBreed));
            }
        }
        for (var young : snapshot.doubtfulSiresOf(dam, sire)) {
            notes.add("The sire of %s is doubtful, and these figures take him as true: a DNA test would tell."
                    .formatted(young));
        }
        return notes;
    }
}
