package org.demebook.kinship;

import java.util.OptionalInt;

/**
 * The effective size of a population, Ne: the size of an ideal population that would lose gene diversity as fast. And
 * what follows from it for the time to come.
 *
 * <p>Sources, all from memory: Wright (1931), Genetics 16: 97–159; Crow &amp; Kimura (1970); Falconer &amp; Mackay (1996),
 * ch. 4; Soulé, Gilpin, Conway &amp; Foose (1986), Zoo Biol. 5: 101–113.
 */
public final class EffectiveSize {
    private EffectiveSize() {}

    /** 4·Nm·Nf/(Nm + Nf), from the numbers of breeding males and females; 0 where a sex is missing. */
    public static double fromSexRatio(int males, int females) {
        return males == 0 || females == 0 ? 0 : 4.0 * males * females / ((double) males + females);
    }

    /**
     * (4N − 2)/(V + 2), for a population of constant size with both sexes pooled.
     *
     * @param youngPerAnimal how many young that lived to breed each animal had, those without young included; at least two
     *     animals
     */
    public static double fromFamilySizes(int... youngPerAnimal) {
        double sum = 0;
        for (int young : youngPerAnimal) {
            sum += young;
        }
        double mean = sum / youngPerAnimal.length;
        double squares = 0;
        for (int young : youngPerAnimal) {
            squares += (young - mean) * (young - mean);
        }
        return fromFamilyVariance(youngPerAnimal.length, squares / (youngPerAnimal.length - 1));
    }

    /** (4N − 2)/(V + 2): about N where chance alone decides (V = 2), almost 2N where all have two young (V = 0). */
    public static double fromFamilyVariance(int animals, double variance) {
        return (4.0 * animals - 2) / (variance + 2);
    }

    /** The rate ΔF = (F now − F before)/(1 − F before), from mean inbreeding one generation apart. */
    public static double inbreedingRate(double meanBefore, double meanNow) {
        return (meanNow - meanBefore) / (1 - meanBefore);
    }

    /** 1/(2·ΔF); infinite where inbreeding did not rise. */
    public static double fromInbreedingRate(double rate) {
        return rate <= 0 ? Double.POSITIVE_INFINITY : 1 / (2 * rate);
    }

    /** Over generations of unequal size: their harmonic mean, which lies near the smallest. */
    public static double overGenerations(double... sizes) {
        double sum = 0;
        for (double size : sizes) {
            sum += 1 / size;
        }
        return sizes.length / sum;
    }

    /** The share of gene diversity expected to be left after some generations: (1 − 1/(2Ne))^t; 0 where Ne is ½ or less. */
    public static double retained(double effectiveSize, double generations) {
        return Math.pow(effectiveSize <= 0.5 ? 0 : 1 - 1 / (2 * effectiveSize), generations);
    }

    /** Ne needed so that a share, in (0, 1), of gene diversity is left after some generations. */
    public static double neededToRetain(double share, double generations) {
        return 1 / (2 * (1 - Math.pow(share, 1 / generations)));
    }

    /**
     * Years until gene diversity falls below a target, as expected; 0 if it is there already, infinite if it never does.
     *
     * @param generationYears mean age of parents; see {@link PedigreeDepth#generationLength}
     */
    public static double yearsUntilBelow(
            double target, double geneDiversity, double effectiveSize, double generationYears) {
        return geneDiversity <= target ? 0 : generationYears * generationsUntil(target / geneDiversity, effectiveSize);
    }

    /**
     * The first generation, counted from 1, whose expected gene diversity is below the target; 0 if it is now, empty if none
     * ever is.
     */
    public static OptionalInt generationsUntilBelow(double target, double geneDiversity, double effectiveSize) {
        if (geneDiversity < target) {
            return OptionalInt.of(0);
        }
        double generations = Math.floor(generationsUntil(target / geneDiversity, effectiveSize));
        return generations < Integer.MAX_VALUE ? OptionalInt.of(1 + (int) generations) : OptionalInt.empty();
    }

    /** Below a size of ½, where no breeding is, nothing is left after one generation. */
    private static double generationsUntil(double share, double effectiveSize) {
        if (share <= 0 || effectiveSize == Double.POSITIVE_INFINITY) {
            return Double.POSITIVE_INFINITY;
        }
        return effectiveSize <= 0.5 ? 0 : Math.log(share) / Math.log(1 - 1 / (2 * effectiveSize));
    }
}
