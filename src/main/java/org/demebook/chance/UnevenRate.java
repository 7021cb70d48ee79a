package org.demebook.chance;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * A rate that differs from group to group, as far as the counts of some groups tell it: every pair of mean share and
 * over-dispersion, weighted by how well it explains them. So a tail probability takes into account that little is known.
 *
 * <p>Before any count the share has a beta distribution that weighs as much as {@value #WEIGHT_OF_USUAL} single counts, and
 * the over-dispersion a half-normal one in its square root, with mean ρ = 0.04: common practice, no source.
 */
public final class UnevenRate {
    /** So many of a group were hit. */
    public record Count(int hit, int of) {}

    private static final int WEIGHT_OF_USUAL = 10;
    private static final double NEGLIGIBLE = 1e-15;
    private static final int SHARES = 48;
    private static final double LEAST_LOGIT = -7; // 0.1 %
    private static final double MOST_LOGIT = 2.4; // 92 %
    private static final int DISPERSIONS = 14;
    private static final double MOST_DISPERSION_ROOT = 0.7; // ρ = 0.49
    private static final double SPREAD_OF_DISPERSION_ROOT = 0.2;

    private final BetaBinomial[] models = new BetaBinomial[SHARES * DISPERSIONS];
    private final double[] weights = new double[models.length];

    private UnevenRate(double usual, Map<Count, Integer> groups) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < models.length; i++) {
            double share = share(i / DISPERSIONS);
            double root = dispersionRoot(i % DISPERSIONS);
            models[i] = new BetaBinomial(share, root * root);
            weights[i] = logPrior(usual, share, root);
            for (var group : groups.entrySet()) {
                var count = group.getKey();
                weights[i] += group.getValue() * models[i].logProbability(count.hit(), count.of());
            }
            most = Math.max(most, weights[i]);
        }
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            weights[i] = Math.exp(weights[i] - most);
            sum += weights[i];
        }
        for (int i = 0; i < weights.length; i++) {
            weights[i] /= sum;
        }
    }

    /**
     * Some 700 logarithms of beta functions for each different count.
     *
     * @param usual share before any count is known, above 0 and below 1
     */
    public static UnevenRate of(double usual, Collection<Count> groups) {
        var times = new HashMap<Count, Integer>();
        groups.forEach(count -> times.merge(count, 1, Integer::sum));
        return new UnevenRate(usual, times);
    }

    private static double share(int step) {
        double logit = LEAST_LOGIT + (MOST_LOGIT - LEAST_LOGIT) * step / (SHARES - 1);
        return 1 / (1 + Math.exp(-logit));
    }

    private static double dispersionRoot(int step) {
        return MOST_DISPERSION_ROOT * (step + 0.5) / DISPERSIONS;
    }

    /** Of the logit of the share, whose steps are even: the density of the share times p (1 − p). */
    private static double logPrior(double usual, double share, double dispersionRoot) {
        double deviations = dispersionRoot / SPREAD_OF_DISPERSION_ROOT;
        return WEIGHT_OF_USUAL * (usual * Math.log(share) + (1 - usual) * Math.log1p(-share))
                - deviations * deviations / 2;
    }

    /** The mean share, as it is to be expected. */
    public double share() {
        double mean = 0;
        for (int i = 0; i < models.length; i++) {
            mean += weights[i] * models[i].share();
        }
        return mean;
    }

    /** The correlation ρ of two of one group, as it is to be expected. */
    public double overdispersion() {
        double mean = 0;
        for (int i = 0; i < models.length; i++) {
            mean += weights[i] * models[i].overdispersion();
        }
        return mean;
    }

    /** The probability that {@code hit} or more of a further group of {@code of} are hit. */
    public double upperTail(int hit, int of) {
        double tail = 0;
        for (int i = 0; i < models.length; i++) {
            tail += weights[i] < NEGLIGIBLE ? 0 : weights[i] * models[i].upperTail(hit, of);
        }
        return Math.min(1, tail);
    }
}
