package org.demebook.season;

import java.util.Arrays;
import java.util.List;

/**
 * Which pairs should have a litter, and what comes of it. Mean kinship includes each animal with itself; gene diversity is
 * 1 − mean kinship; both are in [0, 1].
 *
 * @param litters by female
 * @param now mean kinship of the pool as it is
 * @param after mean kinship of the pool when the young that count have joined it
 * @param settledOnly the same with none but the settled litters
 * @param bound mean kinship that no plan under these constraints falls below
 * @param meanInbreeding of the young; 0 without any
 * @param leastInbred no plan with the same litters for each animal has less inbred young; false where that was not proven
 * @param whole false if somebody stopped it
 */
public record SeasonPlan(
        List<Litter> litters,
        double now,
        double after,
        double settledOnly,
        double bound,
        double meanInbreeding,
        boolean leastInbred,
        boolean whole)
        implements Planned {

    /**
     * A litter of the plan.
     *
     * @param young that count
     * @param inbreeding of each young
     * @param adds gene diversity after the season that would be missing without this litter; below 0 for one that harms
     */
    public record Litter(Pair pair, double young, double inbreeding, double adds, boolean settled, boolean travels) {}

    public SeasonPlan {
        litters = List.copyOf(litters);
    }

    public double geneDiversityNow() {
        return 1 - now;
    }

    public double geneDiversityAfter() {
        return 1 - after;
    }

    public double geneDiversitySettledOnly() {
        return 1 - settledOnly;
    }

    /** By how much the plan's mean kinship is above the bound, in parts of the bound: the best plan is at most that much better. */
    public double gap() {
        return after <= bound ? 0 : after / bound - 1;
    }

    /** By female, her litter's sire. */
    int[] sires(Season season) {
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        litters.forEach(litter -> sires[litter.pair().female()] = litter.pair().male());
        return sires;
    }
}
