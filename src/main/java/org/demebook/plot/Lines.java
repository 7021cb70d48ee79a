package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;
import org.demebook.plot.Series.Point;
import org.demebook.plot.Table.Cell;
import org.jspecify.annotations.Nullable;

/** Draws courses as lines, and writes them as a table. */
final class Lines {
    private static final Mark[] MARKS = {Mark.CIRCLE, Mark.SQUARE, Mark.TRIANGLE, Mark.DIAMOND};
    private static final double RADIUS = 3.5;
    /** Nearer to each other than this, points of a line stand for themselves no more. */
    private static final double CROWDED = 10;

    private final Along along;
    private final Measure measure;
    private final List<Series> series;
    private final Trend.@Nullable Now now;
    private final Trend.Words words;
    private final SortedSet<Double> places = new TreeSet<>();

    Lines(Along along, Measure measure, List<Series> series, Trend.@Nullable Now now, Trend.Words words) {
        this.along = along;
        this.measure = measure;
        this.series = series;
        this.now = now;
        this.words = words;
        for (var one : series) {
            one.points().forEach(point -> places.add(point.at()));
        }
    }

    List<Frame> frames() {
        if (values().findAny().isEmpty()) {
            return List.of();
        }
        int more = now == null ? 0 : 16;
        return List.of(frame(Size.WIDE, 300 + more), frame(Size.NARROW, 240 + more));
    }

    private DoubleStream values() {
        return series.stream()
                .flatMap(one -> one.points().stream())
                .flatMapToDouble(point -> DoubleStream.of(point.value(), point.low(), point.high()))
                .filter(value -> !Double.isNaN(value));
    }

    private Frame frame(Size size, int height) {
        double low = values().min().orElseThrow();
        double high = values().max().orElseThrow();
        var up = Ticks.around(
                measure.fromZero() ? Math.min(0, low) : low,
                measure.fromZero() ? Math.max(0, high) : high,
                5,
                measure.decimals(),
                measure.numbers());
        double from = now == null ? places.first() : Math.min(places.first(), now.at());
        double to = now == null ? places.last() : Math.max(places.last(), now.at());
        var axes = new Axes(size, height, now != null, up, from, to);
        var canvas = new Canvas();
        for (int i = 0; i < series.size(); i++) {
            drawBand(canvas, axes, i);
        }
        axes.draw(canvas, measure.name(), up, along.name(), atMost -> along.ticks(from, to, atMost));
        drawNow(canvas, axes);
        for (int i = 0; i < series.size(); i++) {
            drawLine(canvas, axes, i);
        }
        return canvas.frame(size.css, size.width, height);
    }

    private void drawBand(Canvas canvas, Axes axes, int i) {
        var band = new Outline();
        for (var run : runs(series.get(i).points(), Point::hasInterval)) {
            if (run.size() == 1) {
                var only = run.get(0);
                double top = axes.y(only.high());
                band.rectangle(axes.x(only.at()) - 3, top, 6, axes.y(only.low()) - top);
                continue;
            }
            band.move(axes.x(run.get(0).at()), axes.y(run.get(0).high()));
            run.stream().skip(1).forEach(point -> band.to(axes.x(point.at()), axes.y(point.high())));
            for (int back = run.size() - 1; back >= 0; back--) {
                band.to(axes.x(run.get(back).at()), axes.y(run.get(back).low()));
            }
            band.close();
        }
        canvas.shape("band " + colour(i), band);
    }

    private void drawNow(Canvas canvas, Axes axes) {
        if (now == null) {
            return;
        }
        double x = axes.x(now.at());
        canvas.shape("now", new Outline().line(x, axes.top - 6, x, axes.bottom));
        canvas.centred(" now", x, axes.top - 10, now.label(), 0, axes.left + axes.width);
    }

    private void drawLine(Canvas canvas, Axes axes, int i) {
        var past = new Outline();
        var projected = new Outline();
        var pastMarks = new Outline();
        var projectedMarks = new Outline();
        for (var run : runs(series.get(i).points(), Point::known)) {
            double lastMarked = Double.NEGATIVE_INFINITY;
            for (int p = 0; p < run.size(); p++) {
                var point = run.get(p);
                double x = axes.x(point.at());
                double y = axes.y(point.value());
                if (p > 0) {
                    var before = run.get(p - 1);
                    (isProjected(point) ? projected : past).line(axes.x(before.at()), axes.y(before.value()), x, y);
                }
                if (x - lastMarked >= CROWDED || p == run.size() - 1) {
                    (isProjected(point) ? projectedMarks : pastMarks).mark(MARKS[i], x, y, RADIUS);
                    lastMarked = x;
                }
            }
        }
        canvas.shape("line " + colour(i), past);
        canvas.shape("line projected " + colour(i), projected);
        canvas.shape("mark " + colour(i), pastMarks);
        canvas.shape("mark hollow " + colour(i), projectedMarks);
    }

    private boolean isProjected(Point point) {
        return now != null && point.at() > now.at();
    }

    private static List<List<Point>> runs(List<Point> points, Predicate<Point> there) {
        var runs = new ArrayList<List<Point>>();
        boolean gap = true;
        for (var point : points) {
            if (there.test(point)) {
                if (gap) {
                    runs.add(new ArrayList<>());
                }
                runs.get(runs.size() - 1).add(point);
            }
            gap = !there.test(point);
        }
        return runs;
    }

    private static String colour(int i) {
        return "c" + (i + 1);
    }

    List<Key> keys() {
        var keys = new ArrayList<Key>();
        double middle = Key.HEIGHT / 2.0;
        for (int i = 0; i < series.size(); i++) {
            var one = series.get(i);
            if (one.hasValues()) {
                var sample = new Canvas();
                sample.shape("line " + colour(i), new Outline().line(1, middle, Key.WIDTH - 1, middle));
                sample.shape("mark " + colour(i), new Outline().mark(MARKS[i], Key.WIDTH / 2.0, middle, RADIUS));
                keys.add(new Key(sample.shapes(), one.name()));
            }
            if (one.hasIntervals()) {
                var sample = new Canvas();
                sample.shape("band " + colour(i), new Outline().rectangle(1, 1, Key.WIDTH - 2, Key.HEIGHT - 2));
                keys.add(new Key(sample.shapes(), one.hasValues() ? intervalName(one) : one.name()));
            }
        }
        if (series.stream()
                .anyMatch(one -> one.points().stream().anyMatch(point -> point.known() && isProjected(point)))) {
            var sample = new Canvas();
            sample.shape("line projected", new Outline().line(1, middle, Key.WIDTH - 1, middle));
            sample.shape("mark hollow", new Outline().mark(Mark.CIRCLE, Key.WIDTH / 2.0, middle, RADIUS));
            keys.add(new Key(sample.shapes(), words.projected()));
        }
        return List.copyOf(keys);
    }

    private String intervalName(Series one) {
        return series.size() == 1 ? words.interval() : one.name() + ": " + words.interval();
    }

    Table table() {
        var heads = new ArrayList<>(List.of(Cell.words(along.name())));
        for (var one : series) {
            if (one.hasValues()) {
                heads.add(Cell.number(one.name()));
            }
            if (one.hasIntervals()) {
                heads.add(Cell.number(one.hasValues() ? intervalName(one) : one.name()));
            }
        }
        var rows = new ArrayList<Table.Row>();
        for (double place : places) {
            var cells = new ArrayList<Cell>();
            for (var one : series) {
                var point = one.points().stream()
                        .filter(each -> each.at() == place)
                        .findAny()
                        .orElse(Point.missing(place));
                if (one.hasValues()) {
                    cells.add(Cell.number(point.known() ? measure.write(point.value()) : words.missing()));
                }
                if (one.hasIntervals()) {
                    cells.add(Cell.number(point.hasInterval() ? interval(point) : words.missing()));
                }
            }
            rows.add(new Table.Row(Name.of(placeName(place)), cells));
        }
        return new Table(heads, rows);
    }

    private String placeName(double place) {
        boolean after = now != null && place > now.at();
        return after ? along.write(place) + " · " + words.projected() : along.write(place);
    }

    private String interval(Point point) {
        return measure.write(point.low()) + " – " + measure.write(point.high());
    }
}
