package org.demebook.kinship;

import java.util.Arrays;

/**
 * The births of a pedigree in an order in which parents stand before young, and the pass up from which, with the one down
 * of {@link Factor}, every figure follows.
 *
 * <p>A node is an animal, all identical twins together, or a hidden male; nodes count from 1, and 0 stands for a parent
 * that is none. Vectors have a place for 0, so that no branch is needed.
 *
 * <p>Arrays may be longer than the nodes and rows that count: a pedigree that is extended by a few births shares them with
 * the one before, see {@link LateBirths}. Nodes of late births stand last, but are visited at their place in the order.
 *
 * @param parents of a node its sire at {@code 2·node}, its dam behind; {@link #NONE} for unknown. A parthenogen has its
 *     dam twice; a hidden male has none here.
 * @param extra a founder's inbreeding coefficient, a parthenogen's chance to keep both genes of its dam; 0 elsewhere
 * @param rowOfNode the animal of a node, of twins the one with the smallest key; −1 for a hidden male
 * @param generationEnd by generation, the last of its nodes, late births aside
 */
record Births(
        int nodes,
        int rows,
        byte[] kind,
        int[] parents,
        HiddenMales males,
        Sparse extra,
        int[] nodeOfRow,
        int[] rowOfNode,
        int[] generationEnd,
        FounderKinship founderKinship,
        LateBirths late) {

    static final int NONE = 0;

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

        /** Adds that mean to a node, candidate by candidate, so that it rounds as where vectors stand side by side. */
        void gather(int i, double[] v, int to) {
            for (int c = start[i]; c < start[i + 1]; c++) {
                v[to] += share[c] * v[candidate[c]];
            }
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

        /** @param last behind all others */
        Sparse with(int last, double itsValue) {
            int[] nodes = Arrays.copyOf(node, node.length + 1);
            double[] values = Arrays.copyOf(value, node.length + 1);
            nodes[node.length] = last;
            values[node.length] = itsValue;
            return new Sparse(nodes, values);
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

        /** The last node of a pair, or {@link Births#NONE}. */
        int last() {
            int last = Births.NONE;
            for (int node : b) {
                last = Math.max(last, node);
            }
            return last;
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

    int sire(int node) {
        return parents[2 * node];
    }

    int dam(int node) {
        return parents[2 * node + 1];
    }

    boolean hasTwoParents(int node) {
        return kind[node] == YOUNG && sire(node) != NONE && dam(node) != NONE;
    }

    /** One parent is known, and the other is a founder that is no node. */
    boolean hasUnnamedParent(int node) {
        return kind[node] == YOUNG && (sire(node) == NONE || dam(node) == NONE);
    }

    /** How many nodes stand at their place in the order; late births have those behind. */
    int settled() {
        return nodes - late.count();
    }

    /** The same births, with the late ones among the others. */
    Births inOrder(int[] order) {
        int[] ends = Arrays.copyOf(generationEnd, generationEnd.length + late.count());
        int generations = generationEnd.length;
        for (int i = 0; i < late.count(); i++) {
            generations = Math.max(generations, late.generation()[i] + 1);
        }
        for (int generation = 0; generation < generations; generation++) {
            ends[generation] = generation < generationEnd.length ? ends[generation] : settled();
        }
        for (int late : late.generation()) {
            for (int generation = late; generation < generations; generation++) {
                ends[generation]++;
            }
        }
        var room = new Part.Room(kind.length);
        System.arraycopy(order, 0, room.whole(), 1, nodes);
        var part = Part.of(this, nodes, room, new int[kind.length]);
        return withRows(part.births(), order, part.place(), Arrays.copyOf(ends, generations));
    }

    private Births withRows(Births ordered, int[] order, int[] place, int[] ends) {
        int[] nodes = new int[nodeOfRow.length];
        for (int row = 0; row < rows; row++) {
            nodes[row] = place[nodeOfRow[row]];
        }
        int[] itsRows = new int[kind.length];
        for (int i = 0; i < order.length; i++) {
            itsRows[i + 1] = rowOfNode[order[i]];
        }
        return new Births(
                this.nodes,
                rows,
                ordered.kind,
                ordered.parents,
                ordered.males,
                ordered.extra,
                nodes,
                itsRows,
                ends,
                ordered.founderKinship,
                LateBirths.NONE);
    }

    Births withLate(LateBirths births) {
        return new Births(
                nodes, rows, kind, parents, males, extra, nodeOfRow, rowOfNode, generationEnd, founderKinship, births);
    }

    /** A vector of zeros. */
    double[] vector() {
        return new double[nodes + 1];
    }

    int[] nodesOf(int... someRows) {
        int[] result = new int[someRows.length];
        for (int i = 0; i < result.length; i++) {
            result[i] = nodeOfRow[someRows[i]];
        }
        return result;
    }

    /** Twins add up in their one node. */
    double[] ofRows(double[] byRow) {
        double[] v = vector();
        for (int row = 0; row < rows; row++) {
            v[nodeOfRow[row]] += byRow[row];
        }
        return v;
    }

    double[] toRows(double[] v) {
        double[] byRow = new double[rows];
        for (int row = 0; row < rows; row++) {
            byRow[row] = v[nodeOfRow[row]];
        }
        return byRow;
    }

    Runs runs() {
        return new Runs(this);
    }

    /** All nodes, parents before young, as a pedigree built anew would have them. */
    int[] order() {
        int[] order = new int[nodes];
        int count = 0;
        for (var run = runs(); run.next(); ) {
            for (int node = run.from; node < run.to; node++) {
                order[count++] = node;
            }
        }
        return order;
    }

    /**
     * Adds to each node what its descendants hold of its genes, young before parents: Tᵀ·v, T being the gene flow of {@link
     * Factor}. O(n).
     */
    void up(double[] v) {
        for (var run = runs(); run.previous(); ) {
            if (run.male >= 0) {
                males.spread(run.male, v[run.from], v);
            } else {
                upBetween(run.from, run.to, v);
            }
        }
        v[NONE] = 0;
    }

    private void upBetween(int from, int to, double[] v) {
        int[] parent = parents;
        for (int node = to - 1; node >= from; node--) {
            double half = 0.5 * v[node];
            v[parent[2 * node]] += half;
            v[parent[2 * node + 1]] += half;
        }
    }

    /** By node, the expected share of its genome that traces to stated founders. */
    double[] knownFractions() {
        double[] known = vector();
        findKnown(1, known);
        return known;
    }

    /** From a node on; no vector is summed, so that any order with parents before young will do. */
    void findKnown(int from, double[] known) {
        for (int node = from; node <= nodes; node++) {
            known[node] = switch (kind[node]) {
                case FOUNDER -> 1;
                case HIDDEN -> males.mean(males.indexOf(node), known);
                default -> 0.5 * (known[sire(node)] + known[dam(node)]);
            };
        }
    }

    /**
     * The same births with every stated founder a copy of one homozygous ancestor. There, twice the probability that two
     * genes are identical is twice the probability, here, that both trace to stated founders. Nodes move up by one; there
     * must be no late ones.
     */
    Births ofOneCommonFounder() {
        byte[] kinds = new byte[nodes + 2];
        int[] newParents = new int[2 * kinds.length];
        int[] extraNodes = new int[nodes + 1];
        double[] extraValues = new double[nodes + 1];
        kinds[1] = FOUNDER;
        extraNodes[0] = 1;
        extraValues[0] = 1;
        int extras = 1;
        for (int node = 1; node <= nodes; node++) {
            boolean copy = kind[node] == FOUNDER;
            kinds[node + 1] = copy ? PARTHENOGEN : kind[node];
            newParents[2 * node + 2] = copy ? 1 : shifted(sire(node));
            newParents[2 * node + 3] = copy ? 1 : shifted(dam(node));
            if (copy || kind[node] == PARTHENOGEN) {
                extraNodes[extras] = node + 1;
                extraValues[extras++] = copy ? 1 : extra.of(node);
            }
        }
        return new Births(
                nodes + 1,
                rows,
                kinds,
                newParents,
                new HiddenMales(
                        shifted(males.node), males.start, shifted(males.candidate), males.share, males.remainder),
                new Sparse(Arrays.copyOf(extraNodes, extras), Arrays.copyOf(extraValues, extras)),
                shifted(nodeOfRow),
                new int[0],
                new int[0],
                FounderKinship.NONE,
                LateBirths.NONE);
    }

    private static int shifted(int node) {
        return shifted(node, 1);
    }

    private static int[] shifted(int[] nodes) {
        return shifted(nodes, 1);
    }

    static int shifted(int node, int by) {
        return node == NONE ? NONE : node + by;
    }

    static int[] shifted(int[] nodes, int by) {
        int[] result = new int[nodes.length];
        for (int i = 0; i < nodes.length; i++) {
            result[i] = shifted(nodes[i], by);
        }
        return result;
    }
}
