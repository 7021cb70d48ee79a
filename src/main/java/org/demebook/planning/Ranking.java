package org.demebook.planning;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;
import org.demebook.kinship.GenePool;
import org.demebook.kinship.Pedigree;

/**
 * The best pairs of females and males: kinship at most a limit, then the lower mean kinship, then the lower numbers.
 *
 * <p>Keeps the best so far and goes through the females from the lowest mean kinship on, so that it may stop when no
 * female that is left can do better; at worst O(pedigree × the smaller side).
 */
final class Ranking {
    /** Figures that differ by less are equal: the rest is rounding. */
    static final double ROUNDING = 1e-12;

    private static final int FEMALES_AT_ONCE = 64;

    /**
     * @param kinship F of young of the two
     * @param meanKinship the mean of both
     */
    record Pair(int dam, int sire, double kinship, double meanKinship) {
        static final Comparator<Pair> BEST_FIRST = Comparator.comparingDouble(
                        (Pair pair) -> Math.rint(pair.meanKinship / ROUNDING))
                .thenComparingInt(Pair::dam)
                .thenComparingInt(Pair::sire);
    }

    /** Whether two animals may be paired at all. */
    interface Allowed {
        boolean pair(int dam, int sire);
    }

    private final Pedigree pedigree;
    private final double[] meanKinship;
    private final double maximumInbreeding;
    private final int limit;
    private final PriorityQueue<Pair> best = new PriorityQueue<>(Pair.BEST_FIRST.reversed());

    private Ranking(Pedigree pedigree, GenePool pool, double maximumInbreeding, int limit) {
        this.pedigree = pedigree;
        this.meanKinship = pool.meanKinships();
        this.maximumInbreeding = maximumInbreeding;
        this.limit = limit;
    }

    static List<Pair> of(
            Pedigree pedigree,
            GenePool pool,
            int[] females,
            int[] males,
            Allowed allowed,
            double maximumInbreeding,
            int limit) {
        var ranking = new Ranking(pedigree, pool, maximumInbreeding, limit);
        ranking.rank(ranking.lowestFirst(females), ranking.lowestFirst(males), allowed);
        return ranking.best.stream().sorted(Pair.BEST_FIRST).toList();
    }

    private int[] lowestFirst(int[] rows) {
        return IntStream.of(rows)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(row -> meanKinship[row])
                        .thenComparing(Comparator.naturalOrder()))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private void rank(int[] females, int[] males, Allowed allowed) {
        if (males.length == 0) {
            return;
        }
        for (int from = 0; from < females.length; from += FEMALES_AT_ONCE) {
            if (best.size() == limit
                    && of(females[from], males[0]) > best.element().meanKinship() + ROUNDING) {
                return;
            }
            int[] some = Arrays.copyOfRange(females, from, Math.min(from + FEMALES_AT_ONCE, females.length));
            double[][] kinship = kinship(some, males);
            for (int f = 0; f < some.length; f++) {
                for (int m = 0; m < males.length; m++) {
                    if (!isClose(kinship[f][m]) && allowed.pair(some[f], males[m])) {
                        offer(new Pair(some[f], males[m], kinship[f][m], of(some[f], males[m])));
                    }
                }
            }
        }
    }

    /** By female and male; the side with fewer animals makes the columns, which are what costs. */
    private double[][] kinship(int[] females, int[] males) {
        if (males.length <= females.length) {
            return pedigree.kinship(females, males);
        }
        double[][] turned = pedigree.kinship(males, females);
        double[][] kinship = new double[females.length][males.length];
        for (int m = 0; m < males.length; m++) {
            for (int f = 0; f < females.length; f++) {
                kinship[f][m] = turned[m][f];
            }
        }
        return kinship;
    }

    private boolean isClose(double kinship) {
        return kinship > maximumInbreeding + ROUNDING;
    }

    private double of(int dam, int sire) {
        return (meanKinship[dam] + meanKinship[sire]) / 2;
    }

    private void offer(Pair pair) {
        best.add(pair);
        if (best.size() > limit) {
            best.remove();
        }
    }
}
