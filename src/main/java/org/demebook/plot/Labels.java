package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;

/** Finds a place for the names of points where they hide the least. */
final class Labels {
    private static final double RISE = 10;
    private static final double FALL = 3.5;
    private static final double STRIDE = 4;
    private static final int OUTSIDE = 1000;

    private final Box room;
    private final List<Box> taken = new ArrayList<>();

    private record Box(double left, double top, double right, double bottom) {
        boolean meets(Box other) {
            return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
        }

        boolean holds(Box other) {
            return left <= other.left && other.right <= right && top <= other.top && other.bottom <= bottom;
        }
    }

    /** Labels stay within these bounds. */
    Labels(double left, double top, double right, double bottom) {
        this.room = new Box(left, top, right, bottom);
    }

    void avoid(double x, double y, double radius) {
        taken.add(new Box(x - radius, y - radius, x + radius, y + radius));
    }

    void avoidLine(double fromX, double fromY, double toX, double toY) {
        int strides = (int) Math.ceil(Math.hypot(toX - fromX, toY - fromY) / STRIDE);
        for (int i = 0; i <= strides; i++) {
            double part = strides == 0 ? 0 : i / (double) strides;
            avoid(fromX + part * (toX - fromX), fromY + part * (toY - fromY), 1);
        }
    }

    /** Beside the point, or a little further off, above or below it; of places that are as good the first. */
    void write(Canvas canvas, double x, double y, String text) {
        var shown = Letters.fit(text, room.right - room.left);
        double width = Letters.width(shown);
        int leastHidden = Integer.MAX_VALUE;
        var best = new Box(0, 0, 0, 0);
        for (double away : new double[] {10, 20, 34}) {
            for (double down : new double[] {4.5, -away, away + 9}) {
                for (double left : new double[] {x - away - width, x + away, x - width / 2, x - width, x}) {
                    var box = new Box(left, y + down - RISE, left + width, y + down + FALL);
                    int hidden = room.holds(box) ? 0 : OUTSIDE;
                    hidden += (int) taken.stream().filter(box::meets).count();
                    if (hidden < leastHidden) {
                        leastHidden = hidden;
                        best = box;
                    }
                }
            }
        }
        double left = Math.max(room.left, Math.min(best.left, room.right - width));
        double baseline = Math.max(room.top + RISE, Math.min(best.bottom - FALL, room.bottom - FALL));
        canvas.text("halo", left, baseline, shown);
        taken.add(new Box(left, baseline - RISE, left + width, baseline + FALL));
    }
}
