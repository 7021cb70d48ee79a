package org.demebook.ancestry;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.stream.IntStream;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/** Which rows of a snapshot its asker may see, and of which of them the parents; the others only count in figures. */
final class Shown {
    private final Parents parents;
    /** Null like the others. */
    private final @Nullable Records records;
    /** All three null: all. */
    private final @Nullable BitSet animals;

    private final @Nullable BitSet parentages;
    private final @Nullable BitSet countedParentages;
    private final boolean lessThanThePool;

    private Shown(Parents parents) {
        this.parents = parents;
        this.records = null;
        this.animals = null;
        this.parentages = null;
        this.countedParentages = null;
        this.lessThanThePool = false;
    }

    Shown(Parents parents, Cut cut) {
        this.parents = parents;
        this.records = cut.records();
        this.animals = cut.animals();
        this.parentages = cut.parentages();
        this.countedParentages = cut.countedParentages();
        int[] living = cut.records().living();
        this.lessThanThePool = !IntStream.of(living).allMatch(animals::get) || isLessThan(living);
    }

    static Shown all(Parents parents) {
        return new Shown(parents);
    }

    boolean animal(int row) {
        return animals == null || animals.get(row);
    }

    boolean parentage(int row) {
        return parentages == null || parentages.get(row);
    }

    /** Whether what is stated of its parents counts; there may be nothing. */
    boolean countsParentage(int row) {
        return countedParentages == null || countedParentages.get(row);
    }

    /** The parents, and males that may be, that are shown themselves. */
    int[] parents(int row) {
        return parentage(row) ? IntStream.of(told(row)).filter(this::animal).toArray() : new int[0];
    }

    /** These rows, and all that descend from one of them by parents that are shown. */
    BitSet withDescendants(BitSet rows, int size) {
        var found = (BitSet) rows.clone();
        if (found.isEmpty()) {
            return found;
        }
        int before;
        do { // young may stand before their parents
            before = found.cardinality();
            for (int row = 0; row < size; row++) {
                if (!found.get(row) && IntStream.of(parents(row)).anyMatch(found::get)) {
                    found.set(row);
                }
            }
        } while (found.cardinality() > before);
        return found;
    }

    /** Whether an ancestor of these, or who the parents of one are, or whose twin one is, counts and is not shown. */
    boolean isLessThan(int... rows) {
        if (records == null) {
            return false;
        }
        var met = new BitSet();
        var waiting = new ArrayDeque<Integer>();
        for (int row : rows) {
            waiting.push(row);
        }
        while (!waiting.isEmpty()) {
            int row = waiting.pop();
            if (met.get(row)) {
                continue;
            }
            met.set(row);
            int[] told = told(row);
            if (told.length > parents(row).length) {
                return true;
            }
            for (int parent : told) {
                waiting.push(parent);
            }
            var twin = records.animal(row).twinOfId();
            if (twin != null) {
                if (!parentage(records.row(twin))) {
                    return true;
                }
                waiting.push(records.row(twin));
            }
        }
        return false;
    }

    boolean isLessThanThePool() {
        return lessThanThePool;
    }

    private int[] told(int row) {
        int dam = parents.dam()[row];
        int[] sires = parents.sires()[row];
        return dam == Pedigree.UNKNOWN
                ? sires
                : IntStream.concat(IntStream.of(dam), IntStream.of(sires)).toArray();
    }
}
