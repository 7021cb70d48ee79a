package org.demebook.planning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.demebook.ancestry.Snapshot;
import org.demebook.notation.Sex;

/**
 * Which animals may be proposed on a day. A snapshot has each animal once, so records that were merged are no candidates
 * of their own.
 *
 * @param granted the rows whose keepers grant it
 * @param whereabouts the rows of which the asker may know where they live
 * @param known what speaks against animals
 */
record Candidates(
        Snapshot snapshot,
        LocalDate pairOn,
        int daysOfAgeToBreed,
        BitSet granted,
        IntPredicate whereabouts,
        Hindrances known) {

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

    private String tooYoung(int row) {
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

    /** Nothing speaks against it, or nobody knows better. */
    boolean proposable(int row) {
        return objection(row).isEmpty();
    }

    /** What keeps it from being paired on the day: the weightiest. */
    Optional<Objection> objection(int row) {
        var held = known.held().get(row);
        if (held != null) {
            return Optional.of(new Objection(Hindrance.ON_HOLD, held.words()));
        }
        if (age(row) == Age.TOO_YOUNG) {
            return Optional.of(new Objection(Hindrance.TOO_YOUNG, tooYoung(row)));
        }
        var rest = known.resting().get(row);
        if (rest != null && rest.sure()) {
            return Optional.of(new Objection(Hindrance.RESTS, rest.words(known.daysBetweenLitters())));
        }
        var test = known.tests().get(row);
        return test == null || test.onHold() == null
                ? Optional.empty()
                : Optional.of(new Objection(Hindrance.TEST, test.onHold()));
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
        notes.addAll(notes(dam));
        notes.addAll(notes(sire));
        for (var young : snapshot.doubtfulSiresOf(dam, sire)) {
            notes.add("The sire of %s is doubtful, and these figures take him as true: a DNA test would tell."
                    .formatted(young));
        }
        return notes;
    }

    /** What is worth a second look before it is paired. */
    List<String> notes(int row) {
        var notes = new ArrayList<String>();
        if (age(row) == Age.UNCERTAIN) {
            notes.add("When %s was born is not known well enough: make sure that it is old enough (%d days)."
                    .formatted(snapshot.number(row), daysOfAgeToBreed));
        }
        var rest = known.resting().get(row);
        if (rest != null && !rest.sure()) {
            notes.add(
                    "When the last young of %s were born is not known well enough: make sure that she has rested (%d days from birth to birth)."
                            .formatted(snapshot.number(row), known.daysBetweenLitters()));
        }
        return notes;
    }
}
