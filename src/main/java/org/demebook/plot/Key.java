package org.demebook.plot;

import java.util.List;

/** A line of the legend: a sample, 28 wide and 14 high, and what it means. */
public record Key(List<Frame.Shape> sample, String text) {
    static final int WIDTH = 28;
    static final int HEIGHT = 14;
}
