package org.demebook.plot;

import java.util.List;

/**
 * A picture for one width of the page, ready to be written as SVG.
 *
 * @param size {@code wide} or {@code narrow}, of which a page shows the one that fits; {@code whole} and {@code rows} are shown at
 *     their own size, {@code big} ones smaller on paper
 * @param width of its view box; a unit is a pixel where the picture is shown at its own size
 */
public record Frame(String size, int width, int height, List<Shape> shapes, List<Text> texts) {
    /** A path and the classes that colour it. */
    public record Shape(String css, String d) {}

    /** A label, its baseline beginning, centred or ending at a point as its classes say; turned ones run upwards. */
    public record Text(String css, double x, double y, String text, boolean turned) {}
}
