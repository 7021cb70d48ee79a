package org.demebook.chart;

import java.util.List;

/** Draws who descends from whom. */
public final class AncestryChart {
    private AncestryChart() {}

    /**
     * The chart of these animals, and its outline. Rows run from the oldest generation at the top; each animal is drawn once, each
     * link from a parent once. How many generations is the caller's choice: what is not among the figures is not drawn. The
     * same figures in the same order give the same text.
     *
     * @throws IllegalArgumentException if a key occurs twice, a parent is not among the figures, somebody would be their own
     *     ancestor, or a link leads out of this server
     */
    public static Drawing draw(List<Figure> animals, Wording words) {
        throw new UnsupportedOperationException();
    }

    /** Does the work that only the first chart has, a second or so; call it in the background at the start. */
    public static void warmUp() {}
}
