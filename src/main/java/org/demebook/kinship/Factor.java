package org.demebook.kinship;

import java.util.stream.IntStream;
import org.demebook.kinship.Births.FounderKinship;

/**
 * The relationship matrix as a product, A = T·G·Tᵀ: T the gene flow of the births, G diagonal but for founders related by
 * DNA, t of i and j the expected share of i's genes that come through j. So A·v takes one pass up and one down, with G
 * between; and so do some vectors side by side.
 *
 * <p>Founders related by DNA stand before all that descend from them, so they get their G before the rest of the pass down.
 *
 * <p>Source: the two passes are the indirect method of Colleau (2002), Genet. Sel. Evol. 34: 409–421 (from memory),
 * extended by nodes of more than two parents.
 *
 * @param own the diagonal of G: by node, the part of its relationship with itself that its parents do not explain
 */
record Factor(Births births, double[] own, FounderKinship founders) {
    /** Columns computed side by side: one cache line of doubles. */
    static final int WIDTH = 8;

    /** @param itsOwn takes what is cut from this one's */
    Factor of(Part part, double[] itsOwn) {
        return new Factor(part.births(), part.cut(own, itsOwn), part.cut(founders));
    }

    /**
     * A·v, in place. O(n).
     *
     * @return vᵀ·A·v
     */
    double multiply(double[] v) {
        births.up(v);
        if (founders.last() == Births.NONE) {
            return down(v, 1);
        }
        double square = founders.square(v) + square(v);
        double[] shared = founders.shared(v, 1);
        int first = founders.last() + 1;
        for (int node = 1; node < first; node++) {
            v[node] = own[node] * v[node] + 0.5 * (v[births.sire(node)] + v[births.dam(node)]);
        }
        founders.add(shared, v, 1);
        down(v, first);
        return square;
    }

    /** Σ own·v² in the order of births, so that late ones round as if they had been told with the others. */
    private double square(double[] v) {
        double square = 0;
        for (var run = births.runs(); run.next(); ) {
            for (int node = run.from; node < run.to; node++) {
                square += own[node] * v[node] * v[node];
            }
        }
        return square;
    }

    /** @return Σ own·v² over the nodes from the first on */
    private double down(double[] v, int first) {
        int[] parent = births.parents();
        double square = 0;
        for (var run = births.runs(); run.next(); ) {
            for (int node = Math.max(run.from, first); node < run.to; node++) {
                double weighed = own[node] * v[node];
                square += weighed * v[node];
                v[node] = weighed + 0.5 * (v[parent[2 * node]] + v[parent[2 * node + 1]]);
            }
            if (run.male >= 0) {
                births.males().gather(run.male, v, run.from);
            }
        }
        return square;
    }

    /** The mean of four relationships, each of the two nodes with each of the others. */
    double meanBetween(int[] two, int[] others) {
        double[] v = births.vector();
        v[two[0]] += 0.5;
        v[two[1]] += 0.5;
        multiply(v);
        return 0.5 * (v[others[0]] + v[others[1]]);
    }

    /**
     * The kinship of each row node with each column node, half their relationship, as {@code [row][column]}. A column's
     * values do not depend, to the last bit, on what else is asked for.
     */
    double[][] kinship(int[] rows, int[] columns) {
        double[][] table = new double[rows.length][columns.length];
        IntStream.range(0, (columns.length + WIDTH - 1) / WIDTH).parallel().forEach(block -> {
            int from = block * WIDTH;
            int width = Math.min(WIDTH, columns.length - from);
            double[] v = new double[(births.nodes() + 1) * WIDTH];
            multiply(columns, from, width, v);
            for (int r = 0; r < rows.length; r++) {
                for (int c = 0; c < width; c++) {
                    table[r][from + c] = 0.5 * v[rows[r] * WIDTH + c];
                }
            }
        });
        return table;
    }

    /**
     * Some columns of A side by side.
     *
     * @param v zeros; the relationship of node i with the c-th of these is put at i·WIDTH + c
     */
    void multiply(int[] nodes, int from, int width, double[] v) {
        for (int c = 0; c < width; c++) {
            v[nodes[from + c] * WIDTH + c] = 1;
        }
        up(v);
        double[] shared = founders.shared(v, WIDTH);
        int first = founders.last() + 1;
        for (int node = 1; node < first; node++) {
            weighAndAddMean(v, births.sire(node) * WIDTH, births.dam(node) * WIDTH, node * WIDTH, own[node]);
        }
        founders.add(shared, v, WIDTH);
        downSideBySide(v, first);
    }

    private void up(double[] v) {
        for (var run = births.runs(); run.previous(); ) {
            if (run.male >= 0) {
                var males = births.males();
                for (int c = males.start()[run.male]; c < males.start()[run.male + 1]; c++) {
                    add(v, run.from, males.share()[c], males.candidate()[c]);
                }
            } else {
                for (int node = run.to - 1; node >= run.from; node--) {
                    addHalf(v, node * WIDTH, births.sire(node) * WIDTH, births.dam(node) * WIDTH);
                }
            }
        }
        for (int c = 0; c < WIDTH; c++) {
            v[Births.NONE * WIDTH + c] = 0;
        }
    }

    private void downSideBySide(double[] v, int first) {
        for (var run = births.runs(); run.next(); ) {
            for (int node = Math.max(run.from, first); node < run.to; node++) {
                weighAndAddMean(v, births.sire(node) * WIDTH, births.dam(node) * WIDTH, node * WIDTH, own[node]);
            }
            if (run.male >= 0) {
                var males = births.males();
                for (int c = males.start()[run.male]; c < males.start()[run.male + 1]; c++) {
                    add(v, males.candidate()[c], males.share()[c], run.from);
                }
            }
        }
    }

    private static void add(double[] v, int from, double share, int to) {
        for (int c = 0; c < WIDTH; c++) {
            v[to * WIDTH + c] += share * v[from * WIDTH + c];
        }
    }

    private static void addHalf(double[] v, int young, int sire, int dam) {
        for (int c = 0; c < WIDTH; c++) {
            double half = 0.5 * v[young + c];
            v[sire + c] += half;
            v[dam + c] += half;
        }
    }

    private static void weighAndAddMean(double[] v, int sire, int dam, int young, double own) {
        for (int c = 0; c < WIDTH; c++) {
            v[young + c] = own * v[young + c] + 0.5 * (v[sire + c] + v[dam + c]);
        }
    }
}
