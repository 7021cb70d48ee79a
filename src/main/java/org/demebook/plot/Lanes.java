package org.demebook.plot;

import java.time.LocalDate;
import java.util.List;

/** Draws the lanes of a life line. */
final class Lanes {
    private static final double TOP = 6;
    private static final double BELOW = 28;
    private static final double RADIUS = 5;
    private static final double MARGIN = 8;

    private final List<Lifeline.Lane> lanes;
    private final LocalDate from;
    private final LocalDate to;
    private final Period period;
    private final Dates dates;

    Lanes(List<Lifeline.Lane> lanes, LocalDate from, LocalDate to, Period period, Dates dates) {
        this.lanes = lanes;
        this.from = from;
        this.to = to;
        this.period = period;
        this.dates = dates;
    }

    /** On a narrow page the name of a lane stands above it, else before it. */
    Frame frame(Size size) {
        boolean above = size == Size.NARROW;
        double gutter = above ? 0 : Math.min(170, longestName() + 14);
        double lane = above ? 44 : 32;
        double bottom = TOP + lanes.size() * lane;
        var scale = new Scale(gutter + MARGIN, size.width - gutter - 2 * MARGIN);
        var canvas = new Canvas();
        drawDays(canvas, scale, bottom, size.width);
        for (int i = 0; i < lanes.size(); i++) {
            var one = lanes.get(i);
            double floor = TOP + (i + 1) * lane;
            double middle = floor - (above ? 13 : 16);
            canvas.text(
                    "halo name",
                    0,
                    above ? floor - 27 : middle + 4.5,
                    Letters.fit(one.name(), above ? size.width : gutter - 8));
            canvas.shape("lane", new Outline().line(scale.left - MARGIN, floor, size.width, floor));
            if (one.condensed()) {
                drawCounts(canvas, scale, one, floor, above ? 22 : 26, i);
            } else {
                drawEvents(canvas, scale, one, middle, i);
            }
        }
        return canvas.frame(size.css, size.width, bottom + BELOW);
    }

    /** From the first day to the last. */
    private final class Scale {
        final double left;
        final double width;

        Scale(double left, double width) {
            this.left = left;
            this.width = width;
        }

        double x(LocalDate day) {
            double span = to.toEpochDay() - from.toEpochDay();
            double part = span == 0 ? .5 : (day.toEpochDay() - from.toEpochDay()) / span;
            return left + Math.max(0, Math.min(1, part)) * width;
        }
    }

    private double longestName() {
        return lanes.stream()
                .mapToDouble(lane -> Letters.width(lane.name()))
                .max()
                .orElse(0);
    }

    private void drawDays(Canvas canvas, Scale scale, double bottom, double width) {
        var grid = new Outline();
        for (var tick : ticks(scale)) {
            double x = scale.x(LocalDate.ofEpochDay((long) tick.at()));
            grid.line(x, TOP, x, bottom + 5);
            canvas.centred("", x, bottom + 19, tick.label(), 0, width);
        }
        canvas.shape("grid", grid);
    }

    private List<Tick> ticks(Scale scale) {
        for (int atMost = 12; atMost > 1; atMost--) {
            var ticks = DayTicks.within(from, to, atMost, dates);
            double widest = ticks.stream()
                    .mapToDouble(tick -> Letters.width(tick.label()))
                    .max()
                    .orElse(0);
            if (ticks.size() * (widest + 10) <= scale.width) {
                return ticks;
            }
        }
        return DayTicks.within(from, to, 1, dates);
    }

    private static void drawEvents(Canvas canvas, Scale scale, Lifeline.Lane lane, double middle, int i) {
        var spans = new Outline();
        var marks = new Outline();
        for (var event : lane.events()) {
            double x = scale.x(event.on());
            if (event.until() != null) {
                spans.rectangle(x, middle - 3, Math.max(2, scale.x(event.until()) - x), 6);
            }
            marks.mark(lane.mark(), x, middle, RADIUS);
        }
        canvas.shape("span " + colour(i), spans);
        canvas.shape(
                "mark " + (lane.mark() == Mark.CROSS || lane.mark() == Mark.STROKE ? "stroke " : "") + colour(i),
                marks);
    }

    private void drawCounts(Canvas canvas, Scale scale, Lifeline.Lane lane, double floor, double height, int i) {
        var counts = Lifeline.counts(lane, period);
        int most = counts.values().stream().mapToInt(count -> count).max().orElse(1);
        var bars = new Outline();
        counts.forEach((begin, count) -> {
            double x = scale.x(begin);
            double width = Math.max(1.2, scale.x(period.end(begin)) - x - .8);
            double bar = Math.max(2, height * count / most);
            bars.rectangle(x, floor - bar, width, bar);
        });
        canvas.shape("bar " + colour(i), bars);
    }

    private static String colour(int i) {
        return "c" + (i % 6 + 1);
    }
}
