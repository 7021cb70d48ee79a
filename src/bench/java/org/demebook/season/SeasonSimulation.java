package org.demebook.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * What thirty seasons do to a population from eight founders, by the way in which its pairs are chosen; the table of
 * docs/methods/season.md. Arguments: the first seed, how many, where the picture goes, sizes of populations.
 */
public final class SeasonSimulation {
    private static final int SEASONS = 30;
    private static final int[] TOLD = {10, 30};

    private SeasonSimulation() {}

    public static void main(String[] arguments) throws IOException {
        int first = Integer.parseInt(arguments[0]);
        int seeds = Integer.parseInt(arguments[1]);
        var plot = new SeasonPlot();
        for (int i = 3; i < arguments.length; i++) {
            int size = Integer.parseInt(arguments[i]);
            double[][][] diversity = new double[Way.values().length][SEASONS + 1][seeds];
            double[][][] inbreeding = new double[Way.values().length][SEASONS + 1][seeds];
            IntStream.range(0, seeds).parallel().forEach(seed -> simulate(size, first, seed, diversity, inbreeding));
            plot.panel(size, diversity);
            for (int season : TOLD) {
                for (var way : Way.values()) {
                    tell(size, season, way, diversity, inbreeding);
                }
            }
        }
        Files.writeString(Path.of(arguments[2]), plot.toString());
    }

    private static void simulate(int size, int first, int seed, double[][][] diversity, double[][][] inbreeding) {
        for (var way : Way.values()) {
            var generations = new Generations(size, (long) first + seed);
            for (int season = 0; season <= SEASONS; season++) {
                if (season > 0) {
                    generations.breed(way);
                }
                diversity[way.ordinal()][season][seed] = generations.geneDiversity();
                inbreeding[way.ordinal()][season][seed] = generations.meanInbreeding();
            }
        }
    }

    private static void tell(int size, int season, Way way, double[][][] diversity, double[][][] inbreeding) {
        double[] plan = diversity[Way.PLAN.ordinal()][season];
        double[] after = diversity[way.ordinal()][season];
        double[] less = new double[plan.length];
        Arrays.setAll(less, seed -> plan[seed] - after[seed]);
        System.out.printf(
                Locale.ROOT,
                "| %d | %d | %s | %.4f | %s | %.4f |%n",
                size,
                season,
                way.words,
                mean(after),
                way == Way.PLAN
                        ? "– | –"
                        : String.format(
                                Locale.ROOT,
                                "%.4f ± %.4f | %d of %d",
                                mean(less),
                                halfInterval(less),
                                Arrays.stream(less).filter(one -> one < -1e-12).count(),
                                less.length),
                mean(inbreeding[way.ordinal()][season]));
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    /** Half of the 95 % interval of the mean, normal approximation. */
    private static double halfInterval(double[] values) {
        double mean = mean(values);
        double squares = Arrays.stream(values)
                .map(value -> (value - mean) * (value - mean))
                .sum();
        return 1.96 * Math.sqrt(squares / (values.length - 1) / values.length);
    }
}
