package org.demebook.gestation;

import java.util.List;
import org.demebook.taxon.TaxonProfile.Gestation;

/**
 * What is known of one female's own mean: normal–normal shrinkage of her earlier intervals towards what is usual. With a
 * prior N(μ, τ²) and intervals xᵢ of variance σ² the mean is (μ/τ² + Σxᵢ/σ²) / (1/τ² + n/σ²), the variance 1 / (1/τ² + n/σ²);
 * an interval from a sign whose day is in doubt has the variance of that doubt besides.
 *
 * <p>Source: Gelman et al., Bayesian Data Analysis, section 2.5 (from memory).
 *
 * @param meanDays from the shed, or from the laying
 * @param spreadDays standard deviation of what is known of her mean
 */
public record OwnMean(double meanDays, double spreadDays) {
    static OwnMean of(Usual usual, List<Interval> own, Gestation profile) {
        double precision = 1 / (usual.spreadBetweenFemales() * usual.spreadBetweenFemales());
        double weighted = usual.meanDays() * precision;
        for (var interval : own) {
            double known = 1
                    / (usual.spreadWithinFemale() * usual.spreadWithinFemale()
                            + interval.from().variance());
            precision += known;
            weighted += known * interval.daysFromShed(profile);
        }
        return new OwnMean(weighted / precision, Math.sqrt(1 / precision));
    }
}
