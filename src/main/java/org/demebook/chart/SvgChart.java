package org.demebook.chart;

import static org.demebook.chart.Markup.escaped;
import static org.demebook.chart.Markup.number;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** The picture: ground, lines, then symbols with their text, row by row, so that the keyboard goes through them as one reads. */
final class SvgChart {
    private final List<Figure> figures;
    private final List<Couple> couples;
    private final List<Box> boxes;
    private final Places places;
    private final Wording words;

    SvgChart(List<Figure> figures, List<Couple> couples, List<Box> boxes, Places places, Wording words) {
        this.figures = figures;
        this.couples = couples;
        this.boxes = boxes;
        this.places = places;
        this.words = words;
    }

    int width() {
        return (int) Math.ceil(places.width());
    }

    int height() {
        return (int) Math.ceil(places.height());
    }

    String draw(String title, String description) {
        var svg = new StringBuilder();
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" width=\"%d\" height=\"%d\""
                .formatted(width(), height()));
        svg.append(" viewBox=\"0 0 %d %d\" role=\"group\"".formatted(width(), height()));
        svg.append(" aria-labelledby=\"ancestry-chart-title\" aria-describedby=\"ancestry-chart-description\">\n");
        svg.append("<title id=\"ancestry-chart-title\">%s</title>\n".formatted(escaped(title)));
        svg.append("<desc id=\"ancestry-chart-description\">%s</desc>\n".formatted(escaped(description)));
        svg.append("<rect class=\"chart-ground\" width=\"%d\" height=\"%d\"/>\n".formatted(width(), height()));
        var lines = new CoupleLines(boxes, places);
        svg.append("<g aria-hidden=\"true\">\n");
        for (int couple = 0; couple < couples.size(); couple++) {
            svg.append(lines.of(couples.get(couple), places.bonds().get(couple)))
                    .append('\n');
        }
        svg.append("</g>\n");
        IntStream.range(0, figures.size())
                .boxed()
                .sorted(Comparator.comparing(
                                (Integer it) -> places.animals().get(it).y())
                        .thenComparing(it -> places.animals().get(it).x()))
                .forEach(it -> svg.append(animal(it)).append('\n'));
        return svg.append("</svg>").toString();
    }

    private String animal(int index) {
        var figure = figures.get(index);
        var box = boxes.get(index);
        var corner = places.animals().get(index);
        var head = box.head(corner);
        var said = escaped(said(index));
        var drawn =
                Symbols.of(figure, head.x() - Box.SYMBOL / 2, head.y()) + label(figure, box, box.textCorner(corner));
        var link = figure.link();
        if (link == null) {
            return "<g class=\"chart-animal\" role=\"img\" aria-label=\"%s\"><title>%s</title>%s</g>"
                    .formatted(said, said, drawn);
        }
        return "<a class=\"chart-animal\" href=\"%s\" aria-label=\"%s\"><title>%s</title>%s%s</a>"
                .formatted(escaped(link), said, said, target(box, corner), drawn);
    }

    /** What can be touched: symbol and text. */
    private static String target(Box box, Point corner) {
        return "<rect class=\"chart-target\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"/>"
                .formatted(
                        number(corner.x()),
                        number(corner.y() - 2),
                        number(box.portsWidth() + box.right()),
                        number(box.height() + 2));
    }

    /** In an inner picture of its own, which cuts off what a letter of unheard-of size would spill over others. */
    private static String label(Figure figure, Box box, Point corner) {
        var lines = box.lines();
        var svg = new StringBuilder("<svg x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" font-size=\"%s\">"
                .formatted(
                        number(corner.x()),
                        number(corner.y()),
                        number(box.textWidth()),
                        number(lines.size() * Box.LINE_HEIGHT),
                        number(TextWidth.FONT_SIZE)));
        for (int line = 0; line < lines.size(); line++) {
            var classes = figure.lines().isEmpty() ? "chart-words" : line == 0 ? "chart-name" : "chart-detail";
            svg.append(
                    "<text class=\"%s\" y=\"%s\">%s</text>\n" // read out, lines are words apart
                            .formatted(
                                    classes,
                                    number(line * Box.LINE_HEIGHT + TextWidth.FONT_SIZE - 1),
                                    escaped(lines.get(line))));
        }
        return svg.append("</svg>").toString();
    }

    private String said(int index) {
        var figure = figures.get(index);
        boolean related = couples.stream().anyMatch(it -> it.young().contains(index) && it.allRelated());
        return Telling.name(figure, words) + ", " + String.join(", ", Telling.details(figure, related, words))
                + parents(figure);
    }

    private String parents(Figure figure) {
        var said = new StringBuilder();
        if (figure.dam() != null) {
            said.append("; ").append(words.dam()).append(' ').append(name(figure.dam()));
        }
        for (var sire : figure.sires()) {
            said.append("; ")
                    .append(figure.sireCertain() ? words.sire() : words.possibleSire())
                    .append(' ')
                    .append(name(sire.key()));
        }
        return said.toString();
    }

    private String name(String key) {
        return figures.stream()
                .filter(it -> it.key().equals(key))
                .map(it -> Telling.name(it, words))
                .findFirst()
                .orElseThrow();
    }
}
