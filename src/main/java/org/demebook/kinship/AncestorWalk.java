package org.demebook.kinship;

import java.util.Arrays;

/**
 * Lists the ancestors of a few nodes, youngest first, without looking at the rest of the pedigree, and carries genes up
 * and down among them. One walk at a time; made once and used again, since it holds vectors as long as the pedigree.
 *
 * <p>A set of bits with a second level of bits over its words yields the highest member in a few steps; parents are
 * always lower than their young, so the set can grow while it is read.
 */
final class AncestorWalk {
    private final Births births;
    private final long[] bits;
    private final long[] wordsInUse;
    private int highest = -1;

    /** What the last climb found, descending. */
    private int[] found = new int[64];

    private int count;

    /** Genes by node, all zeros between walks; the last place is for {@link Births#none}. */
    final double[] genes;

    AncestorWalk(Births births) {
        this.births = births;
        bits = new long[(births.nodes() >> 6) + 1];
        wordsInUse = new long[(bits.length >> 6) + 1];
        genes = births.vector();
    }

    /** One more node from which the next climb starts. */
    void add(int node) {
        bits[node >> 6] |= 1L << node;
        wordsInUse[node >> 12] |= 1L << (node >> 6);
        highest = Math.max(highest, node);
    }

    void add(int node, double itsGenes) {
        add(node);
        genes[node] += itsGenes;
    }

    /** Finds all that was added and all its ancestors. */
    void climb() {
        count = 0;
        for (int upper = highest >> 12; upper >= 0; upper--) {
            while (wordsInUse[upper] != 0) {
                int word = (upper << 6) + 63 - Long.numberOfLeadingZeros(wordsInUse[upper]);
                while (bits[word] != 0) {
                    int node = (word << 6) + 63 - Long.numberOfLeadingZeros(bits[word]);
                    bits[word] &= ~(1L << node);
                    visit(node);
                }
                wordsInUse[upper] &= ~(1L << word);
            }
        }
        highest = -1;
    }

    private void visit(int node) {
        if (count == found.length) {
            found = Arrays.copyOf(found, 2 * count);
        }
        found[count++] = node;
        int none = births.none();
        int sire = births.sire()[node];
        int dam = births.dam()[node];
        if (sire != none) {
            addParent(sire);
        }
        if (dam != none) {
            addParent(dam);
        }
        if (sire == none && births.kind()[node] == Births.HIDDEN) {
            var males = births.males();
            int i = males.indexOf(node);
            for (int c = males.start()[i]; c < males.start()[i + 1]; c++) {
                addParent(males.candidate()[c]);
            }
        }
    }

    private void addParent(int node) {
        bits[node >> 6] |= 1L << node;
        wordsInUse[node >> 12] |= 1L << (node >> 6);
    }

    /** Turns the genes v of what was found into Tᵀ·v. */
    void spread() {
        int[] sire = births.sire();
        int[] dam = births.dam();
        int none = births.none();
        for (int i = 0; i < count; i++) {
            int node = found[i];
            double half = 0.5 * genes[node];
            genes[sire[node]] += half;
            genes[dam[node]] += half;
            if (sire[node] == none && births.kind()[node] == Births.HIDDEN) {
                births.males().spread(births.males().indexOf(node), genes[node], genes);
            }
        }
        genes[none] = 0;
    }

    /** Turns genes v of some walk into T·v for what was found by this one. */
    void descend(double[] v) {
        int[] sire = births.sire();
        int[] dam = births.dam();
        int none = births.none();
        for (int i = count - 1; i >= 0; i--) {
            int node = found[i];
            genes[node] = v[node] + 0.5 * (genes[sire[node]] + genes[dam[node]]);
            if (sire[node] == none && births.kind()[node] == Births.HIDDEN) {
                genes[node] += births.males().mean(births.males().indexOf(node), genes);
            }
        }
    }

    void multiply(double[] byNode) {
        for (int i = 0; i < count; i++) {
            genes[found[i]] *= byNode[found[i]];
        }
    }

    /** The sum of products of the genes with those of another walk. */
    double dot(AncestorWalk other) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += genes[found[i]] * other.genes[found[i]];
        }
        return sum;
    }

    double square(double[] weights) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            double value = genes[found[i]];
            sum += weights[found[i]] * value * value;
        }
        return sum;
    }

    /** Takes the genes away from what was found. */
    void clear() {
        for (int i = 0; i < count; i++) {
            genes[found[i]] = 0;
        }
    }
}
