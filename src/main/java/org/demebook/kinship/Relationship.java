package org.demebook.kinship;

import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
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
    /** By node, the part of its genome that counts; absent where all does, as that of strangers. */
    private final double @Nullable [] known;

    /** By node, its relationship with itself. */
    final double[] self;
    /** By node, the part of that which its parents do not explain. */
    final double[] own;

    private final Factor factor;
    private final Breeders breeders;
    private final Factor ofBreeders;
    /** Among breeders. */
    private final Queue<AncestorWalk> walks;

    private Relationship(
            Births births,
            double @Nullable [] known,
            double[] self,
            double[] own,
            Breeders breeders,
            double[] ownOfBreeders,
            Queue<AncestorWalk> walks) {
        this.births = births;
        this.known = known;
        this.self = self;
        this.own = own;
        this.walks = walks;
        this.breeders = breeders;
        var founders = births.founderKinship();
        factor = new Factor(births, own, known == null ? founders : founders.ofKnown(known));
        ofBreeders = new Factor(breeders.births(), ownOfBreeders, breeders.cut(factor.founders()));
    }

    private static Relationship computed(Births births, double @Nullable [] known, double[] self) {
        var breeders = Breeders.of(births);
        var all = new Relationship(
                births,
                known,
                self,
                new double[births.kind().length],
                breeders,
                new double[breeders.whole().length],
                new ConcurrentLinkedQueue<>());
        new Inbreeding(all).computeAll();
        return all;
    }

    /**
     * Unknown ancestors are founders.
     *
     * @param before of the same births but those of the last rows; what it knows is not computed again
     */
    static Relationship ofAll(Births births, @Nullable Relationship before) {
        double[] self = notYet(births);
        int rows = before == null ? 0 : before.births.rows();
        for (int row = 0; row < rows; row++) {
            self[births.nodeOfRow()[row]] = before.self(row);
        }
        return computed(births, null, self);
    }

    /** Genes of unknown origin are identical to none. */
    static Relationship ofKnown(Births births) {
        return computed(births, births.knownFractions(), notYet(births));
    }

    private static double[] notYet(Births births) {
        double[] self = new double[births.kind().length];
        Arrays.fill(self, 1, self.length, Double.NaN);
        return self;
    }

    /** With the late births behind those of this one. */
    Relationship with(Births grown) {
        boolean shares = grown.kind() == births.kind();
        int length = grown.kind().length;
        var itsBreeders = breeders.with(births, grown);
        double[] itsOwn = ofBreeders.own();
        var all = new Relationship(
                grown,
                null,
                shares ? self : Arrays.copyOf(self, length),
                shares ? own : Arrays.copyOf(own, length),
                itsBreeders,
                shares ? itsOwn : Arrays.copyOf(itsOwn, itsBreeders.whole().length),
                shares ? walks : new ConcurrentLinkedQueue<>());
        all.setOwnOfBreeders(breeders.births().nodes() + 1);
        new Inbreeding(all).computeFrom(births.nodes() + 1);
        return all;
    }

    /** The same, with all births put in order. */
    Relationship inOrder(Births ordered, int[] order) {
        double[] itsSelf = new double[ordered.kind().length];
        double[] itsOwn = new double[ordered.kind().length];
        for (int i = 0; i < order.length; i++) {
            itsSelf[i + 1] = self[order[i]];
            itsOwn[i + 1] = own[order[i]];
        }
        var itsBreeders = Breeders.of(ordered);
        double[] ownOfBreeders = new double[itsBreeders.whole().length];
        var all = new Relationship(
                ordered, null, itsSelf, itsOwn, itsBreeders, ownOfBreeders, new ConcurrentLinkedQueue<>());
        all.setOwnOfBreeders(1);
        return all;
    }

    private void setOwnOfBreeders(int from) {
        for (int breeder = from; breeder <= breeders.births().nodes(); breeder++) {
            ofBreeders.own()[breeder] = own[breeders.whole()[breeder]];
        }
    }

    Births births() {
        return births;
    }

    Breeders breeders() {
        return breeders;
    }

    /** By breeder. */
    Factor ofBreeders() {
        return ofBreeders;
    }

    void setOwn(int node, double itsOwn) {
        own[node] = itsOwn;
        int breeder = breeders.of(node);
        if (breeder != Births.NONE) {
            ofBreeders.own()[breeder] = itsOwn;
        }
    }

    /** An animal's relationship with itself. */
    double self(int row) {
        return self[births.nodeOfRow()[row]];
    }

    /** The part of an animal's genome that counts. */
    double known(int row) {
        return knownOf(births.nodeOfRow()[row]);
    }

    double knownOf(int node) {
        return known == null ? 1 : known[node];
    }

    /** The part that counts of a stranger who is the sire with this probability. */
    double knownOfStranger(double probability) {
        return known == null ? probability : 0;
    }

    /** Visits the ancestors of the two. Symmetric to the last bit. */
    double between(int row, int other) {
        return betweenNodes(births.nodeOfRow()[row], births.nodeOfRow()[other]);
    }

    private double betweenNodes(int node, int other) {
        if (node == other) {
            return self[node];
        }
        int settled = births.settled();
        boolean isLast =
                births.late().placeInOrder(node, settled) > births.late().placeInOrder(other, settled);
        return meanBetween(
                breeders.parentsOf(isLast ? node : other, births), breeders.parentsOf(isLast ? other : node, births));
    }

    /** The same but for rounding: to the last bit what a column of the sire has for the dam. */
    double betweenParents(int sire, int dam) {
        return meanBetween(breeders.parentsOf(sire, births), breeders.parentsOf(dam, births));
    }

    private double meanBetween(int[] two, int[] others) {
        var walk = freeWalk();
        var part = walk.climb(breeders.births(), two, others);
        double between = ofBreeders.of(part, walk.own()).meanBetween(part.within(two), part.within(others));
        release(walk);
        return between;
    }

    AncestorWalk freeWalk() {
        var walk = walks.poll();
        return walk == null ? new AncestorWalk(breeders.births()) : walk;
    }

    void release(AncestorWalk walk) {
        walk.done();
        walks.add(walk);
    }

    Factor factorOf(Part part) {
        return factor.of(part, part.births().vector());
    }

    /**
     * A·v by node, in place.
     *
     * @return vᵀ·A·v
     */
    double multiply(double[] v) {
        return factor.multiply(v);
    }

    /** A·v by row. */
    double[] times(double[] byRow) {
        double[] v = births.ofRows(byRow);
        multiply(v);
        return births.toRows(v);
    }

    /** Half the relationships, as {@code [row][column]}. */
    double[][] kinship(int[] rows, int[] columns) {
        int[] rowNodes = births.nodesOf(rows);
        int[] columnNodes = births.nodesOf(columns);
        var part = Part.ancestors(births, rowNodes, columnNodes);
        return factorOf(part).kinship(part.within(rowNodes), part.within(columnNodes));
    }
}
