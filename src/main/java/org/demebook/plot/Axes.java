package org.demebook.plot;

import java.util.List;
import java.util.function.IntFunction;

/** Two axes with their grid, and where a value lies between them. */
final class Axes {
    private static final double ABOVE = 28;
    /** A second line of text above the plot. */
    private static final double LINE = 16;

    private static final double BELOW = 42;
    private static final double RIGHT = 12;
    private static final double BESIDE_TICK = 7;
    private static final double BETWEEN_LABELS = 10;

    final double left;
    final double top;
    final double bottom;
    final double width;
    private final double low;
    private final double high;
    private final double from;
    private final double to;

    /**
     * @param labelled whether there is something to be written above the plot, below the name of its axis
     * @param up ticks from the axis's beginning to its end
     * @param from the first place along, and its last
     */
    Axes(Size size, double height, boolean labelled, List<Tick> up, double from, double to) {
        this.left = Math.min(widest(up), size.width / 3.0) + BESIDE_TICK;
        this.width = size.width - left - RIGHT;
        this.top = labelled ? ABOVE + LINE : ABOVE;
        this.bottom = height - BELOW;
        this.low = up.get(0).at();
        this.high = up.get(up.size() - 1).at();
        this.from = from;
        this.to = to;
    }

    double x(double at) {
        return from == to ? left + width / 2 : left + (at - from) / (to - from) * width;
    }

    double y(double value) {
        return bottom - (value - low) / (high - low) * (bottom - top);
    }

    /** Grid and labels; as many ticks along as their labels leave room for. */
    void draw(Canvas canvas, String upName, List<Tick> up, String alongName, IntFunction<List<Tick>> along) {
        var grid = new Outline();
        for (var tick : up) {
            double y = y(tick.at());
            grid.line(left, y, left + width, y);
            canvas.text("end", left - BESIDE_TICK, y + 4.5, Letters.fit(tick.label(), left - BESIDE_TICK));
        }
        canvas.shape("grid", grid);
        var axis = new Outline().line(left, bottom, left + width, bottom);
        for (var tick : fitting(along)) {
            double x = x(tick.at());
            axis.line(x, bottom, x, bottom + 5);
            canvas.centred("", x, bottom + 19, tick.label(), 0, left + width + RIGHT);
        }
        canvas.shape("axis", axis);
        canvas.text("name", 1, 13, Letters.fit(upName, left + width - 1));
        canvas.text("name end", left + width, bottom + 36, Letters.fit(alongName, width));
    }

    /** The most ticks whose labels do not touch. */
    private List<Tick> fitting(IntFunction<List<Tick>> along) {
        for (int atMost = 12; atMost > 1; atMost--) {
            var ticks = along.apply(atMost);
            if (ticks.size() < 2 || x(ticks.get(1).at()) - x(ticks.get(0).at()) >= widest(ticks) + BETWEEN_LABELS) {
                return ticks;
            }
        }
        return along.apply(1);
    }

    private static double widest(List<Tick> ticks) {
        return ticks.stream()
                .mapToDouble(tick -> Letters.width(tick.label()))
                .max()
                .orElse(0);
    }
}
