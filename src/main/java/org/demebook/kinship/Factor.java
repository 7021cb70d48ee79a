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
    /** Columns of a table computed side by side: one cache line of doubles. */
    private static final int WIDTH = 8;

    Factor of(Part part) {
        return new Factor(part.births(), part.cut(own), part.cut(founders));
    }

    /** A·v, in place. O(n). */
    void multiply(double[] v) {
        births.up(v);
        double[] shared = founders.shared(v, 1);
        for (int node = 0; node < births.nodes(); node++) {
            v[node] *= own[node];
        }
        founders.add(shared, v, 1);
        births.down(v);
    }

    /** Multiplies the genes of a walk by G. */
    void weigh(AncestorWalk walk) {
        double[] shared = founders.shared(walk.genes, 1);
        walk.multiply(own);
        founders.add(shared, walk.genes, 1);
    }

    /** For genes v spread over a walk, what they were before being u: uᵀ·A·u. */
    double square(AncestorWalk walk) {
        return walk.square(own) + founders.square(walk.genes);
    }

    /** Forgets a walk that may have been weighed. */
    void clear(AncestorWalk walk) {
        walk.clear();
        founders.clear(walk.genes);
    }

    /**
     * The kinship of each row node with each column node, half their relationship, as {@code [row][column]}. Looks at
     * their ancestors only; a column's values do not depend, to the last bit, on what else is asked for.
     */
    double[][] kinship(int[] rows, int[] columns) {
        var part = Part.ancestors(births, rows, columns);
        var cut = of(part);
        int[] partRows = part.within(rows);
        int[] partColumns = part.within(columns);
        double[][] table = new double[rows.length][columns.length];
        IntStream.range(0, (columns.length + WIDTH - 1) / WIDTH)
                .parallel()
                .forEach(block -> cut.fill(table, partRows, partColumns, block * WIDTH));
        return table;
    }

    private void fill(double[][] table, int[] rows, int[] columns, int from) {
        double[] v = new double[(births.nodes() + 1) * WIDTH];
        int width = Math.min(WIDTH, columns.length - from);
        for (int c = 0; c < width; c++) {
            v[columns[from + c] * WIDTH + c] = 1;
        }
        up(v);
        weigh(v);
        down(v);
        for (int r = 0; r < rows.length; r++) {
            for (int c = 0; c < width; c++) {
                table[r][from + c] = 0.5 * v[rows[r] * WIDTH + c];
            }
        }
    }

    private void up(double[] v) {
        var males = births.males();
        int male = males.node().length - 1;
        for (int node = births.nodes() - 1; node >= 0; node--) {
            if (male >= 0 && males.node()[male] == node) {
                for (int c = males.start()[male]; c < males.start()[male + 1]; c++) {
                    add(v, node, males.share()[c], males.candidate()[c]);
                }
                male--;
            } else {
                addHalf(v, node, births.sire()[node], births.dam()[node]);
            }
        }
        for (int c = 0; c < WIDTH; c++) {
            v[births.none() * WIDTH + c] = 0;
        }
    }

    private void weigh(double[] v) {
        double[] shared = founders.shared(v, WIDTH);
        for (int node = 0; node < births.nodes(); node++) {
            for (int c = 0; c < WIDTH; c++) {
                v[node * WIDTH + c] *= own[node];
            }
        }
        founders.add(shared, v, WIDTH);
    }

    private void down(double[] v) {
        var males = births.males();
        int male = 0;
        for (int node = 0; node < births.nodes(); node++) {
            if (male < males.node().length && males.node()[male] == node) {
                for (int c = males.start()[male]; c < males.start()[male + 1]; c++) {
                    add(v, males.candidate()[c], males.share()[c], node);
                }
                male++;
            } else {
                addMean(v, births.sire()[node], births.dam()[node], node);
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
