package org.demebook.ancestry;

import java.util.Arrays;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.StudbookNumber;
import org.demebook.registry.StatedSire;

/** The parents as the asker of a snapshot may read them. One whose number is not told is unknown. */
record NamedParents(Records records, Parents parents, Shown shown) {
    int dam(int row) {
        int dam = shown.parentage(row) ? parents.dam()[row] : Pedigree.UNKNOWN;
        return dam == Pedigree.UNKNOWN || records.animal(dam).isNameless() ? Pedigree.UNKNOWN : dam;
    }

    int oneSire(int row) {
        int[] sires = parents.sires()[row];
        return shown.parentage(row)
                        && parents.uncertainSire().get(row) == null
                        && sires.length == 1
                        && !records.animal(sires[0]).isNameless()
                ? sires[0]
                : Pedigree.UNKNOWN;
    }

    StatedSire sire(int row) {
        if (!shown.parentage(row)) {
            return StatedSire.UNKNOWN;
        }
        int[] sires = parents.sires()[row];
        boolean namesAll =
                Arrays.stream(sires).noneMatch(sire -> records.animal(sire).isNameless());
        var sire = parents.uncertainSire().get(row);
        if (sire != null) {
            return namesAll ? sire : withNamesOnly(sire);
        }
        if (sires.length == 0 || !namesAll) {
            return StatedSire.UNKNOWN;
        }
        var known = records.animal(sires[0]).number();
        return parents.doubtful().get(row) ? StatedSire.doubted(known) : StatedSire.known(known);
    }

    private static StatedSire withNamesOnly(StatedSire sire) {
        var named = sire.candidates().stream()
                .filter(candidate -> !StudbookNumber.isPlaceholder(candidate.animal()))
                .toList();
        return named.isEmpty()
                ? StatedSire.UNKNOWN
                : StatedSire.candidates(named, Boolean.TRUE.equals(sire.wholeLitter()));
    }
}
