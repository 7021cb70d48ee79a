package org.demebook.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Text and numbers as SVG takes them. */
final class Markup {
    private Markup() {}

    /**
     * A text in an element or a quoted attribute. What XML 1.0 does not allow (control characters, halves of surrogate pairs) becomes the
     * replacement character.
     */
    static String escaped(String text) {
        var escaped = new StringBuilder();
        text.codePoints().forEach(letter -> {
            switch (letter) {
                case '&' -> escaped.append("&amp;");
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '"' -> escaped.append("&quot;");
                case '\'' -> escaped.append("&#39;");
                case '\t', '\n', '\r' -> escaped.append(' ');
                default -> escaped.appendCodePoint(allowed(letter) ? letter : 0xFFFD);
            }
        });
        return escaped.toString();
    }

    private static boolean allowed(int letter) {
        return letter >= 0x20 && !(letter >= 0xD800 && letter <= 0xDFFF) && letter != 0xFFFE && letter != 0xFFFF;
    }

    static String number(double pixels) {
        var text = String.format(Locale.ROOT, "%.1f", pixels);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /** A line through these points, as path data. */
    static String path(List<Point> points) {
        return points.stream()
                .map(point -> number(point.x()) + " " + number(point.y()))
                .collect(Collectors.joining("L", "M", ""));
    }
}
