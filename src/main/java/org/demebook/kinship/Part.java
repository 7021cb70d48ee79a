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
 * @param whole for each node of the part its node in the whole, ascending
 * @param part for each node of the whole its node in the part, or −1; one more place for none
 */
record Part(Births births, int[] whole, int[] part) {

    /** The nodes with young, hidden males among them, and founders related by DNA. */
    static Part breeders(Births births) {
        boolean[] keep = new boolean[births.nodes() + 1];
        for (int node = 0; node < births.nodes(); node++) {
            keep[births.sire()[node]] = true;
            keep[births.dam()[node]] = true;
        }
        for (int[] some : new int[][] {
            births.males().candidate(),
            births.founderKinship().a(),
            births.founderKinship().b()
        }) {
            for (int node : some) {
                keep[node] = true;
            }
        }
        return of(births, keep);
    }

    /** These nodes and all their ancestors. */
    static Part ancestors(Births births, int[]... nodes) {
        boolean[] keep = new boolean[births.nodes() + 1];
        for (int[] some : nodes) {
            for (int node : some) {
                keep[node] = true;
            }
        }
        var males = births.males();
        int male = males.node().length - 1;
        for (int node = births.nodes() - 1; node >= 0; node--) {
            boolean hidden = male >= 0 && males.node()[male] == node;
            if (keep[node]) {
                keep[births.sire()[node]] = true;
                keep[births.dam()[node]] = true;
                for (int c = males.start()[hidden ? male : 0]; hidden && c < males.start()[male + 1]; c++) {
                    keep[males.candidate()[c]] = true;
                }
            }
            male -= hidden ? 1 : 0;
        }
        return of(births, keep);
    }

    /** @param keep closed under parents */
    private static Part of(Births births, boolean[] keep) {
        int[] whole = new int[births.nodes()];
        int[] part = new int[births.nodes() + 1];
        int count = 0;
        for (int node = 0; node < births.nodes(); node++) {
            part[node] = keep[node] ? count : -1;
            if (keep[node]) {
                whole[count++] = node;
            }
        }
        part[births.none()] = count;
        return cut(births, Arrays.copyOf(whole, count), part);
    }

    private static Part cut(Births births, int[] whole, int[] part) {
        byte[] kind = new byte[whole.length];
        int[] sire = new int[whole.length];
        int[] dam = new int[whole.length];
        for (int node = 0; node < whole.length; node++) {
            kind[node] = births.kind()[whole[node]];
            sire[node] = part[births.sire()[whole[node]]];
            dam[node] = part[births.dam()[whole[node]]];
        }
        var cut = new Births(
                kind,
                sire,
                dam,
                males(births.males(), part),
                extra(births.extra(), part),
                new int[0],
                new int[0],
                cut(births.founderKinship(), part));
        return new Part(cut, whole, part);
    }

    private static HiddenMales males(HiddenMales all, int[] part) {
        int[] node = new int[all.node().length];
        int[] start = new int[node.length + 1];
        int[] candidate = new int[all.candidate().length];
        double[] share = new double[candidate.length];
        double[] remainder = new double[node.length];
        int count = 0;
        int candidates = 0;
        for (int i = 0; i < all.node().length; i++) {
            if (part[all.node()[i]] >= 0) {
                node[count] = part[all.node()[i]];
                remainder[count] = all.remainder()[i];
                for (int c = all.start()[i]; c < all.start()[i + 1]; c++) {
                    candidate[candidates] = part[all.candidate()[c]];
                    share[candidates++] = all.share()[c];
                }
                start[++count] = candidates;
            }
        }
        return new HiddenMales(
                Arrays.copyOf(node, count),
                Arrays.copyOf(start, count + 1),
                Arrays.copyOf(candidate, candidates),
                Arrays.copyOf(share, candidates),
                Arrays.copyOf(remainder, count));
    }

    private static Sparse extra(Sparse all, int[] part) {
        int[] node = new int[all.node().length];
        double[] value = new double[node.length];
        int count = 0;
        for (int i = 0; i < node.length; i++) {
            if (part[all.node()[i]] >= 0) {
                node[count] = part[all.node()[i]];
                value[count++] = all.value()[i];
            }
        }
        return new Sparse(Arrays.copyOf(node, count), Arrays.copyOf(value, count));
    }

    private static FounderKinship cut(FounderKinship all, int[] part) {
        int[] a = new int[all.a().length];
        int[] b = new int[a.length];
        double[] kinship = new double[a.length];
        int count = 0;
        for (int p = 0; p < a.length; p++) {
            if (part[all.a()[p]] >= 0 && part[all.b()[p]] >= 0) {
                a[count] = part[all.a()[p]];
                b[count] = part[all.b()[p]];
                kinship[count++] = all.kinship()[p];
            }
        }
        return new FounderKinship(Arrays.copyOf(a, count), Arrays.copyOf(b, count), Arrays.copyOf(kinship, count));
    }

    /** The nodes of the part for nodes of the whole that are in it. */
    int[] within(int[] nodesOfWhole) {
        int[] nodes = new int[nodesOfWhole.length];
        for (int i = 0; i < nodes.length; i++) {
            nodes[i] = part[nodesOfWhole[i]];
        }
        return nodes;
    }

    /** A vector of the whole, cut to the part. */
    double[] cut(double[] byNode) {
        double[] v = births.vector();
        for (int node = 0; node < whole.length; node++) {
            v[node] = byNode[whole[node]];
        }
        return v;
    }

    FounderKinship cut(FounderKinship pairs) {
        return cut(pairs, part);
    }
}
