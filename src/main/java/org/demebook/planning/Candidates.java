package org.demebook.planning;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.function.IntPredicate;
import org.demebook.ancestry.Snapshot;
import org.demebook.notation.Sex;

/**
 * Which animals may be proposed on a day. A snapshot has each animal once, so records that were merged are no candidates
 * of their own.
 *
 * @param proposable the rows whose keepers grant it
 * @param whereabouts the rows of which the asker may know where they live
 */
record Candidates(
        Snapshot snapshot, LocalDate today, int daysOfAgeToBreed, BitSet proposable, IntPredicate whereabouts) {

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
        if (oldest != null && oldest.plusDays(daysOfAgeToBreed).isAfter(today)) {
            return Age.TOO_YOUNG;
        }
        return youngest != null && !youngest.plusDays(daysOfAgeToBreed).isAfter(today) ? Age.OLD_ENOUGH : Age.UNCERTAIN;
    }

    String tooYoung(int row) {
        var born = snapshot.bornEarliest(row);
        return born == null ? "too young to breed" : "too young to breed before " + born.plusDays(daysOfAgeToBreed);
    }

    /** Rows of the living of a sex that may be proposed, ascending. */
    int[] living(Sex sex) {
        return Arrays.stream(snapshot.living())
                .filter(row -> snapshot.sex(row) == sex && proposable.get(row))
                .toArray();
    }

    /** Those of them that are, or may be, old enough. */
    int[] mature(Sex sex) {
        return Arrays.stream(living(sex))
                .filter(row -> age(row) != Age.TOO_YOUNG)
                .toArray();
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
        return Arrays.stream(new int[] {dam, sire})
                .filter(row -> age(row) == Age.UNCERTAIN)
                .mapToObj(row -> "When %s was born is not known well enough: make sure that it is old enough (%d days)."
                        .formatted(snapshot.number(row), daysOfAgeToBreed))
                .toList();
    }
}
