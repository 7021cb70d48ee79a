package org.demebook.kinship;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * A set of living animals as one pool of genes: its mean kinship, gene diversity and founders, and what a further litter
 * would do to them. Kinship with oneself is included throughout. Immutable; made in O(pedigree).
 *
 * <p>Source: Lacy (1995) and Ballou &amp; Lacy (1995), both from memory.
 */
public final class GenePool {
    private final Pedigree pedigree;
    private final int[] animals;
    private final PoolSums identical;
    private final @Nullable PoolSums bothKnown;

    /**
     * What a litter of full siblings would do, all other animals kept.
     *
     * @param geneDiversity of the pool with the litter in it, in [0, 1]
     * @param inbreeding of each young, in [0, 1]
     * @param meanKinship of each young with the pool as it is now, itself not in it
     */
    public record LitterEffect(double geneDiversity, double inbreeding, double meanKinship) {}

    GenePool(Pedigree pedigree, int[] animals, Relationship identical, @Nullable Relationship bothKnown) {
        this.pedigree = pedigree;
        this.animals = animals.clone();
        requireDistinct();
        this.identical = PoolSums.of(identical, this.animals);
        this.bothKnown = bothKnown == null ? null : PoolSums.of(bothKnown, this.animals);
    }

    private void requireDistinct() {
        var seen = new BitSet(pedigree.size());
        for (int animal : animals) {
            if (seen.get(animal)) {
                throw new IllegalArgumentException("row " + animal + " stands twice in the pool");
            }
            seen.set(animal);
        }
        if (animals.length == 0) {
            throw new IllegalArgumentException("a pool needs an animal");
        }
    }

    public int size() {
        return animals.length;
    }

    public int[] animals() {
        return animals.clone();
    }

    public Convention convention() {
        return pedigree.convention();
    }

    /** The mean over the pool of {@link Pedigree#knownFraction}; to be shown beside every figure. */
    public double knownFraction() {
        double sum = 0;
        for (double known : sorted(pedigree.knownFractions())) {
            sum += known;
        }
        return sum / animals.length;
    }

    private double[] sorted(double[] byRow) {
        double[] values = new double[animals.length];
        for (int i = 0; i < animals.length; i++) {
            values[i] = byRow[animals[i]];
        }
        Arrays.sort(values); // whatever the order of rows, the sum is the same to the last bit
        return values;
    }

    /** The mean kinship of any animal of the pedigree with the pool, in [0, 1]; with itself too if it is in the pool. */
    public double meanKinship(int animal) {
        double sum = identical.of(animal);
        return bothKnown == null ? sum / (2 * animals.length) : sum / bothKnown.of(animal);
    }

    /** By row, {@link #meanKinship(int)} of every animal of the pedigree. */
    public double[] meanKinships() {
        double[] sums = identical.ofAll();
        double[] known = bothKnown == null ? sums : bothKnown.ofAll();
        for (int animal = 0; animal < sums.length; animal++) {
            sums[animal] /= bothKnown == null ? 2 * animals.length : known[animal];
        }
        return sums;
    }

    /** The mean kinship of all pairs of the pool, each animal with itself included: in [0, 1]. */
    public double meanKinship() {
        return bothKnown == null
                ? identical.total() / (2.0 * animals.length * animals.length)
                : identical.total() / bothKnown.total();
    }

    /** The expected heterozygosity of the pool against that of the founders' population, in [0, 1]: 1 − mean kinship. */
    public double geneDiversity() {
        return 1 - meanKinship();
    }

    /**
     * The number of unrelated founders with the same gene diversity, from coancestry: 1/(2·mean kinship). Lacy's older
     * definition, through the retention of alleles, is another quantity; see {@link GeneDrop}. Label it so.
     */
    public double founderGenomeEquivalents() {
        return 1 / (2 * meanKinship());
    }

    public FounderContributions founderContributions() {
        var births = pedigree.births();
        double[] genes = births.vector();
        for (int node : births.nodesOf(animals)) {
            genes[node] += 1.0 / animals.length;
        }
        return FounderContributions.of(births, genes, convention());
    }

    /**
     * The ancestors through which most genes of the pool came. Cost: O(pool and its ancestors) for each.
     *
     * @param limit how many to choose at most
     */
    public EffectiveAncestors effectiveAncestors(int limit) {
        var births = pedigree.births();
        return EffectiveAncestors.of(births, births.nodesOf(animals), limit);
    }

    /**
     * What chance has left of the founders' genes. The same under every convention: each unknown parent is a founder.
     *
     * @param loci how many independent loci; 10 000 give standard errors of at most .005
     */
    public GeneDrop geneDrop(int loci, long seed) {
        return new GeneDrop(pedigree.births(), animals, loci, seed);
    }

    /**
     * What one more litter does, exactly, without computing the rest again. Parents need not be in the pool. Cost: one
     * {@link Pedigree#kinship(int, int)}.
     *
     * @param young how many of the litter are kept in the pool; at 0 nothing changes
     */
    public LitterEffect withLitter(int sire, int dam, int young) {
        if (young < 0) {
            throw new IllegalArgumentException("a litter has no " + young + " young");
        }
        double n = animals.length + (double) young;
        double pairs = bothKnown == null ? 2 * n * n : bothKnown.after(sire, dam, young);
        double toPool = identical.of(sire) + identical.of(dam);
        double ofPool = bothKnown == null ? 4.0 * animals.length : bothKnown.of(sire) + bothKnown.of(dam);
        return new LitterEffect(
                1 - identical.after(sire, dam, young) / pairs, pedigree.kinship(sire, dam), toPool / ofPool);
    }
}
