package org.demebook.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * The room of an animal: its symbol with a strip below it in which its lines part, its text to the right of both, and to the left room
 * for the arrow if it has one.
 *
 * @param portsWidth where lines may leave; the symbol stands above its middle
 * @param height of symbol or text, and the strip
 * @param left free to the left of that, for the arrow
 * @param right free to the right of it, for the text
 * @param textWidth width of the text
 * @param lines what is written, cut where it is too long
 */
record Box(double portsWidth, double height, double left, double right, double textWidth, List<String> lines) {
    static final double SYMBOL = 30;
    static final double STRIP = 12;
    static final double PORT_PITCH = 13;
    static final double DOT_RADIUS = 3;
    static final double LINE_HEIGHT = 15;
    static final double TEXT_GAP = 8;
    private static final double ARROW_ROOM = 26;
    private static final double WIDEST_TEXT = 140;

    /**
     * @param couples in how many couples it is
     * @param mostLines lines of text of the animal with most of them: all boxes are of one height
     */
    static Box of(Figure figure, int couples, Wording words, int mostLines) {
        var lines = Telling.lines(figure, words);
        var cut = new ArrayList<String>();
        double widest = 0;
        for (var line : lines) {
            cut.add(TextWidth.cut(line, WIDEST_TEXT));
            widest = Math.max(widest, TextWidth.of(cut.get(cut.size() - 1)));
        }
        double portsWidth = Math.max(SYMBOL, couples * PORT_PITCH);
        double besides = (portsWidth - SYMBOL) / 2;
        return new Box(
                portsWidth,
                Math.max(SYMBOL, mostLines * LINE_HEIGHT) + STRIP,
                figure.asked() ? Math.max(0, ARROW_ROOM - besides) : 0,
                Math.max(0, TEXT_GAP + Math.ceil(widest) - besides),
                Math.ceil(widest),
                cut);
    }

    /** The middle of the symbol's upper edge, where the line from its parents ends. */
    Point head(Point corner) {
        return new Point(corner.x() + portsWidth / 2, corner.y() + symbolTop());
    }

    /** The middle of the symbol's lower edge, where its own lines begin. */
    Point foot(Point corner) {
        return new Point(corner.x() + portsWidth / 2, corner.y() + symbolTop() + SYMBOL);
    }

    Point textCorner(Point corner) {
        return new Point(
                corner.x() + (portsWidth + SYMBOL) / 2 + TEXT_GAP,
                corner.y() + (height - STRIP - lines.size() * LINE_HEIGHT) / 2);
    }

    private double symbolTop() {
        return (height - STRIP - SYMBOL) / 2;
    }
}
