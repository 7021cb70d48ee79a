package org.demebook.chart;

import java.util.ArrayList;
import java.util.List;

/** What there is to say of a figure. */
final class Telling {
    private Telling() {}

    /** What stands beside its symbol. */
    static List<String> lines(Figure figure, Wording words) {
        if (!figure.lines().isEmpty()) {
            return figure.lines();
        }
        return switch (figure.sight()) {
            case SHOWN -> List.of(sex(figure.sex(), words));
            case WITHHELD -> List.of(words.withheld());
            case UNKNOWN -> List.of(words.unknownParent());
        };
    }

    static String name(Figure figure, Wording words) {
        return lines(figure, words).get(0);
    }

    /** What its symbol and its further lines say. */
    static List<String> details(Figure figure, boolean parentsRelated, Wording words) {
        var lines = lines(figure, words);
        var details = new ArrayList<>(lines.subList(1, lines.size()));
        if (!(figure.lines().isEmpty() && figure.sight() == Figure.Sight.SHOWN)) {
            details.add(sex(figure.sex(), words));
        }
        if (figure.dead()) {
            details.add(words.dead());
        }
        if (figure.founder()) {
            details.add(words.founder());
        }
        if (!figure.lines().isEmpty() && figure.sight() != Figure.Sight.SHOWN) {
            details.add(figure.sight() == Figure.Sight.WITHHELD ? words.withheld() : words.unknownParent());
        }
        if (parentsRelated) {
            details.add(words.parentsRelated());
        }
        if (figure.asked()) {
            details.add(words.asked());
        }
        return details;
    }

    static String sex(Figure.Sex sex, Wording words) {
        return switch (sex) {
            case MALE -> words.male();
            case FEMALE -> words.female();
            case UNKNOWN -> words.sexUnknown();
        };
    }
}
