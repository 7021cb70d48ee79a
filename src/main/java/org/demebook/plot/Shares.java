package org.demebook.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.demebook.plot.Table.Cell;

/**
 * What each of many contributes, the most first, beside what is expected or aimed at: founders of a population, for example.
 *
 * @param frames empty if there is nothing to draw
 */
public record Shares(Caption caption, List<Frame> frames, List<Key> keys, Table table) {
    public static final int MOST = 60;

    private static final double ROW = 22;
    private static final double BAR = 14;

    /**
     * @param value not negative
     * @param target not negative; not a number where nothing is aimed at
     */
    public record Share(Name name, double value, double target) {
        public Share {
            if (!(value >= 0) || target < 0 || Double.isInfinite(value) || Double.isInfinite(target)) {
                throw new IllegalArgumentException(name.text() + ": a share is not negative: " + value + ", " + target);
            }
        }
    }

    /** What stands above the names, the shares and the targets; {@code noTarget} where there is none. */
    public record Words(String name, String share, String target, String noTarget) {}

    /** @throws IllegalArgumentException with more than 60 shares */
    public static Shares of(Caption caption, List<Share> shares, Measure measure, Words words) {
        if (shares.size() > MOST) {
            throw new IllegalArgumentException(shares.size() + " shares: at most " + MOST + " can be read");
        }
        var sorted = shares.stream()
                .sorted(Comparator.comparingDouble(Share::value).reversed())
                .toList();
        boolean targets = sorted.stream().anyMatch(share -> !Double.isNaN(share.target()));
        var frames = sorted.isEmpty()
                ? List.<Frame>of()
                : List.of(frame(Size.WIDE, sorted, measure), frame(Size.NARROW, sorted, measure));
        return new Shares(caption, frames, keys(targets, words), table(sorted, measure, targets, words));
    }

    private static Frame frame(Size size, List<Share> shares, Measure measure) {
        double gutter = 0;
        double value = 0;
        double most = 0;
        for (var share : shares) {
            gutter = Math.max(gutter, Letters.width(share.name().text()));
            value = Math.max(value, Letters.width(measure.write(share.value())));
            most = Math.max(most, Math.max(share.value(), Double.isNaN(share.target()) ? 0 : share.target()));
        }
        gutter = Math.min(gutter, size.width * .35) + 8;
        value = Math.min(value, size.width * .3);
        double unit = (size.width - gutter - value - 10) / (most == 0 ? 1 : most);

        var canvas = new Canvas();
        var bars = new Outline();
        var targets = new Outline();
        for (int i = 0; i < shares.size(); i++) {
            var share = shares.get(i);
            double y = i * ROW + (ROW - BAR) / 2;
            double baseline = y + BAR / 2 + 4.5;
            canvas.text("end", gutter - 8, baseline, Letters.fit(share.name().text(), gutter - 8));
            if (share.value() > 0) {
                bars.rectangle(gutter, y, share.value() * unit, BAR);
            }
            canvas.text("end", size.width - 1, baseline, Letters.fit(measure.write(share.value()), value));
            if (!Double.isNaN(share.target())) {
                targets.line(gutter + share.target() * unit, y - 3, gutter + share.target() * unit, y + BAR + 3);
            }
        }
        double height = shares.size() * ROW;
        canvas.shape("bar c1", bars);
        canvas.shape("target under", targets);
        canvas.shape("target", targets);
        canvas.shape("axis", new Outline().line(gutter, 0, gutter, height));
        return canvas.frame(size.css, size.width, height);
    }

    private static List<Key> keys(boolean targets, Words words) {
        var share = new Canvas();
        share.shape("bar c1", new Outline().rectangle(0, 1, Key.WIDTH, Key.HEIGHT - 2));
        if (!targets) {
            return List.of(new Key(share.shapes(), words.share()));
        }
        var target = new Canvas();
        target.shape("target", new Outline().line(Key.WIDTH / 2.0, 0, Key.WIDTH / 2.0, Key.HEIGHT));
        return List.of(new Key(share.shapes(), words.share()), new Key(target.shapes(), words.target()));
    }

    private static Table table(List<Share> shares, Measure measure, boolean targets, Words words) {
        var rows = new ArrayList<Table.Row>();
        for (var share : shares) {
            var cells = new ArrayList<Cell>();
            cells.add(Cell.number(measure.write(share.value())));
            if (targets) {
                cells.add(Cell.number(Double.isNaN(share.target()) ? words.noTarget() : measure.write(share.target())));
            }
            rows.add(new Table.Row(share.name(), cells));
        }
        var heads = new ArrayList<>(List.of(Cell.words(words.name()), Cell.number(words.share())));
        if (targets) {
            heads.add(Cell.number(words.target()));
        }
        return new Table(heads, rows);
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
