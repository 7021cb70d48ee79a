package org.demebook.census;

import java.util.Locale;

/** A number of keepers as a range. */
final class CountRange {
    static final int FEWEST = 3;

    private CountRange() {}

    static String of(int households) {
        int[] from = {FEWEST, 6, 11, 21, 51};
        if (households < from[0]) {
            return "fewer than 3";
        }
        for (int i = 1; i < from.length; i++) {
            if (households < from[i]) {
                return String.format(Locale.ROOT, "%d to %d", from[i - 1], from[i] - 1);
            }
        }
        return "more than 50";
    }
}
