package org.demebook.ancestry;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;
import org.demebook.registry.PedigreeRow;
import org.demebook.registry.Sire;

/**
 * The records of a population as one sight has them: what it may neither see nor compute with is as if it had never been
 * stated. Of a parent that is not granted itself the number alone is left, where a granted parentage names it.
 *
 * <p>Nothing that is left depends on anything that is not granted: so neither does any figure.
 *
 * @param records numbered anew, in the same order
 * @param animals the new rows that may be seen
 * @param parentages whose parents may be seen
 * @param countedParentages whose parents count; those that may be seen among them
 */
record Cut(Records records, BitSet animals, BitSet parentages, BitSet countedParentages) {

    static Cut of(Records whole, Sight sight) {
        var kept = kept(whole, sight);
        var rows = new int[whole.size()];
        var animals = new ArrayList<PedigreeRow>(kept.cardinality());
        var seen = new BitSet();
        var seenParentages = new BitSet();
        var countedParentages = new BitSet();
        for (int row = kept.nextSetBit(0); row >= 0; row = kept.nextSetBit(row + 1)) {
            rows[row] = animals.size();
            seen.set(animals.size(), sight.animals().get(row));
            seenParentages.set(animals.size(), sight.parentages().get(row));
            countedParentages.set(animals.size(), sight.countedParentages().get(row));
            animals.add(cut(whole, sight, row));
        }
        return new Cut(renumbered(whole, kept, rows, animals), seen, seenParentages, countedParentages);
    }

    /** Those that count, and the parents that they name. */
    private static BitSet kept(Records whole, Sight sight) {
        var kept = (BitSet) sight.countedAnimals().clone();
        var parentages = sight.countedParentages();
        for (int row = parentages.nextSetBit(0); row >= 0; row = parentages.nextSetBit(row + 1)) {
            var animal = whole.animal(row);
            if (animal.damId() != null) {
                kept.set(whole.row(animal.damId()));
            }
            if (animal.sire() instanceof Sire.Known known) {
                kept.set(whole.row(known.sireId()));
            } else if (animal.sire() instanceof Sire.Candidates several) {
                several.candidates().forEach(candidate -> kept.set(whole.row(candidate.sireId())));
            }
        }
        return kept;
    }

    private static PedigreeRow cut(Records whole, Sight sight, int row) {
        var animal = whole.animal(row);
        if (!sight.countedAnimals().get(row)) {
            return animal.bare();
        }
        if (!sight.countedParentages().get(row)) {
            return animal.withoutParentage();
        }
        // that two are twins tells the parents of either by those of the other
        var twin = animal.twinOfId();
        return twin == null || sight.countedParentages().get(whole.row(twin)) ? animal : animal.withoutTwin();
    }

    private static Records renumbered(Records whole, BitSet kept, int[] rows, List<PedigreeRow> animals) {
        var rowOfId = new HashMap<UUID, Integer>(2 * animals.size());
        whole.rowOfId().forEach((id, row) -> {
            if (kept.get(row)) {
                rowOfId.put(id, rows[row]);
            }
        });
        var rowOfNumber = new HashMap<String, Integer>(2 * animals.size());
        whole.rowOfNumber().forEach((number, row) -> {
            if (kept.get(row)) {
                rowOfNumber.put(number, rows[row]);
            }
        });
        var joined = new BitSet();
        whole.joined().stream().filter(kept::get).forEach(row -> joined.set(rows[row]));
        return new Records(animals.toArray(PedigreeRow[]::new), rowOfId, rowOfNumber, joined, whole.claimedSame());
    }
}
