package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;

/** Collects what a picture consists of. Coordinates are rounded to tenths of a unit. */
final class Canvas {
    private final List<Frame.Shape> shapes = new ArrayList<>();
    private final List<Frame.Text> texts = new ArrayList<>();

    void shape(String css, Outline outline) {
        if (!outline.isEmpty()) {
            shapes.add(new Frame.Shape(css, outline.path()));
        }
    }

    void text(String css, double x, double y, String text) {
        if (!text.isEmpty()) {
            texts.add(new Frame.Text(css, Outline.tenths(x), Outline.tenths(y), text, false));
        }
    }

    /** Centred on a place, or as near to it as the bounds allow. */
    void centred(String css, double x, double y, String text, double left, double right) {
        var shown = Letters.fit(text, right - left);
        double half = Letters.width(shown) / 2;
        text("mid" + css, Math.max(left + half, Math.min(x, right - half)), y, shown);
    }

    /** Running upwards. */
    void turned(String css, double x, double y, String text) {
        if (!text.isEmpty()) {
            texts.add(new Frame.Text(css, Outline.tenths(x), Outline.tenths(y), text, true));
        }
    }

    Frame frame(String size, double width, double height) {
        return new Frame(
                size, (int) Math.ceil(width), (int) Math.ceil(height), List.copyOf(shapes), List.copyOf(texts));
    }

    List<Frame.Shape> shapes() {
        return List.copyOf(shapes);
    }
}
