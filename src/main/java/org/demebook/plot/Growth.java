package org.demebook.plot;

import java.util.List;

/**
 * The masses of one animal by age, within what its littermates weighed.
 *
 * @param frames empty if the animal was never weighed
 */
public record Growth(Caption caption, List<Frame> frames, List<Key> keys, Table table) {

    /** What one animal, or its littermates, are called. */
    public record Words(String animal, String littermates, String notWeighed) {}

    /** A day's mass of the animal. */
    public record Weighing(double ageDays, double massGrams) {}

    /** The least and the greatest mass among littermates of an age. */
    public record Range(double ageDays, double leastGrams, double greatestGrams) {}

    /** Weighings and ranges in the order of age; they need not be of the same days. */
    public static Growth of(
            Caption caption, Along age, Measure mass, List<Weighing> weighings, List<Range> littermates, Words words) {
        var own = new Series(
                words.animal(),
                weighings.stream()
                        .map(each -> Series.Point.of(each.ageDays(), each.massGrams()))
                        .toList());
        var others = new Series(
                words.littermates(),
                littermates.stream()
                        .map(each -> Series.Point.between(each.ageDays(), each.leastGrams(), each.greatestGrams()))
                        .toList());
        if (!own.hasValues()) {
            return new Growth(caption, List.of(), List.of(), new Table(List.of(), List.of()));
        }
        var lines = new Lines(
                age, mass, List.of(own, others), null, new Trend.Words(words.notWeighed(), words.littermates(), ""));
        return new Growth(caption, lines.frames(), lines.keys(), lines.table());
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
