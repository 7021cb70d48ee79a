package org.demebook.chance;

/** How many of each sex there are. */
public record SexRatio(int males, int females) {
    /**
     * Deviations from 1:1, in standard errors of the binomial distribution: above 0 where males are more. 0 where nothing
     * is counted.
     */
    public double deviations() {
        int all = males + females;
        return all == 0 ? 0 : (males - females) / Math.sqrt(all);
    }

    /** The probability that {@code young} are all of one given sex, each sex being as likely. */
    public static double chanceOfAll(int young) {
        return Math.pow(0.5, young);
    }
}
