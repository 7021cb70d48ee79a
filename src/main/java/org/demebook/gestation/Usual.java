package org.demebook.gestation;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.taxon.TaxonProfile.Gestation;

/**
 * What is expected of a female of whom nothing is known: her own mean is normal with {@code meanDays} and {@code
 * spreadBetweenFemales}, each of her gestations normal about it with {@code spreadWithinFemale}. Counted from the shed, or
 * from the laying.
 *
 * @param intervals how many of the population's intervals it was estimated from; 0 when it is the profile's
 * @param females of how many females
 */
record Usual(double meanDays, double spreadBetweenFemales, double spreadWithinFemale, int intervals, int females) {
    /** So many intervals, of so many females, before the population's own data say more than the profile. */
    static final int INTERVALS = 8;

    static final int FEMALES = 4;

    /** The profile's spreads count like so many degrees of freedom, lest a few equal intervals promise a sure day. */
    private static final int PROFILE_WEIGHS = 4;

    /**
     * The profile's figures, or the population's own where it has enough of them.
     *
     * @param others intervals of the population's other females
     */
    static Usual of(Landmark landmark, Gestation profile, List<Interval> others) {
        var byFemale = others.stream()
                .filter(interval -> interval.from().landmark() == exact(landmark)
                        && interval.from().howKnown() != HowKnown.GUESSED
                        && interval.credible(profile))
                .collect(Collectors.groupingBy(
                        Interval::damId,
                        Collectors.mapping(interval -> interval.daysFromShed(profile), Collectors.toList())));
        int count = byFemale.values().stream().mapToInt(List::size).sum();
        return count < INTERVALS || byFemale.size() < FEMALES
                ? new Usual(
                        landmark.usualDays(profile), profile.spreadBetweenFemales(), profile.spreadWithinFemale(), 0, 0)
                : estimated(byFemale, count, profile);
    }

    /** Spreads are estimated from sheds and layings: an ovulation is dated too loosely for that. */
    private static Landmark exact(Landmark landmark) {
        return landmark == Landmark.OVULATION ? Landmark.POST_OVULATION_SHED : landmark;
    }

    /**
     * Random-effects analysis of variance for unequal numbers, by moments: Searle, Casella &amp; McCulloch (1992), Variance
     * Components, chapter 3 (from memory). The mean weighs each female by how surely her own mean is known; what remains
     * unsure of it is added to the spread between females.
     */
    private static Usual estimated(Map<UUID, List<Double>> byFemale, int count, Gestation profile) {
        int females = byFemale.size();
        double grandMean = byFemale.values().stream()
                        .flatMap(List::stream)
                        .mapToDouble(d -> d)
                        .sum()
                / count;
        double within = 0;
        double between = 0;
        double squares = 0;
        for (var days : byFemale.values()) {
            double mean = mean(days);
            within += days.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
            between += days.size() * (mean - grandMean) * (mean - grandMean);
            squares += (double) days.size() * days.size();
        }
        double withinVariance = pooled(within, count - females, square(profile.spreadWithinFemale()));
        double perFemale = (count - squares / count) / (females - 1);
        double moment = Math.max(0, (between / (females - 1) - withinVariance) / perFemale);
        double betweenVariance = pooled(moment * (females - 1), females - 1, square(profile.spreadBetweenFemales()));

        double weights = 0;
        double weighted = 0;
        for (var days : byFemale.values()) {
            double weight = 1 / (betweenVariance + withinVariance / days.size());
            weights += weight;
            weighted += weight * mean(days);
        }
        return new Usual(
                weighted / weights,
                Math.sqrt(betweenVariance + 1 / weights),
                Math.sqrt(withinVariance),
                count,
                females);
    }

    private static double pooled(double sumOfSquares, int degrees, double profileVariance) {
        return (sumOfSquares + PROFILE_WEIGHS * profileVariance) / (degrees + PROFILE_WEIGHS);
    }

    private static double mean(List<Double> days) {
        return days.stream().mapToDouble(d -> d).sum() / days.size();
    }

    private static double square(double x) {
        return x * x;
    }

    boolean isOfThePopulation() {
        return intervals > 0;
    }
}
