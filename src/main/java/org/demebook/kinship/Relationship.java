package org.demebook.kinship;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The additive relationship matrix A of a pedigree, asked by row and never written out. The relationship of two animals
 * is twice their kinship.
 *
 * <p>Where not all is known, A counts identity among genes that trace to stated founders only: an animal of unknown
 * parents then has a relationship of 0 even with itself.
 */
final class Relationship {
    private final Births births;
    private final double[] known;
    private final Inbreeding inbreeding;

    private Relationship(Births births, double[] known, boolean strangersAreFounders, double[] before) {
        this.births = births;
        this.known = known;
        inbreeding = new Inbreeding(births, known, strangersAreFounders, before);
    }

    /**
     * Unknown ancestors are founders.
     *
     * @param before of the same births but those of the last rows
     */
    static Relationship ofAll(Births births, @Nullable Relationship before) {
        double[] known = births.vector();
        Arrays.fill(known, 0, births.nodes(), 1);
        return new Relationship(births, known, true, selfBefore(births, before));
    }

    /** By node, its relationship with itself as far as it was known before, NaN elsewhere. */
    private static double[] selfBefore(Births births, @Nullable Relationship before) {
        double[] self = births.vector();
        Arrays.fill(self, 0, births.nodes(), Double.NaN);
        int rows = before == null ? 0 : before.births.nodeOfRow().length;
        for (int row = 0; row < rows; row++) {
            self[births.nodeOfRow()[row]] = before.self(row);
        }
        return self;
    }

    /** Genes of unknown origin are identical to none. */
    static Relationship ofKnown(Births births) {
        return new Relationship(births, births.knownFractions(), false, selfBefore(births, null));
    }

    Births births() {
        return births;
    }

    /** An animal's relationship with itself. */
    double self(int row) {
        return inbreeding.self[births.nodeOfRow()[row]];
    }

    /** The part of an animal's genome that counts. */
    double known(int row) {
        return known[births.nodeOfRow()[row]];
    }

    /** One climb from each of the two. Symmetric to the last bit. */
    double between(int row, int other) {
        int a = Math.min(births.nodeOfRow()[row], births.nodeOfRow()[other]);
        int b = Math.max(births.nodeOfRow()[row], births.nodeOfRow()[other]);
        if (a == b) {
            return inbreeding.self[a];
        }
        var fromA = climbed(a);
        var fromB = climbed(b);
        inbreeding.ofBreeders.weigh(fromA);
        double sum = fromB.dot(fromA);
        inbreeding.release(fromA);
        inbreeding.release(fromB);
        return sum;
    }

    /** From an animal without young the climb starts at its parents: to others it is related through them alone. */
    private AncestorWalk climbed(int node) {
        var walk = inbreeding.freeWalk();
        int[] breeder = inbreeding.breeders.part();
        if (breeder[node] >= 0) {
            walk.add(breeder[node], 1);
        } else {
            for (int parent : new int[] {births.sire()[node], births.dam()[node]}) {
                if (parent != births.none()) {
                    walk.add(breeder[parent], 0.5);
                }
            }
        }
        walk.climb();
        walk.spread();
        return walk;
    }

    /** A·v by node, in place. */
    void multiply(double[] v) {
        inbreeding.factor.multiply(v);
    }

    /** A·v by row. */
    double[] times(double[] byRow) {
        double[] v = births.ofRows(byRow);
        multiply(v);
        return births.toRows(v);
    }

    /** Half the relationships, as {@code [row][column]}. */
    double[][] kinship(int[] rows, int[] columns) {
        return inbreeding.factor.kinship(births.nodesOf(rows), births.nodesOf(columns));
    }
}
