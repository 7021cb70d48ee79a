package org.demebook.chart;

import static org.demebook.chart.Markup.number;

import org.demebook.chart.Figure.Sex;
import org.demebook.chart.Figure.Sight;

/** The symbols of animals, {@link Box#SYMBOL} wide and high; their look is in pages/chart.css. */
final class Symbols {
    private static final double HALF = Box.SYMBOL / 2;
    private static final double SLASH = HALF + 5;

    private Symbols() {}

    /** @param x left edge of the symbol; @param y upper edge */
    static String of(Figure figure, double x, double y) {
        double middleX = x + HALF;
        double middleY = y + HALF;
        var svg = new StringBuilder(shape(figure.sex(), classes(figure), x, y));
        if (figure.sight() == Sight.UNKNOWN) {
            svg.append("<text class=\"chart-query\" x=\"%s\" y=\"%s\" text-anchor=\"middle\" font-size=\"16\">?</text>"
                    .formatted(number(middleX), number(middleY + 6)));
        }
        if (figure.dead()) {
            svg.append("<path class=\"chart-slash\" d=\"M%s %sL%s %s\"/>"
                    .formatted(
                            number(middleX - SLASH),
                            number(middleY + SLASH),
                            number(middleX + SLASH),
                            number(middleY - SLASH)));
        }
        if (figure.asked()) {
            svg.append(arrow(x, y + Box.SYMBOL));
        }
        return svg.toString();
    }

    private static String classes(Figure figure) {
        return "chart-symbol"
                + (figure.founder() ? " chart-founder" : "")
                + (figure.sight() == Sight.WITHHELD ? " chart-withheld" : "");
    }

    private static String shape(Sex sex, String classes, double x, double y) {
        return switch (sex) {
            case MALE ->
                "<rect class=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/>"
                        .formatted(classes, number(x), number(y), number(Box.SYMBOL), number(Box.SYMBOL));
            case FEMALE ->
                "<circle class=\"%s\" cx=\"%s\" cy=\"%s\" r=\"%s\"/>"
                        .formatted(classes, number(x + HALF), number(y + HALF), number(HALF));
            case UNKNOWN ->
                "<path class=\"%s\" d=\"M%s %sl%s %sl-%s %sl-%s -%sz\"/>"
                        .formatted(
                                classes,
                                number(x + HALF),
                                number(y),
                                number(HALF),
                                number(HALF),
                                number(HALF),
                                number(HALF),
                                number(HALF),
                                number(HALF));
        };
    }

    /** From the lower left to the lower left corner of the symbol. */
    private static String arrow(double cornerX, double cornerY) {
        double tipX = cornerX - 3;
        double tipY = cornerY - 9;
        return "<path class=\"chart-arrow\" d=\"M%s %sL%s %s\"/><path class=\"chart-arrow-head\" d=\"M%s %sl-12 -1l4.6 9.4z\"/>"
                .formatted(
                        number(tipX - 21),
                        number(tipY + 10),
                        number(tipX - 6),
                        number(tipY + 3),
                        number(tipX),
                        number(tipY));
    }
}
