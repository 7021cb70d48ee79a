package org.demebook.kinship;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Drops genes through a pedigree at some loci at once and counts what reaches the pool. One thread at a time; holds all
 * counts of the sweeps it made.
 */
final class GeneSweep {
    /** Loci dropped at once. */
    static final int LOCI = 16;

    private final Births births;
    private final int[] pool;
    private final Labels labels;

    /** Genes stand side by side in a word, the first locus lowest: four of 16 bits, or two if there are too many labels. */
    private final int bits;

    private final int lociOfWord;
    private final int wordsOfStrand;
    private final long geneMask;
    /** By coins thrown for the loci of a word: all bits of those genes whose coin shows 1. */
    private final long[] spread;

    /** Words by node, strand and locus. A gene is the label it got at its founder. */
    private final long[] genes;

    /** By label and locus: below, how many copies the pool holds; above, the sum of the places that hold them. */
    private final long[] copies;

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
        bits = labels.count <= 1 << 16 ? 16 : 32;
        lociOfWord = Long.SIZE / bits;
        wordsOfStrand = LOCI / lociOfWord;
        geneMask = (1L << bits) - 1;
        spread = new long[1 << lociOfWord];
        for (int coins = 0; coins < spread.length; coins++) {
            for (int locus = 0; locus < lociOfWord; locus++) {
                spread[coins] |= (coins >> locus & 1) == 0 ? 0 : geneMask << locus * bits;
            }
        }
        genes = new long[Math.multiplyExact(2 * wordsOfStrand, births.nodes() + 1)];
        copies = new long[Math.multiplyExact(LOCI, labels.count)];
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
        Arrays.fill(copies, 0);
        for (int place = 0; place < pool.length; place++) {
            countStrand(at(pool[place]), place);
            countStrand(at(pool[place]) + wordsOfStrand, place);
        }
        return summarize(loci);
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

    /** The first word of a node's first strand; the second strand stands {@link #wordsOfStrand} further. */
    private int at(int node) {
        return node * 2 * wordsOfStrand;
    }

    private long gene(int strand, int locus) {
        return genes[strand + locus / lociOfWord] >>> locus % lociOfWord * bits & geneMask;
    }

    private void setGene(int strand, int locus, long label) {
        int shift = locus % lociOfWord * bits;
        int word = strand + locus / lociOfWord;
        genes[word] = genes[word] & ~(geneMask << shift) | label << shift;
    }

    private void setStrand(int strand, long label) {
        for (int locus = 0; locus < LOCI; locus++) {
            setGene(strand, locus, label);
        }
    }

    private void fromParents(int node, long coins) {
        inherit(at(node), births.sire(node), labels.first[node], (int) coins);
        inherit(at(node) + wordsOfStrand, births.dam(node), labels.first[node], (int) (coins >>> 32));
    }

    private void inherit(int to, int parent, int unnamed, int coins) {
        if (parent == Births.NONE) {
            setStrand(to, unnamed);
            return;
        }
        int first = at(parent);
        int second = first + wordsOfStrand;
        for (int word = 0; word < wordsOfStrand; word++) {
            long one = genes[first + word];
            long fromSecond = spread[coins >>> word * lociOfWord & spread.length - 1];
            genes[to + word] = one ^ (one ^ genes[second + word]) & fromSecond;
        }
    }

    private void found(int node, SplittableRandom random) {
        int first = labels.first[node];
        setStrand(at(node), first);
        setStrand(at(node) + wordsOfStrand, first + 1);
        double inbreeding = births.extra().of(node);
        for (int locus = 0; inbreeding > 0 && locus < LOCI; locus++) {
            if (random.nextDouble() < inbreeding) {
                setGene(at(node) + wordsOfStrand, locus, first);
            }
        }
    }

    private void fromDam(int node, SplittableRandom random) {
        double keepsBoth = births.extra().of(node);
        int from = at(births.dam(node));
        int coins = random.nextInt();
        for (int locus = 0; locus < LOCI; locus++) {
            boolean both = random.nextDouble() < keepsBoth;
            int coin = coins >>> locus & 1;
            setGene(at(node), locus, gene(from + coin * wordsOfStrand, locus));
            setGene(at(node) + wordsOfStrand, locus, gene(from + (both ? 1 - coin : coin) * wordsOfStrand, locus));
        }
    }

    private void fromCandidates(int node, SplittableRandom random) {
        var males = births.males();
        int male = males.indexOf(node);
        for (int locus = 0; locus < LOCI; locus++) {
            double draw = random.nextDouble();
            int c = males.start()[male];
            while (c < males.start()[male + 1] && draw >= males.share()[c]) {
                draw -= males.share()[c++];
            }
            boolean stranger = c == males.start()[male + 1];
            int from = stranger ? 0 : at(males.candidate()[c]);
            long first = stranger ? labels.first[node] : gene(from, locus);
            long second = stranger ? labels.first[node] + 1 : gene(from + wordsOfStrand, locus);
            setGene(at(node), locus, first);
            setGene(at(node) + wordsOfStrand, locus, second);
        }
    }

    private void countStrand(int strand, int place) {
        long one = ((long) place << Integer.SIZE) + 1;
        int locus = 0;
        for (int word = strand; word < strand + wordsOfStrand; word++) {
            long left = genes[word];
            for (int i = 0; i < lociOfWord; i++) {
                copies[(int) (left & geneMask) * LOCI + locus++] += one;
                left >>>= bits;
            }
        }
    }

    private int copies(int label, int locus) {
        return (int) copies[label * LOCI + locus];
    }

    /** @return the sum over loci of squared shares of identical pairs */
    private double summarize(int loci) {
        long[] pairs = new long[LOCI];
        int before = 0;
        for (int label = 0; label < labels.count; label++) {
            int here = 0;
            for (int locus = 0; locus < loci; locus++) {
                int found = copies(label, locus);
                if (found > 0) {
                    here |= 1 << locus;
                    pairs[locus] += (long) found * found;
                    if (found <= 2) {
                        findUnique(label, locus, found);
                    }
                }
            }
            kept[label] += Integer.bitCount(here);
            distinct += Integer.bitCount(here);
            if (label > 0) {
                bothKept[label - 1] += Integer.bitCount(before & here);
            }
            before = here;
        }
        double all = 4.0 * pool.length * pool.length;
        double squares = 0;
        for (long ofLocus : pairs) {
            identicalPairs += ofLocus;
            squares += ofLocus / all * (ofLocus / all);
        }
        return squares;
    }

    /** A gene is unique if no other animal of the pool has it; that its own animal has it twice does not matter. */
    private void findUnique(int label, int locus, int found) {
        int holder = (int) ((copies[label * LOCI + locus] >>> Integer.SIZE) / found);
        long one = gene(at(pool[holder]), locus);
        long other = gene(at(pool[holder]) + wordsOfStrand, locus);
        if (found == 1) {
            unique[holder]++;
            // both are unique: counted once, with the first of the two
            bothUnique[holder] += label == one && copies((int) other, locus) == 1 ? 1 : 0;
        } else if (one == label && other == label) {
            unique[holder] += 2;
            bothUnique[holder]++;
        }
    }
}
