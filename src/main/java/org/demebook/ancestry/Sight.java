package org.demebook.ancestry;

import static org.demebook.consent.Action.COMPUTE;
import static org.demebook.consent.Action.READ;
import static org.demebook.consent.FieldGroup.IDENTITY;
import static org.demebook.consent.FieldGroup.PARENTAGE;

import java.util.BitSet;
import org.demebook.consent.Action;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.Lens;

/**
 * What somebody may see of a population, and what they may have computed with, by row. Two who may the same have equal
 * sights.
 *
 * @param animals that they may see
 * @param parentages that they may see; of no animal that they may not see, nor one that was told to be computed with alone
 * @param countedAnimals that figures may rest on: those that they may see, and those that they may have computed with
 * @param countedParentages likewise; of no animal that does not count
 */
record Sight(BitSet animals, BitSet parentages, BitSet countedAnimals, BitSet countedParentages) {

    /** Whether a field group of the animal of a row is granted. */
    interface Granted {
        boolean may(int row, FieldGroup fieldGroup, Action action);
    }

    /** Two to four decisions for each animal. */
    static Sight of(Records records, Lens lens) {
        var sight = of(
                records.size(),
                (row, fieldGroup, action) -> lens.may(records.animal(row).subject(), fieldGroup, action));
        for (int row = 0; row < records.size(); row++) {
            var animal = records.animal(row);
            if (animal.isNameless()) {
                sight.animals.clear(row);
                sight.parentages.clear(row);
            } else if (animal.parentageUnshown()) {
                sight.parentages.clear(row);
            }
        }
        return sight;
    }

    static Sight of(int size, Granted granted) {
        var sight = new Sight(new BitSet(size), new BitSet(size), new BitSet(size), new BitSet(size));
        for (int row = 0; row < size; row++) {
            sight.look(row, granted);
        }
        return sight;
    }

    private void look(int row, Granted granted) {
        boolean seen = granted.may(row, IDENTITY, READ);
        if (!seen && !granted.may(row, IDENTITY, COMPUTE)) {
            return;
        }
        boolean parentageRead = granted.may(row, PARENTAGE, READ);
        animals.set(row, seen);
        countedAnimals.set(row);
        parentages.set(row, seen && parentageRead);
        countedParentages.set(row, parentageRead || granted.may(row, PARENTAGE, COMPUTE));
    }

    /** Whether nothing is left out. */
    boolean isWhole(int size) {
        return parentages.cardinality() == size;
    }
}
