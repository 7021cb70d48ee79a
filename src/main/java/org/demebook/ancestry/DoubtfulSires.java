package org.demebook.ancestry;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/** Which animals have a sire of low confidence, whose figures rest on that, and what these would be without him. */
final class DoubtfulSires {
    private final Records records;
    private final Parents parents;
    private @Nullable Pedigree unknown;

    DoubtfulSires(Records records, Parents parents) {
        this.records = records;
        this.parents = parents;
    }

    boolean isEmpty() {
        return parents.doubtful().isEmpty();
    }

    /**
     * The animals whose sire is doubtful, of these and all their ancestors, the males that they may descend from among
     * them: rows, ascending. O(ancestors), O(1) where no sire is doubtful.
     */
    int[] above(int... rows) {
        if (isEmpty()) {
            return new int[0];
        }
        var seen = new BitSet(records.size());
        var waiting = new ArrayDeque<Integer>();
        for (int row : rows) {
            meet(row, seen, waiting);
        }
        while (!waiting.isEmpty()) {
            int row = waiting.pop();
            if (parents.dam()[row] != Pedigree.UNKNOWN) {
                meet(parents.dam()[row], seen, waiting);
            }
            for (int sire : parents.sires()[row]) {
                meet(sire, seen, waiting);
            }
        }
        seen.and(parents.doubtful());
        return seen.stream().toArray();
    }

    private static void meet(int row, BitSet seen, Deque<Integer> waiting) {
        if (!seen.get(row)) {
            seen.set(row);
            waiting.push(row);
        }
    }

    /**
     * The same births where every doubtful sire is unknown. Built when first asked for, which costs what building the
     * pedigree did, in time and in memory.
     */
    synchronized Pedigree ifUnknown() {
        if (unknown == null) {
            unknown = new BirthTeller(records.withoutSires(parents.doubtful())).pedigree();
        }
        return unknown;
    }
}
