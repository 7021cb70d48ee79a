package org.demebook.kinship;

import java.util.SplittableRandom;
import org.demebook.kinship.Births.HiddenMales;

/**
 * What the kinship of two animals would be if the sires that are one of several were known: the lowest and the highest
 * over all ways to name them, or over a sample where there are too many. {@link Pedigree#kinship(int, int)} is the mean
 * over all ways, each weighed by its probability.
 *
 * @param lowest in [0, 1]
 * @param highest in [0, 1]
 * @param assignments how many ways were tried, 1 where every sire is known
 * @param exhaustive whether these were all; a sample's range may be too narrow
 */
public record KinshipRange(double lowest, double highest, int assignments, boolean exhaustive) {

    /** Ways are counted among the ancestors of the two; each is a small pedigree of its own. */
    static KinshipRange of(Births births, Convention convention, int row, int other, int limit, long seed) {
        if (limit < 1) {
            throw new IllegalArgumentException("a range needs an assignment");
        }
        int[] nodes = births.nodesOf(new int[] {row, other});
        var part = Part.ancestors(births, nodes);
        var males = part.births().males();
        long ways = ways(males, limit);
        boolean exhaustive = ways <= limit;
        int tries = exhaustive ? (int) ways : limit;
        var random = new SplittableRandom(seed);
        int[] choice = new int[males.node().length];
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < tries; i++) {
            if (!exhaustive) {
                draw(choice, males, random);
            }
            double kinship = kinship(named(part.births(), choice, part.within(nodes)), convention);
            lowest = Math.min(lowest, kinship);
            highest = Math.max(highest, kinship);
            if (exhaustive) {
                advance(choice, males);
            }
        }
        return new KinshipRange(lowest, highest, tries, exhaustive);
    }

    private static double kinship(Births named, Convention convention) {
        return new Pedigree(named, null).under(convention).kinship(0, 1);
    }

    /** A stranger is one more way where he is possible. Stops counting above the limit. */
    private static long ways(HiddenMales males, int limit) {
        long ways = 1;
        for (int i = 0; i < males.node().length && ways <= limit; i++) {
            ways *= choices(males, i);
        }
        return ways;
    }

    private static int choices(HiddenMales males, int i) {
        return males.start()[i + 1] - males.start()[i] + (males.remainder()[i] > 0 ? 1 : 0);
    }

    private static void advance(int[] choice, HiddenMales males) {
        for (int i = 0; i < choice.length; i++) {
            choice[i]++;
            if (choice[i] < choices(males, i)) {
                return;
            }
            choice[i] = 0;
        }
    }

    private static void draw(int[] choice, HiddenMales males, SplittableRandom random) {
        for (int i = 0; i < choice.length; i++) {
            double draw = random.nextDouble();
            choice[i] = 0;
            while (choice[i] < choices(males, i) - 1 && draw >= males.share()[males.start()[i] + choice[i]]) {
                draw -= males.share()[males.start()[i] + choice[i]++];
            }
        }
    }

    /** Each hidden male is the one chosen; a choice past his candidates is the stranger. The two are rows 0 and 1. */
    private static Births named(Births births, int[] choice, int[] two) {
        var males = births.males();
        int[] start = new int[choice.length + 1];
        int[] candidate = new int[choice.length];
        double[] share = new double[choice.length];
        double[] remainder = new double[choice.length];
        for (int i = 0; i < choice.length; i++) {
            int chosen = males.start()[i] + choice[i];
            boolean stranger = chosen == males.start()[i + 1];
            start[i + 1] = start[i];
            remainder[i] = stranger ? 1 : 0;
            if (!stranger) {
                candidate[start[i + 1]] = males.candidate()[chosen];
                share[start[i + 1]++] = 1;
            }
        }
        return new Births(
                births.nodes(),
                two.length,
                births.kind(),
                births.parents(),
                new HiddenMales(males.node(), start, candidate, share, remainder),
                births.extra(),
                two,
                births.rowOfNode(),
                births.generationEnd(),
                births.founderKinship(),
                LateBirths.NONE);
    }
}
