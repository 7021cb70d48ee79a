package org.demebook.chart;

import static org.demebook.chart.Markup.number;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.demebook.chart.Drawing.LegendEntry;
import org.demebook.chart.Figure.Sex;
import org.demebook.chart.Figure.Sight;

/** The symbols and lines that occur in a chart, each once. */
final class Legend {
    private static final double WIDTH = 60;
    private static final double HEIGHT = Box.SYMBOL + 14;

    private final List<Figure> figures;
    private final List<LegendEntry> entries = new ArrayList<>();

    private Legend(List<Figure> figures) {
        this.figures = figures;
    }

    static List<LegendEntry> of(List<Figure> figures, List<Couple> couples, Wording words) {
        var legend = new Legend(figures);
        legend.symbol(it -> it.sex() == Sex.FEMALE, Figure.of("", Sex.FEMALE), words.female());
        legend.symbol(it -> it.sex() == Sex.MALE, Figure.of("", Sex.MALE), words.male());
        legend.symbol(it -> it.sex() == Sex.UNKNOWN, Figure.of("", Sex.UNKNOWN), words.sexUnknown());
        legend.symbol(Figure::dead, Figure.of("", Sex.UNKNOWN).asDead(), words.dead());
        legend.symbol(Figure::founder, Figure.of("", Sex.UNKNOWN).asFounder(), words.founder());
        legend.symbol(it -> it.sight() == Sight.WITHHELD, Figure.withheld("", Sex.UNKNOWN), words.withheld());
        legend.symbol(it -> it.sight() == Sight.UNKNOWN, Figure.unknown("", Sex.UNKNOWN), words.unknownParent());
        legend.symbol(Figure::asked, Figure.of("", Sex.UNKNOWN).asAsked(), words.asked());
        legend.line(couples.stream().anyMatch(it -> it.related().contains(true)), false, true, words.parentsRelated());
        legend.line(couples.stream().anyMatch(it -> !it.sireCertain()), true, false, words.possibleSire());
        return legend.entries;
    }

    private void symbol(Predicate<Figure> occurs, Figure example, String meaning) {
        if (figures.stream().anyMatch(occurs)) {
            add(Symbols.of(example, (WIDTH - Box.SYMBOL) / 2, 7), meaning);
        }
    }

    private void line(boolean occurs, boolean candidate, boolean related, String meaning) {
        if (occurs) {
            var start = new Point(WIDTH / 2, 4);
            var line = List.of(start, new Point(WIDTH / 2, HEIGHT - 4));
            add(
                    CoupleLines.parentLine(line, candidate, related) + (candidate ? CoupleLines.badge(start) : ""),
                    meaning);
        }
    }

    private void add(String drawn, String meaning) {
        var size = "width=\"%s\" height=\"%s\" viewBox=\"0 0 %s %s\""
                .formatted(number(WIDTH), number(HEIGHT), number(WIDTH), number(HEIGHT));
        entries.add(new LegendEntry(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" %s aria-hidden=\"true\" focusable=\"false\">%s</svg>"
                        .formatted(size, drawn),
                meaning));
    }
}
