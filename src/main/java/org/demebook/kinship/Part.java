package org.demebook.kinship;

import java.util.Arrays;
import org.demebook.kinship.Births.FounderKinship;
import org.demebook.kinship.Births.HiddenMales;
import org.demebook.kinship.Births.Sparse;

/**
 * Some nodes of a pedigree with all their ancestors, as a pedigree of its own in the same order. Figures of its nodes are
 * the same to the last bit, at the cost of a smaller pedigree.
 *
 * @param births without rows
 * @param whole by node of the part its node in the whole, in order
 * @param place for each node of the whole its node in the part, or 0
 */
record Part(Births births, int[] whole, int[] place) {

    /** Arrays for a part, longer than needed, to be used again when it is good no longer. */
    record Room(int[] whole, byte[] kind, int[] parents, double[] own) {
        Room(int length) {
            this(new int[length], new byte[length], new int[2 * length], new double[length]);
        }
    }

    /** These nodes and all their ancestors. */
    static Part ancestors(Births births, int[]... nodes) {
        return new AncestorWalk(births).climb(births, nodes);
    }

    /**
     * @param room has the nodes, in order, and takes the rest
     * @param place all zeros, is filled
     */
    static Part of(Births births, int nodes, Room room, int[] place) {
        int[] hidden = new int[4];
        int hiddenMales = 0;
        for (int i = 1; i <= nodes; i++) {
            int node = room.whole[i];
            int sire = births.sire(node);
            int dam = births.dam(node);
            place[node] = i;
            room.parents[2 * i] = place[sire];
            room.parents[2 * i + 1] = place[dam];
            room.kind[i] = sire == dam ? births.kind()[node] : Births.YOUNG; // most kinds need not be looked at
            if (room.kind[i] == Births.HIDDEN) {
                hidden = hiddenMales == hidden.length ? Arrays.copyOf(hidden, 2 * hiddenMales) : hidden;
                hidden[hiddenMales++] = node;
            }
        }
        var part = new Births(
                nodes,
                0,
                room.kind,
                room.parents,
                males(births.males(), Arrays.copyOf(hidden, hiddenMales), place),
                extra(births, room.whole, nodes),
                new int[0],
                new int[0],
                new int[0],
                cut(births.founderKinship(), place),
                LateBirths.NONE);
        return new Part(part, room.whole, place);
    }

    private static HiddenMales males(HiddenMales all, int[] hidden, int[] place) {
        int[] start = new int[hidden.length + 1];
        for (int i = 0; i < hidden.length; i++) {
            int male = all.indexOf(hidden[i]);
            start[i + 1] = start[i] + all.start()[male + 1] - all.start()[male];
        }
        int[] node = new int[hidden.length];
        int[] candidate = new int[start[hidden.length]];
        double[] share = new double[candidate.length];
        double[] remainder = new double[hidden.length];
        for (int i = 0; i < hidden.length; i++) {
            int male = all.indexOf(hidden[i]);
            node[i] = place[hidden[i]];
            remainder[i] = all.remainder()[male];
            for (int c = start[i]; c < start[i + 1]; c++) {
                int ofAll = all.start()[male] + c - start[i];
                candidate[c] = place[all.candidate()[ofAll]];
                share[c] = all.share()[ofAll];
            }
        }
        return new HiddenMales(node, start, candidate, share, remainder);
    }

    private static Sparse extra(Births births, int[] whole, int nodes) {
        if (births.extra().node().length == 0) {
            return births.extra();
        }
        int[] node = new int[4];
        double[] value = new double[4];
        int count = 0;
        for (int i = 1; i <= nodes; i++) {
            boolean mayHave = births.sire(whole[i]) == births.dam(whole[i]);
            double extra = mayHave ? births.extra().of(whole[i]) : 0;
            if (extra != 0) {
                node = count == node.length ? Arrays.copyOf(node, 2 * count) : node;
                value = count == value.length ? Arrays.copyOf(value, 2 * count) : value;
                node[count] = i;
                value[count++] = extra;
            }
        }
        return new Sparse(Arrays.copyOf(node, count), Arrays.copyOf(value, count));
    }

    private static FounderKinship cut(FounderKinship all, int[] place) {
        if (all.a().length == 0) {
            return all;
        }
        int[] a = new int[all.a().length];
        int[] b = new int[a.length];
        double[] kinship = new double[a.length];
        int count = 0;
        for (int p = 0; p < a.length; p++) {
            if (place[all.a()[p]] != 0 && place[all.b()[p]] != 0) {
                a[count] = place[all.a()[p]];
                b[count] = place[all.b()[p]];
                kinship[count++] = all.kinship()[p];
            }
        }
        return new FounderKinship(Arrays.copyOf(a, count), Arrays.copyOf(b, count), Arrays.copyOf(kinship, count));
    }

    /** The nodes of the part for nodes of the whole that are in it. */
    int[] within(int[] nodesOfWhole) {
        int[] nodes = new int[nodesOfWhole.length];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = place[nodesOfWhole[i]];
        }
        return nodes;
    }

    /** A vector of the whole, cut to the part. */
    double[] cut(double[] byNode, double[] into) {
        for (int i = 1; i <= births.nodes(); i++) {
            into[i] = byNode[whole[i]];
        }
        return into;
    }

    FounderKinship cut(FounderKinship pairs) {
        return cut(pairs, place);
    }
}
