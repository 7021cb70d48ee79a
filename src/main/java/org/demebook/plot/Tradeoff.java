package org.demebook.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import org.demebook.plot.Table.Cell;

/**
 * The curve between two figures of which more of one costs some of the other, such as gene diversity and the inbreeding of young.
 *
 * @param frames empty if there is nothing to draw
 */
public record Tradeoff(Caption caption, List<Frame> frames, List<Key> keys, Table table) {
    private static final double RADIUS = 4;

    /** What a point of the plot stands for. */
    public enum Kind {
        /** One that could be had: on the curve. */
        POSSIBLE,
        /** The one chosen or in force: on the curve, marked and named. */
        CHOSEN,
        /** One beside the curve to compare with, named. */
        OTHER,
        /** How far the figure along can go at best: a line across. */
        BOUND
    }

    /** @param up not a number for a bound of which only {@code along} is known */
    public record Choice(Name name, double along, double up, Kind kind) {
        public Choice {
            if (!Double.isFinite(along) || !(Double.isFinite(up) || kind == Kind.BOUND && Double.isNaN(up))) {
                throw new IllegalArgumentException(name.text() + ": a point is finite: " + along + ", " + up);
            }
        }
    }

    /** What the kinds are called in the legend, and what stands above the names and the kinds; {@code unknown} where a bound has no value. */
    public record Words(
            String name, String kind, String possible, String chosen, String other, String bound, String unknown) {
        String of(Kind kind) {
            return switch (kind) {
                case POSSIBLE -> possible;
                case CHOSEN -> chosen;
                case OTHER -> other;
                case BOUND -> bound;
            };
        }
    }

    public static Tradeoff of(Caption caption, List<Choice> choices, Measure along, Measure up, Words words) {
        var sorted = choices.stream()
                .sorted(Comparator.comparingDouble(Choice::along))
                .toList();
        boolean nothing = sorted.stream().allMatch(choice -> Double.isNaN(choice.up()));
        var frames = nothing
                ? List.<Frame>of()
                : List.of(frame(Size.WIDE, 320, sorted, along, up), frame(Size.NARROW, 270, sorted, along, up));
        return new Tradeoff(caption, frames, keys(sorted, words), table(sorted, along, up, words));
    }

    private static Frame frame(Size size, int height, List<Choice> choices, Measure along, Measure up) {
        var upTicks = around(choices.stream().mapToDouble(Choice::up), up);
        var alongTicks = around(choices.stream().mapToDouble(Choice::along), along);
        double from = alongTicks.get(0).at();
        double to = alongTicks.get(alongTicks.size() - 1).at();
        var axes = new Axes(size, height, false, upTicks, from, to);
        var canvas = new Canvas();
        axes.draw(
                canvas,
                up.name(),
                upTicks,
                along.name(),
                atMost -> Ticks.within(from, to, atMost, along.decimals(), along.numbers()));
        var bound = new Outline();
        var curve = new Outline();
        var labels = new Labels(axes.left + 2, axes.top, axes.left + axes.width, axes.bottom - 2);
        Choice before = null;
        for (var choice : choices) {
            double x = axes.x(choice.along());
            double y = Double.isNaN(choice.up()) ? axes.top + 8 : axes.y(choice.up());
            labels.avoid(x, y, RADIUS);
            if (choice.kind() == Kind.BOUND) {
                bound.line(x, axes.top, x, axes.bottom);
                labels.avoidLine(x, axes.top, x, axes.bottom);
            } else if (choice.kind() != Kind.OTHER) {
                if (before == null) {
                    curve.move(x, y);
                } else {
                    curve.to(x, y);
                    labels.avoidLine(axes.x(before.along()), axes.y(before.up()), x, y);
                }
                before = choice;
            }
        }
        canvas.shape("bound", bound);
        canvas.shape("line c1", curve);
        for (var kind : Kind.values()) {
            drawPoints(canvas, axes, labels, choices, kind);
        }
        return canvas.frame(size.css, size.width, height);
    }

    private static List<Tick> around(DoubleStream values, Measure measure) {
        var known = values.filter(value -> !Double.isNaN(value)).summaryStatistics();
        double low = measure.fromZero() ? Math.min(0, known.getMin()) : known.getMin();
        double high = measure.fromZero() ? Math.max(0, known.getMax()) : known.getMax();
        return Ticks.around(low, high, 5, measure.decimals(), measure.numbers());
    }

    private static void drawPoints(Canvas canvas, Axes axes, Labels labels, List<Choice> choices, Kind kind) {
        var marks = new Outline();
        for (var choice : choices) {
            if (choice.kind() != kind) {
                continue;
            }
            double x = axes.x(choice.along());
            boolean known = !Double.isNaN(choice.up());
            double y = known ? axes.y(choice.up()) : axes.top + 8;
            if (known) {
                marks.mark(mark(kind), x, y, radius(kind));
            }
            if (kind != Kind.POSSIBLE) {
                labels.write(canvas, x, y, choice.name().text());
            }
        }
        canvas.shape(css(kind), marks);
    }

    private static Mark mark(Kind kind) {
        return switch (kind) {
            case POSSIBLE -> Mark.CIRCLE;
            case CHOSEN -> Mark.DIAMOND;
            case OTHER -> Mark.SQUARE;
            case BOUND -> Mark.TRIANGLE;
        };
    }

    private static double radius(Kind kind) {
        return kind == Kind.CHOSEN ? 1.6 * RADIUS : RADIUS;
    }

    private static String css(Kind kind) {
        return switch (kind) {
            case POSSIBLE -> "mark hollow c1";
            case CHOSEN -> "mark chosen";
            case OTHER -> "mark c2";
            case BOUND -> "mark reached";
        };
    }

    private static List<Key> keys(List<Choice> choices, Words words) {
        var keys = new ArrayList<Key>();
        double middle = Key.HEIGHT / 2.0;
        for (var kind : Kind.values()) {
            if (choices.stream().noneMatch(choice -> choice.kind() == kind)) {
                continue;
            }
            var sample = new Canvas();
            if (kind == Kind.BOUND) {
                sample.shape("bound", new Outline().line(Key.WIDTH / 2.0, 0, Key.WIDTH / 2.0, Key.HEIGHT));
            } else {
                if (kind == Kind.POSSIBLE) {
                    sample.shape("line c1", new Outline().line(1, middle, Key.WIDTH - 1, middle));
                }
                sample.shape(css(kind), new Outline().mark(mark(kind), Key.WIDTH / 2.0, middle, RADIUS));
            }
            keys.add(new Key(sample.shapes(), words.of(kind)));
        }
        return List.copyOf(keys);
    }

    private static Table table(List<Choice> choices, Measure along, Measure up, Words words) {
        var rows = new ArrayList<Table.Row>();
        for (var choice : choices) {
            rows.add(new Table.Row(
                    choice.name(),
                    List.of(
                            Cell.words(words.of(choice.kind())),
                            Cell.number(along.write(choice.along())),
                            Cell.number(Double.isNaN(choice.up()) ? words.unknown() : up.write(choice.up())))));
        }
        var heads = List.of(
                Cell.words(words.name()), Cell.words(words.kind()), Cell.number(along.name()), Cell.number(up.name()));
        return new Table(heads, rows);
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
