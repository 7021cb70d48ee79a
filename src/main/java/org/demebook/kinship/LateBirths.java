package org.demebook.kinship;

import java.util.Arrays;
import org.demebook.kinship.Births.Sparse;

/**
 * Births that came after the others had been put in order. Their nodes stand last in all arrays, so that these need not be
 * copied; their place in the order is kept here.
 *
 * @param node in order
 * @param before of each, the first node of the others that comes after it, or the place past their last; ascending
 * @param generation of each: 0 without parents, else one more than that of the younger parent
 */
record LateBirths(int[] node, int[] before, int[] generation) {
    static final LateBirths NONE = new LateBirths(new int[0], new int[0], new int[0]);

    /** With more, it is cheaper to put all in order. */
    static final int MOST = 1_000;

    int count() {
        return node.length;
    }

    /**
     * A number that ascends with the order of all nodes.
     *
     * @param settled how many of the others there are
     */
    long placeInOrder(int which, int settled) {
        if (which <= settled) {
            return (long) which << Integer.SIZE | Integer.MAX_VALUE; // late births before it come first
        }
        int index = indexOf(which);
        return (long) before[index] << Integer.SIZE | index;
    }

    private int indexOf(int late) {
        int index = 0;
        while (node[index] != late) {
            index++;
        }
        return index;
    }

    /** The node of the others that has this place, or before which the late birth stands that has it. */
    static int settledAt(long placeInOrder) {
        return (int) (placeInOrder >>> Integer.SIZE);
    }

    /**
     * These births and those that the builder was told since, if the order of all others stays as it is: no birth by an
     * unknown sire, no twin, no parent told after its young.
     */
    static boolean areAll(Births births, PedigreeBuilder told) {
        boolean simple = told.males == told.malesBefore && told.dnaPairs == told.dnaPairsBefore;
        for (int row = births.rows(); simple && row < told.animals; row++) {
            simple = told.kind[row] != PedigreeBuilder.TWIN
                    && told.sire[row] >= Pedigree.UNKNOWN
                    && told.dam[row] >= Pedigree.UNKNOWN
                    && told.sire[row] < row
                    && told.dam[row] < row;
        }
        return simple;
    }

    static Births added(Births births, PedigreeBuilder told) {
        int more = told.animals - births.rows();
        boolean fits = told.sharesArrays
                && births.nodes() + more < births.kind().length
                && told.animals <= births.nodeOfRow().length;
        int room = fits ? births.kind().length : PedigreeBuilder.withRoom(births.nodes() + more + 1);
        byte[] kind = fits ? births.kind() : Arrays.copyOf(births.kind(), room);
        int[] parents = fits ? births.parents() : Arrays.copyOf(births.parents(), 2 * room);
        int[] rowOfNode = fits ? births.rowOfNode() : Arrays.copyOf(births.rowOfNode(), room);
        int[] nodeOfRow = fits ? births.nodeOfRow() : Arrays.copyOf(births.nodeOfRow(), room);
        Sparse extra = births.extra();
        for (int row = births.rows(); row < told.animals; row++) {
            int node = births.nodes() + 1 + row - births.rows();
            kind[node] = told.kind[row];
            parents[2 * node] = nodeOf(told.sire[row], nodeOfRow);
            parents[2 * node + 1] = nodeOf(told.dam[row], nodeOfRow);
            rowOfNode[node] = row;
            nodeOfRow[row] = node;
            extra = told.extra[row] == 0 ? extra : extra.with(node, told.extra[row]);
        }
        var grown = new Births(
                births.nodes() + more,
                told.animals,
                kind,
                parents,
                births.males(),
                extra,
                nodeOfRow,
                rowOfNode,
                births.generationEnd(),
                births.founderKinship(),
                births.late());
        return new Placing(grown, births.nodes(), told).placed();
    }

    private static int nodeOf(int parentRow, int[] nodeOfRow) {
        return parentRow == Pedigree.UNKNOWN ? Births.NONE : nodeOfRow[parentRow];
    }

    /** Finds the places of late births in the order. */
    private static final class Placing {
        private final Births births;
        private final int settled;
        private final PedigreeBuilder told;

        private int count;
        private final int[] node;
        private final int[] before;
        private final int[] generation;

        Placing(Births births, int placed, PedigreeBuilder told) {
            this.births = births;
            this.told = told;
            count = births.late().count();
            settled = placed - count;
            int all = births.nodes() - settled;
            node = Arrays.copyOf(births.late().node, all);
            before = Arrays.copyOf(births.late().before, all);
            generation = Arrays.copyOf(births.late().generation, all);
        }

        Births placed() {
            for (int next = settled + count + 1; next <= births.nodes(); next++) {
                place(next);
            }
            return births.withLate(new LateBirths(node, before, generation));
        }

        private void place(int late) {
            int itsGeneration = 1 + Math.max(generationOf(births.sire(late)), generationOf(births.dam(late)));
            int itsBefore = firstAfter(late, itsGeneration);
            int at = count++;
            while (at > 0 && comesAfter(at - 1, late, itsGeneration, itsBefore)) {
                node[at] = node[at - 1];
                before[at] = before[at - 1];
                generation[at] = generation[at - 1];
                at--;
            }
            node[at] = late;
            before[at] = itsBefore;
            generation[at] = itsGeneration;
        }

        /** −1 for no parent. */
        private int generationOf(int parent) {
            if (parent == Births.NONE) {
                return -1;
            }
            if (parent > settled) {
                return generation[indexOf(parent)];
            }
            int found = Arrays.binarySearch(births.generationEnd(), parent);
            return found < 0 ? -1 - found : found;
        }

        private int indexOf(int late) {
            int index = 0;
            while (node[index] != late) {
                index++;
            }
            return index;
        }

        private int firstAfter(int late, int itsGeneration) {
            int[] end = births.generationEnd();
            int low = itsGeneration == 0 ? 1 : itsGeneration <= end.length ? end[itsGeneration - 1] + 1 : settled + 1;
            int high = itsGeneration < end.length ? end[itsGeneration] + 1 : settled + 1;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (births.kind()[middle] == Births.HIDDEN || compareBirths(middle, late) < 0) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }

        private boolean comesAfter(int index, int late, int itsGeneration, int itsBefore) {
            if (before[index] != itsBefore) {
                return before[index] > itsBefore;
            }
            return generation[index] != itsGeneration
                    ? generation[index] > itsGeneration
                    : compareBirths(node[index], late) > 0;
        }

        /** Of two nodes of one generation: by dam, sire and key. */
        private int compareBirths(int one, int other) {
            int byDam = compareNodes(births.dam(one), births.dam(other));
            int bySire = byDam != 0 ? byDam : compareNodes(births.sire(one), births.sire(other));
            return bySire != 0 ? bySire : told.compareKeys(births.rowOfNode()[one], births.rowOfNode()[other]);
        }

        private int compareNodes(int one, int other) {
            if (one <= settled && other <= settled) {
                return Integer.compare(one, other);
            }
            if (one > settled && other > settled) {
                return Integer.compare(indexOf(one), indexOf(other));
            }
            return one > settled ? (before[indexOf(one)] <= other ? -1 : 1) : -compareNodes(other, one);
        }
    }
}
