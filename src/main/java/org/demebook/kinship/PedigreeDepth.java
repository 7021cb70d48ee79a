package org.demebook.kinship;

import java.util.Arrays;
import java.util.function.IntUnaryOperator;

/**
 * How much of its ancestry each animal has on record. Where the sire is one of several, each counts with his probability;
 * a fatherless young has its dam on both sides.
 */
public final class PedigreeDepth {
    private final Births births;

    PedigreeDepth(Births births) {
        this.births = births;
    }

    /**
     * By row, equivalent complete generations: the sum over all known ancestors of ½ to the power of the generations
     * between; 0 for a founder, 1 where both parents alone are known. O(n).
     *
     * <p>Source: Maignel, Boichard &amp; Verrier (1996), Interbull Bulletin 14: 49–54 (from memory).
     */
    public double[] equivalentGenerations() {
        double[] oneMore = births.vector();
        double[] own = births.vector();
        int male = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            if (births.kind()[node] == Births.HIDDEN) {
                oneMore[node] = births.males().mean(male++, oneMore);
            } else {
                own[node] = 0.5 * (oneMore[births.sire(node)] + oneMore[births.dam(node)]);
                oneMore[node] = own[node] + 1;
            }
        }
        return births.toRows(own);
    }

    /**
     * By row, the index of completeness in [0, 1]: for each parent the mean, over generations from the parent on, of the
     * share of ancestors that are known, and of the two the harmonic mean; so 0 where a parent is unknown. O(n) for each
     * generation.
     *
     * <p>Source: MacCluer et al. (1983), J. Hered. 74: 394–399 (from memory).
     *
     * @param generations how far to look, at least 1; the parents are the first
     */
    public double[] completeness(int generations) {
        if (generations < 1) {
            throw new IllegalArgumentException("completeness needs a generation to look at");
        }
        double[] sums = births.vector();
        double[] known = births.vector();
        int male = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            known[node] = births.kind()[node] == Births.HIDDEN ? births.males().mean(male++, known) : 1;
        }
        for (int generation = 0; generation < generations; generation++) {
            for (int node = 1; node <= births.nodes(); node++) {
                sums[node] += known[node] / generations;
            }
            known = oneGenerationUp(known);
        }
        return births.toRows(harmonicMeansOfParents(sums));
    }

    /** From the share known of each node's ancestors in some generation to that in the one before. */
    private double[] oneGenerationUp(double[] known) {
        double[] up = births.vector();
        int male = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            up[node] = births.kind()[node] == Births.HIDDEN
                    ? births.males().mean(male++, up)
                    : 0.5 * (known[births.sire(node)] + known[births.dam(node)]);
        }
        return up;
    }

    private double[] harmonicMeansOfParents(double[] ofParent) {
        double[] means = births.vector();
        for (int node = 1; node <= births.nodes(); node++) {
            double sire = ofParent[births.sire(node)];
            double dam = ofParent[births.dam(node)];
            means[node] = sire == 0 || dam == 0 ? 0 : 2 * sire * dam / (sire + dam);
        }
        return means;
    }

    /**
     * Generation length: the mean age of sires and the mean age of dams at the births of these young, and of both the
     * mean. {@code NaN} where no age of a sire or none of a dam is known; hidden males have no age, and
     * a young of its dam alone has no sire.
     *
     * @param bornAt by row, the time of birth in the unit of the answer; {@code NaN} where unknown
     */
    public double generationLength(double[] bornAt, int... young) {
        return (meanAge(bornAt, this::itsSire, young) + meanAge(bornAt, births::dam, young)) / 2;
    }

    private int itsSire(int node) {
        return births.kind()[node] == Births.PARTHENOGEN ? Births.NONE : births.sire(node);
    }

    private double meanAge(double[] bornAt, IntUnaryOperator parentOf, int[] young) {
        double[] ages = new double[young.length];
        int count = 0;
        for (int row : young) {
            int parent = parentOf.applyAsInt(births.nodeOfRow()[row]);
            int parentRow = parent == Births.NONE ? -1 : births.rowOfNode()[parent];
            double age = parentRow < 0 ? Double.NaN : bornAt[row] - bornAt[parentRow];
            if (!Double.isNaN(age)) {
                ages[count++] = age;
            }
        }
        Arrays.sort(ages, 0, count); // whatever the order of rows, the sum is the same to the last bit
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += ages[i];
        }
        return sum / count; // 0/0 is NaN: nothing known
    }
}
