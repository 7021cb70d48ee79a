package org.demebook.kinship;

import java.util.BitSet;

/**
 * For each animal the sum of its relationships with a pool. Kept by breeder; that of another follows from its parents.
 *
 * @param others nodes of the pool that are no breeders
 * @param byBreeder sums of relationships
 * @param total the sum of all relationships within the pool
 */
record PoolSums(Relationship relationship, BitSet others, double[] byBreeder, double total) {

    static PoolSums of(Relationship relationship, int[] animals) {
        var births = relationship.births();
        var breeders = relationship.breeders();
        var others = new BitSet(births.nodes() + 1);
        double[] genes = breeders.births().vector();
        for (int animal : animals) {
            int node = births.nodeOfRow()[animal];
            int breeder = breeders.of(node);
            if (breeder == Births.NONE) {
                others.set(node);
            } else {
                genes[breeder]++;
            }
        }
        double square = handUp(relationship, others, genes);
        return new PoolSums(
                relationship, others, genes, square + relationship.ofBreeders().multiply(genes));
    }

    /** @return the sum of what parents do not explain; in the order of births, since it depends on that to the last bit */
    private static double handUp(Relationship relationship, BitSet others, double[] genes) {
        var births = relationship.births();
        var breeders = relationship.breeders();
        double sum = 0;
        for (var run = births.runs(); run.next(); ) {
            for (int node = others.nextSetBit(run.from);
                    node >= 0 && node < run.to;
                    node = others.nextSetBit(node + 1)) {
                sum += relationship.own[node];
                genes[breeders.of(births.sire(node))] += 0.5;
                genes[breeders.of(births.dam(node))] += 0.5;
            }
        }
        return sum;
    }

    double of(int animal) {
        return ofNode(relationship.births().nodeOfRow()[animal]);
    }

    /** By row. Node after node, since parents of neighbours stand near each other. */
    double[] ofAll() {
        double[] byNode = relationship.births().vector();
        for (int node = 1; node < byNode.length; node++) {
            byNode[node] = ofNode(node);
        }
        return relationship.births().toRows(byNode);
    }

    private double ofNode(int node) {
        var births = relationship.births();
        var breeders = relationship.breeders();
        int breeder = breeders.of(node);
        if (breeder != Births.NONE) {
            return byBreeder[breeder];
        }
        double itsOwn = others.get(node) ? relationship.own[node] : 0;
        return itsOwn + 0.5 * (byBreeder[breeders.of(births.sire(node))] + byBreeder[breeders.of(births.dam(node))]);
    }

    /** Twice the sum of kinships in the pool after a litter is added; full siblings, no twins. */
    double after(int sire, int dam, int young) {
        double parents = relationship.between(sire, dam);
        double siblings = (relationship.self(sire) + relationship.self(dam) + 2 * parents) / 4;
        double self = (relationship.known(sire) + relationship.known(dam) + parents) / 2;
        return total + young * (of(sire) + of(dam)) + young * (young - 1.0) * siblings + young * self;
    }
}
