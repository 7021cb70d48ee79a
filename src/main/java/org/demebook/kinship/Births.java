package org.demebook.kinship;

import java.util.Arrays;

/**
 * The births of a pedigree in an order in which parents stand before young, and the two passes over it from which every
 * figure follows.
 *
 * <p>A node is an animal, all identical twins together, or a hidden male. With T the matrix of gene flow (t of i and j
 * the expected share of i's genes that come through j), {@link #down} computes T·v and {@link #up} Tᵀ·v, each in O(n).
 *
 * <p>Source: the two passes are the indirect method of Colleau (2002), Genet. Sel. Evol. 34: 409–421 (from memory),
 * extended by nodes of more than two parents.
 *
 * @param sire by node, {@link #none} for unknown: a place past the last node, so that vectors need no branch. A
 *     parthenogen has its dam twice; a hidden male has none here.
 * @param extra a founder's inbreeding coefficient, a parthenogen's chance to keep both genes of its dam; 0 elsewhere
 * @param rowOfNode the animal of a node, of twins the one with the smallest key; −1 for a hidden male
 */
record Births(
        byte[] kind,
        int[] sire,
        int[] dam,
        HiddenMales males,
        Sparse extra,
        int[] nodeOfRow,
        int[] rowOfNode,
        FounderKinship founderKinship) {

    static final byte FOUNDER = 1;
    static final byte UNKNOWN_PARENTS = 2;
    static final byte YOUNG = 3;
    static final byte PARTHENOGEN = 4;
    static final byte HIDDEN = 5;

    /**
     * @param node ascending; the candidates of the i-th are {@code candidate[start[i]]} to {@code candidate[start[i + 1]
     *     − 1]}, and remainder[i] is the chance that he is unrelated to all
     */
    record HiddenMales(int[] node, int[] start, int[] candidate, double[] share, double[] remainder) {

        int indexOf(int hiddenNode) {
            return Arrays.binarySearch(node, hiddenNode);
        }

        /** The mean of a vector over the candidates of the i-th male, weighted by their probabilities. */
        double mean(int i, double[] v) {
            double sum = 0;
            for (int c = start[i]; c < start[i + 1]; c++) {
                sum += share[c] * v[candidate[c]];
            }
            return sum;
        }

        /** Hands genes of the i-th male up to his candidates. */
        void spread(int i, double genes, double[] v) {
            for (int c = start[i]; c < start[i + 1]; c++) {
                v[candidate[c]] += share[c] * genes;
            }
        }
    }

    /** Values of few nodes, ascending. */
    record Sparse(int[] node, double[] value) {
        double of(int which) {
            int at = Arrays.binarySearch(node, which);
            return at < 0 ? 0 : value[at];
        }
    }

    /** Pairs of founders related by DNA, a below b, ascending. Vectors may stand side by side, {@code width} to a node. */
    record FounderKinship(int[] a, int[] b, double[] kinship) {
        static final FounderKinship NONE = new FounderKinship(new int[0], new int[0], new double[0]);

        /** The same pairs, counting the known part of their genomes only. */
        FounderKinship ofKnown(double[] known) {
            double[] weighed = kinship.clone();
            for (int p = 0; p < weighed.length; p++) {
                weighed[p] *= known[a[p]] * known[b[p]];
            }
            return new FounderKinship(a, b, weighed);
        }

        /** For each pair what its relationship gives to a, then to b; to be added once v has been weighed. */
        double[] shared(double[] v, int width) {
            double[] shared = new double[2 * width * a.length];
            int at = 0;
            for (int p = 0; p < a.length; p++) {
                for (int c = 0; c < width; c++) {
                    shared[at++] = 2 * kinship[p] * v[b[p] * width + c];
                    shared[at++] = 2 * kinship[p] * v[a[p] * width + c];
                }
            }
            return shared;
        }

        void add(double[] shared, double[] v, int width) {
            int at = 0;
            for (int p = 0; p < a.length; p++) {
                for (int c = 0; c < width; c++) {
                    v[a[p] * width + c] += shared[at++];
                    v[b[p] * width + c] += shared[at++];
                }
            }
        }

        void clear(double[] v) {
            for (int p = 0; p < a.length; p++) {
                v[a[p]] = 0;
                v[b[p]] = 0;
            }
        }

        /** The sum over pairs, each counted in both directions, of v·relationship·v. */
        double square(double[] v) {
            double sum = 0;
            for (int p = 0; p < a.length; p++) {
                sum += 4 * kinship[p] * v[a[p]] * v[b[p]];
            }
            return sum;
        }
    }

    int nodes() {
        return kind.length;
    }

    /** One parent is known, and the other is a founder that is no node. */
    boolean hasUnnamedParent(int node) {
        return kind[node] == YOUNG && (sire[node] == none() || dam[node] == none());
    }

    int none() {
        return kind.length;
    }

    /** A vector of zeros with the place for {@link #none}. */
    double[] vector() {
        return new double[nodes() + 1];
    }

    int[] nodesOf(int[] rows) {
        int[] result = new int[rows.length];
        for (int i = 0; i < rows.length; i++) {
            result[i] = nodeOfRow[rows[i]];
        }
        return result;
    }

    /** Twins add up in their one node. */
    double[] ofRows(double[] byRow) {
        double[] v = vector();
        for (int row = 0; row < nodeOfRow.length; row++) {
            v[nodeOfRow[row]] += byRow[row];
        }
        return v;
    }

    double[] toRows(double[] v) {
        double[] byRow = new double[nodeOfRow.length];
        for (int row = 0; row < byRow.length; row++) {
            byRow[row] = v[nodeOfRow[row]];
        }
        return byRow;
    }

    /** Young before parents: adds to each node what its descendants hold of its genes. */
    void up(double[] v) {
        int above = nodes();
        for (int i = males.node.length - 1; i >= 0; i--) {
            int male = males.node[i];
            upBetween(male + 1, above, v);
            males.spread(i, v[male], v);
            above = male;
        }
        upBetween(0, above, v);
        v[none()] = 0;
    }

    private void upBetween(int from, int to, double[] v) {
        for (int i = to - 1; i >= from; i--) {
            double half = 0.5 * v[i];
            v[sire[i]] += half;
            v[dam[i]] += half;
        }
    }

    /** Parents before young: adds to each node the mean of its parents. */
    void down(double[] v) {
        int from = 0;
        for (int i = 0; i < males.node.length; i++) {
            int male = males.node[i];
            downBetween(from, male, v);
            v[male] += males.mean(i, v);
            from = male + 1;
        }
        downBetween(from, nodes(), v);
    }

    private void downBetween(int from, int to, double[] v) {
        for (int i = from; i < to; i++) {
            v[i] += 0.5 * (v[sire[i]] + v[dam[i]]);
        }
    }

    /** By node, the expected share of its genome that traces to stated founders. */
    double[] knownFractions() {
        double[] known = vector();
        for (int i = 0; i < nodes(); i++) {
            known[i] = kind[i] == FOUNDER ? 1 : 0;
        }
        down(known);
        return known;
    }

    /**
     * The same births with every stated founder a copy of one homozygous ancestor. There, twice the probability that two
     * genes are identical is twice the probability, here, that both trace to stated founders. Nodes move up by one.
     */
    Births ofOneCommonFounder() {
        int n = nodes() + 1;
        byte[] kinds = new byte[n];
        int[] sires = new int[n];
        int[] dams = new int[n];
        int founders = 0;
        kinds[0] = FOUNDER;
        sires[0] = n;
        dams[0] = n;
        int[] extraNodes = new int[n];
        double[] extraValues = new double[n];
        extraValues[founders++] = 1;
        for (int i = 0; i < nodes(); i++) {
            boolean copy = kind[i] == FOUNDER;
            kinds[i + 1] = copy ? PARTHENOGEN : kind[i];
            sires[i + 1] = copy ? 0 : sire[i] + 1;
            dams[i + 1] = copy ? 0 : dam[i] + 1;
            if (copy || kind[i] == PARTHENOGEN) {
                extraNodes[founders] = i + 1;
                extraValues[founders++] = copy ? 1 : extra.of(i);
            }
        }
        return new Births(
                kinds,
                sires,
                dams,
                new HiddenMales(
                        shifted(males.node), males.start, shifted(males.candidate), males.share, males.remainder),
                new Sparse(Arrays.copyOf(extraNodes, founders), Arrays.copyOf(extraValues, founders)),
                shifted(nodeOfRow),
                new int[0],
                FounderKinship.NONE);
    }

    private static int[] shifted(int[] nodes) {
        int[] result = new int[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            result[i] = nodes[i] + 1;
        }
        return result;
    }
}
