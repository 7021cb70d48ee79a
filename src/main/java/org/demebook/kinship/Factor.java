package org.demebook.kinship;

import java.util.stream.IntStream;
import org.demebook.kinship.Births.FounderKinship;

/**
 * The relationship matrix as a product, A = T·G·Tᵀ: T the gene flow of the births, G diagonal but for founders related by
 * DNA.
 *
 * @param own the diagonal of G: by node, the part of its relationship with itself that its parents do not explain
 */
record Factor(Births births, double[] own, FounderKinship founders) {
    /** Columns computed side by side: one cache line of doubles. */
    static final int WIDTH = 8;

    /** Good for the births of the part, which have no late ones. */
    Factor of(Part part) {
        return new Factor(part.births(), part.cut(own), part.cut(founders));
    }

    /**
     * A·v, in place. O(n).
     *
     * @return vᵀ·A·v
     */
    double multiply(double[] v) {
        births.up(v);
        double square = weigh(v);
        births.down(v);
        return square;
    }

    private double weigh(double[] v) {
        double[] shared = founders.shared(v, 1);
        double square = founders.square(v);
        for (var run = births.runs(); run.next(); ) {
            for (int node = run.from; node < run.to; node++) {
                double weighed = own[node] * v[node];
                square += weighed * v[node];
                v[node] = weighed;
            }
        }
        founders.add(shared, v, 1);
        return square;
    }

    double between(int node, int other) {
        double[] v = births.vector();
        v[node] = 1;
        multiply(v);
        return v[other];
    }

    /** The part of v's relationship with itself that nodes explain which have genes v: vᵀ·A·v. Uses v up. */
    double square(double[] v) {
        births.up(v);
        return weigh(v);
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
            double[] v = columns(columns, from, width);
            for (int r = 0; r < rows.length; r++) {
                for (int c = 0; c < width; c++) {
                    table[r][from + c] = 0.5 * v[rows[r] * WIDTH + c];
                }
            }
        });
        return table;
    }

    /** Some columns of A side by side: the relationship of node i with the c-th of them stands at i·WIDTH + c. */
    double[] columns(int[] nodes, int from, int width) {
        double[] v = new double[(births.nodes() + 1) * WIDTH];
        for (int c = 0; c < width; c++) {
            v[nodes[from + c] * WIDTH + c] = 1;
        }
        up(v);
        weighColumns(v);
        down(v);
        return v;
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
                    addHalf(v, node, births.sire(node), births.dam(node));
                }
            }
        }
        for (int c = 0; c < WIDTH; c++) {
            v[Births.NONE * WIDTH + c] = 0;
        }
    }

    private void weighColumns(double[] v) {
        double[] shared = founders.shared(v, WIDTH);
        for (int node = 1; node <= births.nodes(); node++) {
            for (int c = 0; c < WIDTH; c++) {
                v[node * WIDTH + c] *= own[node];
            }
        }
        founders.add(shared, v, WIDTH);
    }

    private void down(double[] v) {
        for (var run = births.runs(); run.next(); ) {
            if (run.male >= 0) {
                var males = births.males();
                for (int c = males.start()[run.male]; c < males.start()[run.male + 1]; c++) {
                    add(v, males.candidate()[c], males.share()[c], run.from);
                }
            } else {
                for (int node = run.from; node < run.to; node++) {
                    addMean(v, births.sire(node), births.dam(node), node);
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
            double half = 0.5 * v[young * WIDTH + c];
            v[sire * WIDTH + c] += half;
            v[dam * WIDTH + c] += half;
        }
    }

    private static void addMean(double[] v, int sire, int dam, int young) {
        for (int c = 0; c < WIDTH; c++) {
            v[young * WIDTH + c] += 0.5 * (v[sire * WIDTH + c] + v[dam * WIDTH + c]);
        }
    }
}
