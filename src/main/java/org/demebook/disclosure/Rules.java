package org.demebook.disclosure;

import java.util.Collection;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which figures are sensitive, and how far apart the bounds must stay that anybody can find for them.
 *
 * <p>A figure is sensitive where too few respondents stand behind it, or by the p % rule: where the second largest
 * contributor, taking their own contribution off the figure, would overestimate the largest by less than p %. Where some
 * have waived protection, the largest of those who have not is protected against the largest other; where all have, nobody
 * is. A figure that sums what came in and what went out is judged by the absolute contributions.
 *
 * <p>Source: Handbook on Statistical Disclosure Control (ESSNet, Eurostat), chapters 4 and 5.
 *
 * @param fewestRespondents how many respondents have to stand behind a figure, at least 1; 3 is usual
 * @param percent p of the p % rule, in [0, 100]
 */
public record Rules(int fewestRespondents, int percent) {
    /** Why a figure is sensitive. */
    public enum Reason {
        FEW_RESPONDENTS,
        DOMINATED,
        /** A row or a column with everything in one class tells the class of each. */
        ALL_IN_ONE_CLASS
    }

    /**
     * How far from the true value the bounds have to stay.
     *
     * @param below units, at least 0
     * @param above units, at least 0
     */
    public record Need(Reason reason, int below, int above) {}

    public Rules {
        if (fewestRespondents < 1 || percent < 0 || percent > 100) {
            throw new IllegalArgumentException(
                    "At least 1 respondent and 0 to 100 %%, not %d and %d".formatted(fewestRespondents, percent));
        }
    }

    /**
     * What a figure needs; empty where it is not sensitive. A figure of nobody is not.
     *
     * @param shares contributions by respondent, none 0
     */
    public Optional<Need> need(Map<String, Integer> shares, Set<String> waivers) {
        long largest = largest(shares, waivers);
        if (largest == 0) {
            return Optional.empty();
        }
        long hundredths = hundredthsAbove(shares, waivers, largest);
        int above = (int) Math.max(1, -Math.floorDiv(-hundredths, 100L));
        if (shares.size() < fewestRespondents) {
            return Optional.of(new Need(Reason.FEW_RESPONDENTS, above, above));
        }
        return hundredths > 0 ? Optional.of(new Need(Reason.DOMINATED, above, above)) : Optional.empty();
    }

    /**
     * The upper protection level p/100 · x_s − (X − x_s − x_r) in hundredths of a unit; above 0 where the p % rule finds the
     * figure sensitive.
     */
    public long upperProtectionHundredths(Map<String, Integer> shares, Set<String> waivers) {
        return hundredthsAbove(shares, waivers, largest(shares, waivers));
    }

    private long hundredthsAbove(Map<String, Integer> shares, Set<String> waivers, long largest) {
        long all = sum(shares.values());
        long other = largestOther(shares, waivers, largest);
        return percent * largest - 100L * (all - largest - other);
    }

    private static long largest(Map<String, Integer> shares, Set<String> waivers) {
        long largest = 0;
        for (var share : shares.entrySet()) {
            if (!waivers.contains(share.getKey())) {
                largest = Math.max(largest, Math.abs((long) share.getValue()));
            }
        }
        return largest;
    }

    /** The largest but the one that is protected, whether waived or not. */
    private static long largestOther(Map<String, Integer> shares, Set<String> waivers, long largest) {
        boolean passed = false;
        long other = 0;
        for (var share : shares.entrySet()) {
            long amount = Math.abs((long) share.getValue());
            if (!passed && amount == largest && !waivers.contains(share.getKey())) {
                passed = true;
            } else {
                other = Math.max(other, amount);
            }
        }
        return other;
    }

    private static long sum(Collection<Integer> shares) {
        return shares.stream().mapToLong(share -> Math.abs((long) share)).sum();
    }
}
