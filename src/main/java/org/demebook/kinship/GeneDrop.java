package org.demebook.kinship;

import java.util.Arrays;
import java.util.Queue;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;

/**
 * What chance has left of the founders' genes in a pool: each founder gets two distinct genes at each of many unlinked
 * loci, and they are handed down by Mendel's rule. Every probability is an estimate, with a standard error beside it.
 *
 * <p>A parent that nobody names is a founder of one gene, the one it gave. A sire who is one of several is drawn anew at
 * each locus, and so is the chance that he is a stranger. Founders' inbreeding from DNA is kept; their kinship from DNA is
 * not, since many ways of sharing genes lead to the same kinship.
 *
 * <p>The same pool, births, keys, loci and seed give the same figures, on any number of threads.
 *
 * <p>Source: MacCluer et al. (1986), Zoo Biol. 5: 147–160 (from memory).
 */
public final class GeneDrop {
    private final Births whole;
    private final Part part;
    private final Births births;
    private final int[] pool;
    private final int loci;
    private final GeneSweep.Labels labels;

    private final int[] kept;
    private final int[] bothKept;
    private final int[] unique;
    private final int[] bothUnique;
    private long distinct;
    private long identicalPairs;
    private double squares;

    GeneDrop(Births whole, int[] pool, int loci, long seed) {
        if (loci < 1) {
            throw new IllegalArgumentException("a gene drop needs a locus");
        }
        this.whole = whole;
        this.pool = pool.clone();
        this.loci = loci;
        part = Part.ancestors(whole, whole.nodesOf(pool));
        births = part.births();
        labels = GeneSweep.Labels.of(births);
        kept = new int[labels.count()];
        bothKept = new int[labels.count()];
        unique = new int[pool.length];
        bothUnique = new int[pool.length];
        run(seed);
    }

    /** Each sweep has a seed of its own, so it does not matter which thread makes it. */
    private void run(long seed) {
        int sweeps = (loci + GeneSweep.LOCI - 1) / GeneSweep.LOCI;
        long[] seeds = new SplittableRandom(seed).longs(sweeps).toArray();
        double[] squaresOfSweep = new double[sweeps];
        int[] poolNodes = part.within(whole.nodesOf(pool));
        Queue<GeneSweep> free = new ConcurrentLinkedQueue<>();
        IntStream.range(0, sweeps).parallel().forEach(sweep -> {
            var polled = free.poll();
            var worker = polled == null ? new GeneSweep(births, poolNodes, labels) : polled;
            int width = Math.min(GeneSweep.LOCI, loci - sweep * GeneSweep.LOCI);
            squaresOfSweep[sweep] = worker.run(new SplittableRandom(seeds[sweep]), width);
            free.add(worker);
        });
        for (var worker : free) {
            add(worker);
        }
        for (double ofSweep : squaresOfSweep) {
            squares += ofSweep;
        }
    }

    private void add(GeneSweep worker) {
        add(worker.kept, kept);
        add(worker.bothKept, bothKept);
        add(worker.unique, unique);
        add(worker.bothUnique, bothUnique);
        distinct += worker.distinct;
        identicalPairs += worker.identicalPairs;
    }

    private static void add(int[] some, int[] all) {
        for (int i = 0; i < all.length; i++) {
            all[i] += some[i];
        }
    }

    /** A probability or mean, with the standard error that comes from the number of loci. */
    public record Estimate(double value, double standardError) {
        /**
         * @param sum over loci of a value
         * @param sumOfSquares over loci of the value's square
         */
        static Estimate of(double sum, double sumOfSquares, int loci) {
            double mean = sum / loci;
            double variance = Math.max(0, sumOfSquares / loci - mean * mean);
            return new Estimate(mean, Math.sqrt(variance / loci));
        }

        Estimate times(double factor) {
            return new Estimate(value * factor, standardError * factor);
        }
    }

    public int loci() {
        return loci;
    }

    /**
     * The share of a founder's distinct genes that the pool still has; 0 for a founder without descendants in it.
     *
     * @throws IllegalArgumentException if the animal has a parent
     */
    public Estimate retention(int founder) {
        return genesKept(founder).times(1 / (2 - inbreeding(founder)));
    }

    private double inbreeding(int founder) {
        return whole.extra().of(whole.nodeOfRow()[founder]);
    }

    private Estimate genesKept(int founder) {
        int label = labelOfFounder(founder);
        if (label < 0) {
            return new Estimate(0, 0);
        }
        int sum = kept[label] + kept[label + 1];
        return Estimate.of(sum, sum + 2.0 * bothKept[label], loci);
    }

    /** The chance that nothing is left of a founder at a locus. */
    public Estimate lost(int founder) {
        int label = labelOfFounder(founder);
        if (label < 0) {
            return new Estimate(1, 0);
        }
        int without = loci - kept[label] - kept[label + 1] + bothKept[label];
        return Estimate.of(without, without, loci);
    }

    private int labelOfFounder(int row) {
        int node = whole.nodeOfRow()[row];
        if (whole.kind()[node] != Births.FOUNDER && whole.kind()[node] != Births.UNKNOWN_PARENTS) {
            throw new IllegalArgumentException("row " + row + " is no founder");
        }
        return part.place()[node] == 0 ? -1 : labels.first()[part.place()[node]];
    }

    /** The chance that the pool still has the gene that the unnamed parent of this young gave it. */
    public Estimate retentionOfUnnamedParent(int young) {
        int node = whole.nodeOfRow()[young];
        if (!whole.hasUnnamedParent(node)) {
            throw new IllegalArgumentException("row " + young + " has no unnamed parent beside a named one");
        }
        if (part.place()[node] == 0) {
            return new Estimate(0, 0);
        }
        int sum = kept[labels.first()[part.place()[node]]];
        return Estimate.of(sum, sum, loci);
    }

    /** By place in the pool, the share of an animal's genes that no other animal of the pool has. */
    public Estimate[] genomeUniqueness() {
        var estimates = new Estimate[pool.length];
        Arrays.setAll(estimates, i -> Estimate.of(unique[i], unique[i] + 2.0 * bothUnique[i], loci)
                .times(0.5));
        return estimates;
    }

    /** The mean number of distinct genes at a locus in the pool. */
    public double meanGenesKept() {
        return (double) distinct / loci;
    }

    /**
     * 1 − Σq² in the pool, q the share of each distinct gene; its expectation is 1 − mean kinship, exactly, where no founders
     * are related by DNA.
     */
    public Estimate geneDiversity() {
        double pairs = 4.0 * pool.length * pool.length;
        var identical = Estimate.of(identicalPairs / pairs, squares, loci);
        return new Estimate(1 - identical.value(), identical.standardError());
    }

    /**
     * Founder genome equivalents by retention: 1/Σ(p²/r), p the share a founder contributed and r the share of its genome
     * that is left. Not {@link GenePool#founderGenomeEquivalents}, which is 1/(2·mean kinship): label it so. An unnamed
     * parent gave one gene of its two, so its r is at most ½. A stranger who may be the sire has his r, as his p, in
     * proportion to his chance.
     *
     * <p>Source: Lacy (1989), Zoo Biol. 8: 111–123 (formula as quoted by others).
     */
    public double founderGenomesByRetention() {
        double[] shares = births.vector();
        for (int node : part.within(whole.nodesOf(pool))) {
            shares[node] += 1.0 / pool.length;
        }
        births.up(shares);
        double sum = 0;
        for (int node = 1; node <= births.nodes(); node++) {
            sum += ofFounder(node, shares[node]);
        }
        return 1 / sum;
    }

    private double ofFounder(int node, double share) {
        int label = labels.first()[node];
        return switch (births.kind()[node]) {
            case Births.FOUNDER, Births.UNKNOWN_PARENTS ->
                shareByRetention(
                        share,
                        (kept[label] + kept[label + 1])
                                / (loci * (2 - births.extra().of(node))));
            case Births.HIDDEN -> {
                double stranger = births.males().remainder()[births.males().indexOf(node)];
                yield shareByRetention(share * stranger, (kept[label] + kept[label + 1]) / (2.0 * loci));
            }
            default -> births.hasUnnamedParent(node) ? shareByRetention(share / 2, kept[label] / (2.0 * loci)) : 0;
        };
    }

    /** p²/r; p cannot exceed r, so p stands for it where too few loci have shown none. */
    private static double shareByRetention(double share, double retention) {
        return share == 0 ? 0 : retention == 0 ? share : share * share / retention;
    }
}
