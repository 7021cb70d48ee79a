package org.demebook.season;

import java.util.Arrays;

/**
 * Where a figure that chance decides came to lie.
 *
 * @param mean of all draws
 * @param standardError of the mean, by the number of draws
 * @param low at least 5 % of the draws are not above it
 * @param high at least 95 % of the draws are not above it
 */
public record Interval(double mean, double standardError, double low, double high) {
    static Interval of(double[] draws) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        double mean = Arrays.stream(sorted).sum() / sorted.length;
        double squares = 0;
        for (double draw : sorted) {
            squares += (draw - mean) * (draw - mean);
        }
        double error = sorted.length < 2 ? Double.NaN : Math.sqrt(squares / (sorted.length - 1) / sorted.length);
        return new Interval(mean, error, sorted[place(.05, sorted.length)], sorted[place(.95, sorted.length)]);
    }

    private static int place(double share, int draws) {
        return (int) Math.ceil(share * draws - 1e-9) - 1;
    }
}
