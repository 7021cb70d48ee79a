package org.demebook.season;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;

/** Gene diversity by season, a panel for each size of population and a line for each {@link Way}, as SVG. */
final class SeasonPlot {
    private static final Map<Way, String> LINES = lines();

    private static final double TOP = 40;
    private static final double HEIGHT = 190;
    private static final double WIDTH = 190;
    private static final double LOWEST = .6;

    private static Map<Way, String> lines() {
        var lines = new EnumMap<Way, String>(Way.class);
        lines.put(Way.PLAN, "stroke=\"#1b5e20\"");
        lines.put(Way.LIST_OF_THOSE_WHO_STAY, "stroke=\"#b5651d\" stroke-dasharray=\"10 2\"");
        lines.put(Way.LIST, "stroke=\"#8a5a00\" stroke-dasharray=\"6 3\"");
        lines.put(Way.LEAST_INBRED, "stroke=\"#2f5d8a\" stroke-dasharray=\"2 3\"");
        lines.put(Way.RANDOM, "stroke=\"#9b2d2d\" stroke-dasharray=\"8 3 2 3\"");
        return lines;
    }

    private final StringBuilder svg = new StringBuilder();
    private int panels;

    SeasonPlot() {
        add("""
                <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 760 300" role="img" aria-labelledby="t d" \
                font-family="system-ui, sans-serif" font-size="11">
                <title id="t">Gene diversity over thirty seasons</title>
                <desc id="d">Populations from eight founders, pairs chosen in five ways; the table has the figures.</desc>
                <rect width="100%%" height="100%%" fill="#fbfaf7"/>
                """);
        double x = 20;
        for (var line : LINES.entrySet()) {
            add("<path d=\"M %.0f 282 h 26\" fill=\"none\" stroke-width=\"2\" %s/>%n", x, line.getValue());
            add("<text x=\"%.0f\" y=\"286\" fill=\"#26331f\">%s</text>%n", x + 31, line.getKey().words);
            x += 55 + 5.6 * line.getKey().words.length();
        }
    }

    /** @param diversity by way, season and seed */
    void panel(int size, double[][][] diversity) {
        double left = 50 + 240 * panels++;
        add("<text x=\"%.0f\" y=\"26\" font-size=\"13\" fill=\"#26331f\">%d animals</text>%n", left, size);
        for (double level = LOWEST; level <= 1; level += .1) {
            add("<path d=\"M %.0f %.1f h %.0f\" stroke=\"#ddd6c8\"/>%n", left, y(level), WIDTH);
            add(
                    "<text x=\"%.0f\" y=\"%.1f\" text-anchor=\"end\" fill=\"#5c5c52\">%.1f</text>%n",
                    left - 6, y(level) + 4, level);
        }
        int seasons = diversity[0].length - 1;
        for (int season = 0; season <= seasons; season += 10) {
            double x = left + WIDTH * season / seasons;
            add(
                    "<text x=\"%.1f\" y=\"%.0f\" text-anchor=\"middle\" fill=\"#5c5c52\">%d</text>%n",
                    x, TOP + HEIGHT + 16, season);
        }
        for (var line : LINES.entrySet()) {
            var points = new StringBuilder();
            for (int season = 0; season <= seasons; season++) {
                double mean = Arrays.stream(diversity[line.getKey().ordinal()][season])
                        .average()
                        .orElseThrow();
                points.append(String.format(Locale.ROOT, "%.1f,%.1f ", left + WIDTH * season / seasons, y(mean)));
            }
            add(
                    "<polyline points=\"%s\" fill=\"none\" stroke-width=\"2\" %s/>%n",
                    points.toString().strip(), line.getValue());
        }
    }

    private static double y(double diversity) {
        return TOP + HEIGHT * (1 - diversity) / (1 - LOWEST);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }

    @Override
    public String toString() {
        return svg + "</svg>\n";
    }
}
