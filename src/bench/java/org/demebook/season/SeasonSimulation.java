package org.demebook.season;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

/**
 * What ten seasons do to a population from eight founders, by the way in which its pairs are chosen; the table of
 * docs/methods/season.md. Arguments: how many seeds, where the picture goes, sizes of populations.
 */
public final class SeasonSimulation {
    private static final int SEASONS = 10;

    private SeasonSimulation() {}

    public static void main(String[] arguments) throws IOException {
        int seeds = Integer.parseInt(arguments[0]);
        var plot = new SeasonPlot();
        for (int i = 2; i < arguments.length; i++) {
            simulate(Integer.parseInt(arguments[i]), seeds, plot);
        }
        Files.writeString(Path.of(arguments[1]), plot.toString());
    }

    private static void simulate(int size, int seeds, SeasonPlot plot) {
        double[][][] diversity = new double[Way.values().length][SEASONS + 1][seeds];
        double[][] inbreeding = new double[Way.values().length][seeds];
        for (int seed = 0; seed < seeds; seed++) {
            for (var way : Way.values()) {
                var generations = new Generations(size, seed);
                diversity[way.ordinal()][0][seed] = generations.geneDiversity();
                for (int season = 1; season <= SEASONS; season++) {
                    generations.breed(way);
                    diversity[way.ordinal()][season][seed] = generations.geneDiversity();
                }
                inbreeding[way.ordinal()][seed] = generations.meanInbreeding();
            }
        }
        plot.panel(size, diversity);
        double[] plan = diversity[Way.PLAN.ordinal()][SEASONS];
        for (var way : Way.values()) {
            double[] after = diversity[way.ordinal()][SEASONS];
            double[] less = new double[seeds];
            Arrays.setAll(less, seed -> plan[seed] - after[seed]);
            System.out.printf(
                    Locale.ROOT,
                    "| %d | %s | %.4f | %.4f | %.4f ± %.4f | %d of %d | %.4f |%n",
                    size,
                    way,
                    mean(diversity[way.ordinal()][0]),
                    mean(after),
                    mean(less),
                    halfInterval(less),
                    Arrays.stream(less).filter(one -> one < -1e-12).count(),
                    seeds,
                    mean(inbreeding[way.ordinal()]));
        }
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
