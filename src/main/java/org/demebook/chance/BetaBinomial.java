package org.demebook.chance;

import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.numbers.gamma.RegularizedBeta;

/**
 * How many of n are hit where the chance to be hit is the same within a group, and differs between groups by a beta
 * distribution. Without over-dispersion it is the binomial distribution.
 *
 * @param share mean chance to be hit, above 0 and below 1
 * @param overdispersion correlation ρ of two of one group, 0 to below 1; the beta distribution has α + β = 1 / ρ − 1
 */
public record BetaBinomial(double share, double overdispersion) {
    public BetaBinomial {
        if (!(share > 0 && share < 1 && overdispersion >= 0 && overdispersion < 1)) {
            throw new IllegalArgumentException("share " + share + ", overdispersion " + overdispersion);
        }
    }

    /** The probability that {@code hit} or more of {@code of} are hit; 1 for none. O(of). */
    public double upperTail(int hit, int of) {
        if (hit < 0 || hit > of) {
            throw new IllegalArgumentException(hit + " of " + of);
        }
        if (hit == 0) {
            return 1;
        }
        if (overdispersion == 0) {
            return RegularizedBeta.value(share, hit, of - hit + 1.0);
        }
        double all = 1 / overdispersion - 1;
        double alpha = share * all;
        double beta = all - alpha;
        double exactly = Math.exp(logWays(hit, of) + logProbability(hit, of));
        double tail = exactly;
        for (int k = hit; k < of; k++) {
            exactly *= (of - k) / (k + 1.0) * (alpha + k) / (beta + of - k - 1);
            tail += exactly;
        }
        return Math.min(1, tail);
    }

    /** Natural logarithm of the probability that certain {@code hit} ones, and no others, are hit. */
    double logProbability(int hit, int of) {
        if (overdispersion == 0) {
            return hit * Math.log(share) + (of - hit) * Math.log1p(-share);
        }
        double all = 1 / overdispersion - 1;
        double alpha = share * all;
        double beta = all - alpha;
        return LogBeta.value(alpha + hit, beta + of - hit) - LogBeta.value(alpha, beta);
    }

    /** ln of n over k, as 1 / ((n + 1) B(k + 1, n − k + 1)). */
    private static double logWays(int k, int n) {
        return -Math.log(n + 1.0) - LogBeta.value(k + 1.0, n - k + 1.0);
    }
}
