package org.demebook.kinship;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Drops genes through a pedigree at some loci at once and counts what reaches the pool. One thread at a time; holds all
 * counts of the sweeps it made.
 */
final class GeneSweep {
    /** Loci side by side in memory. */
    static final int LOCI = 16;

    private final Births births;
    private final int[] pool;
    private final Labels labels;

    /** By node, strand and locus. A gene is the label it got at its founder. */
    private final int[] genes;

    /** By label and locus, how many copies the pool holds. */
    private final int[] copies;

    /** By label, at how many loci the pool holds it. */
    final int[] kept;
    /** By the first label of a founder, at how many loci the pool holds both of its genes. */
    final int[] bothKept;
    /** By place in the pool, how many genes nobody else in the pool has, over all loci. */
    final int[] unique;
    /** By place in the pool, at how many loci both of its genes are such. */
    final int[] bothUnique;

    /** Distinct genes in the pool, over all loci. */
    long distinct;

    /** Pairs of identical genes in the pool, each with itself included, over all loci. */
    long identicalPairs;

    /**
     * Which nodes bring new genes.
     *
     * @param first by node its first label, −1 for none. Founders and strangers have two, the unnamed parent of a
     *     half-known young one.
     */
    record Labels(int[] first, int count) {
        static Labels of(Births births) {
            int[] first = new int[births.nodes() + 1];
            int count = 0;
            for (int node = 1; node <= births.nodes(); node++) {
                first[node] = count;
                switch (births.kind()[node]) {
                    case Births.FOUNDER, Births.UNKNOWN_PARENTS -> count += 2;
                    case Births.HIDDEN -> count += 2;
                    case Births.YOUNG -> count += births.hasUnnamedParent(node) ? 1 : 0;
                    default -> {}
                }
            }
            return new Labels(first, count);
        }
    }

    GeneSweep(Births births, int[] pool, Labels labels) {
        this.births = births;
        this.pool = pool;
        this.labels = labels;
        genes = new int[Math.multiplyExact(2 * LOCI, births.nodes() + 1)];
        copies = new int[Math.multiplyExact(LOCI, labels.count)];
        kept = new int[labels.count];
        bothKept = new int[labels.count];
        unique = new int[pool.length];
        bothUnique = new int[pool.length];
    }

    /**
     * @param loci how many of the sweep count, at most {@link #LOCI}
     * @return the sum over loci of squared shares of identical pairs
     */
    double run(SplittableRandom random, int loci) {
        for (int node = 1; node <= births.nodes(); node++) {
            drop(node, random);
        }
        double squares = countCopies(loci);
        countUnique(loci);
        countKept(loci);
        return squares;
    }

    private void drop(int node, SplittableRandom random) {
        switch (births.kind()[node]) {
            case Births.YOUNG -> fromParents(node, random.nextLong());
            case Births.FOUNDER, Births.UNKNOWN_PARENTS -> found(node, random);
            case Births.PARTHENOGEN -> fromDam(node, random);
            case Births.HIDDEN -> fromCandidates(node, random);
            default -> throw new AssertionError(births.kind()[node]);
        }
    }

    /** Place of a node's first strand; the second stands {@link #LOCI} further. */
    private static int at(int node) {
        return node * 2 * LOCI;
    }

    private void fromParents(int node, long coins) {
        inherit(at(node), births.sire(node), labels.first[node], (int) coins);
        inherit(at(node) + LOCI, births.dam(node), labels.first[node], (int) (coins >>> 32));
    }

    private void inherit(int to, int parent, int unnamed, int coins) {
        if (parent == Births.NONE) {
            Arrays.fill(genes, to, to + LOCI, unnamed);
            return;
        }
        int from = at(parent);
        for (int locus = 0; locus < LOCI; locus++) {
            genes[to + locus] = genes[from + (coins >>> locus & 1) * LOCI + locus];
        }
    }

    private void found(int node, SplittableRandom random) {
        int to = at(node);
        int first = labels.first[node];
        Arrays.fill(genes, to, to + LOCI, first);
        Arrays.fill(genes, to + LOCI, to + 2 * LOCI, first + 1);
        double inbreeding = births.extra().of(node);
        for (int locus = 0; inbreeding > 0 && locus < LOCI; locus++) {
            if (random.nextDouble() < inbreeding) {
                genes[to + LOCI + locus] = first;
            }
        }
    }

    private void fromDam(int node, SplittableRandom random) {
        double keepsBoth = births.extra().of(node);
        int to = at(node);
        int from = at(births.dam(node));
        int coins = random.nextInt();
        for (int locus = 0; locus < LOCI; locus++) {
            boolean both = random.nextDouble() < keepsBoth;
            int coin = coins >>> locus & 1;
            genes[to + locus] = genes[from + coin * LOCI + locus];
            genes[to + LOCI + locus] = genes[from + (both ? 1 - coin : coin) * LOCI + locus];
        }
    }

    private void fromCandidates(int node, SplittableRandom random) {
        int to = at(node);
        var males = births.males();
        int male = males.indexOf(node);
        for (int locus = 0; locus < LOCI; locus++) {
            double draw = random.nextDouble();
            int c = males.start()[male];
            while (c < males.start()[male + 1] && draw >= males.share()[c]) {
                draw -= males.share()[c++];
            }
            if (c == males.start()[male + 1]) {
                genes[to + locus] = labels.first[node];
                genes[to + LOCI + locus] = labels.first[node] + 1;
            } else {
                int from = at(males.candidate()[c]);
                genes[to + locus] = genes[from + locus];
                genes[to + LOCI + locus] = genes[from + LOCI + locus];
            }
        }
    }

    private double countCopies(int loci) {
        Arrays.fill(copies, 0);
        long[] pairs = new long[LOCI];
        for (int animal : pool) {
            for (int strand = at(animal); strand <= at(animal) + LOCI; strand += LOCI) {
                for (int locus = 0; locus < LOCI; locus++) {
                    int before = copies[genes[strand + locus] * LOCI + locus]++;
                    pairs[locus] += 2L * before + 1;
                }
            }
        }
        double all = 4.0 * pool.length * pool.length;
        double squares = 0;
        for (int locus = 0; locus < loci; locus++) {
            identicalPairs += pairs[locus];
            squares += pairs[locus] / all * (pairs[locus] / all);
        }
        return squares;
    }

    /** A gene is unique if no other animal of the pool has it; that its own animal has it twice does not matter. */
    private void countUnique(int loci) {
        for (int place = 0; place < pool.length; place++) {
            int from = at(pool[place]);
            for (int locus = 0; locus < loci; locus++) {
                int one = genes[from + locus];
                int other = genes[from + LOCI + locus];
                int own = one == other ? 2 : 1;
                int first = copies[one * LOCI + locus] == own ? 1 : 0;
                int second = copies[other * LOCI + locus] == own ? 1 : 0;
                unique[place] += first + second;
                bothUnique[place] += first & second;
            }
        }
    }

    private void countKept(int loci) {
        for (int label = 0; label < labels.count; label++) {
            for (int locus = 0; locus < loci; locus++) {
                boolean here = copies[label * LOCI + locus] > 0;
                kept[label] += here ? 1 : 0;
                distinct += here ? 1 : 0;
                boolean next = label + 1 < labels.count && copies[(label + 1) * LOCI + locus] > 0;
                bothKept[label] += here && next ? 1 : 0;
            }
        }
    }
}
