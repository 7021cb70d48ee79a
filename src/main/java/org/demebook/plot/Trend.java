package org.demebook.plot;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One to four courses over years or days: lines with their intervals, what is past and what is projected.
 *
 * <p>A missing value is a gap; a value after {@link Now} is drawn dashed and hollow. Lines differ in the shape of their points.
 *
 * @param frames empty if there is nothing to draw
 */
public record Trend(Caption caption, List<Frame> frames, List<Key> keys, Table table) {
    public static final int MOST = 4;

    /**
     * @param missing stands in the table where a value is missing
     * @param interval the name of the band around a line
     * @param projected the name of what lies after now
     */
    public record Words(String missing, String interval, String projected) {}

    /** Where the past ends: what lies after it is projected. */
    public record Now(double at, String label) {}

    /** @throws IllegalArgumentException with more than four series */
    public static Trend of(
            Caption caption, Along along, Measure measure, List<Series> series, @Nullable Now now, Words words) {
        if (series.size() > MOST) {
            throw new IllegalArgumentException(
                    series.size() + " lines in one plot: at most " + MOST + " can be told apart");
        }
        var lines = new Lines(along, measure, List.copyOf(series), now, words);
        return new Trend(caption, lines.frames(), lines.keys(), lines.table());
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
