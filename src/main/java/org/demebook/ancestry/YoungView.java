package org.demebook.ancestry;

import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A young of an animal.
 *
 * @param born absent when unknown
 * @param otherParent studbook number of the other parent; absent when it is not known, not shown, or one of several
 * @param certain false where the animal is one of several sires that it may have
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record YoungView(
        String number,
        Sex sex,
        @Nullable String born,
        boolean alive,
        @Nullable String otherParent,
        boolean certain) {

    static int[] rows(Snapshot snapshot, int parent) {
        return IntStream.range(0, snapshot.size())
                .filter(row -> snapshot.isShown(row) && snapshot.isParentageShown(row))
                .filter(row -> snapshot.dam(row) == parent
                        || IntStream.of(snapshot.sires(row)).anyMatch(sire -> sire == parent))
                .toArray();
    }

    static YoungView of(Snapshot snapshot, int row, int parent) {
        boolean isDam = snapshot.dam(row) == parent;
        int other = isDam ? snapshot.shownSire(row) : snapshot.shownDam(row);
        return new YoungView(
                snapshot.number(row),
                snapshot.sex(row),
                snapshot.born(row),
                snapshot.alive(row),
                other == Pedigree.UNKNOWN ? null : snapshot.number(other),
                isDam || snapshot.shownSire(row) == parent);
    }
}
