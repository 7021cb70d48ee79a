package org.demebook.season;

import java.util.Arrays;
import java.util.Locale;

/**
 * What an outlook said of ten seasons, and what became of them: docs/methods/outlook.md. Arguments: the first seed, how many,
 * draws of each outlook, sizes of populations.
 */
public final class OutlookSimulation {
    private static final int SEASONS = 10;

    private OutlookSimulation() {}

    public static void main(String[] arguments) {
        int first = Integer.parseInt(arguments[0]);
        int seeds = Integer.parseInt(arguments[1]);
        int draws = Integer.parseInt(arguments[2]);
        for (int i = 3; i < arguments.length; i++) {
            simulate(Integer.parseInt(arguments[i]), first, seeds, draws);
        }
    }

    private static void simulate(int size, int first, int seeds, int draws) {
        double[] expected = new double[seeds];
        double[] drawn = new double[seeds];
        double[] became = new double[seeds];
        int within = 0;
        long nanos = 0;
        for (int i = 0; i < seeds; i++) {
            int seed = first + i;
            var generations = new Generations(size, seed);
            var ahead = generations.ahead();
            long start = System.nanoTime();
            expected[i] = ahead.expected(SEASONS).last().geneDiversity();
            nanos += System.nanoTime() - start;
            var interval = ahead.drawn(SEASONS, draws, seed).seasons().get(SEASONS);
            drawn[i] = interval.mean();
            for (int season = 0; season < SEASONS; season++) {
                generations.breed(Way.PLAN);
            }
            became[i] = generations.geneDiversity();
            within += interval.low() <= became[i] && became[i] <= interval.high() ? 1 : 0;
        }
        System.out.printf(
                Locale.ROOT,
                "| %d | %.4f | %.4f | %.4f | %d of %d | %.0f ms |%n",
                size,
                mean(expected),
                mean(drawn),
                mean(became),
                within,
                seeds,
                nanos / 1e6 / seeds / SEASONS);
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }
}
