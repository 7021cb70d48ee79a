package org.demebook.disclosure;

import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.demebook.disclosure.Plan.Line;
import org.demebook.disclosure.Rules.Need;

/** What of a tally, and of the change between two, is sensitive by the rules. */
final class Sensitivity {
    private Sensitivity() {}

    /** The sensitive figures, each with what it needs. */
    static Map<Figure, Need> figures(Tally tally, Rules rules) {
        var needs = new LinkedHashMap<Figure, Need>();
        for (var figure : tally.plan().figures()) {
            Tally.WAYS.stream()
                    .map(way -> rules.need(tally.shares(figure, way), tally.waivers()))
                    .flatMap(Optional::stream)
                    .reduce(Sensitivity::stricter)
                    .ifPresent(need -> needs.put(figure, need));
        }
        return needs;
    }

    /** What the change of a figure needs; empty where it is not sensitive. */
    static Optional<Need> change(Tally before, Tally after, Figure figure, Rules rules) {
        return Tally.WAYS.stream()
                .map(way -> rules.need(after.changes(before, figure, way), after.waivers()))
                .flatMap(Optional::stream)
                .reduce(Sensitivity::stricter);
    }

    private static Need stricter(Need one, Need other) {
        return new Need(one.reason(), Math.max(one.below(), other.below()), Math.max(one.above(), other.above()));
    }

    /**
     * Rows and columns with everything in one class, of somebody who has not waived protection: that the other classes are
     * empty tells the class of each.
     */
    static List<Line> inOneClass(Tally tally) {
        return tally.plan().lines().stream()
                .filter(line -> line.parts().size() > 1 && filled(tally, line).size() == 1)
                .filter(line -> Tally.WAYS.stream()
                        .map(way ->
                                tally.shares(filled(tally, line).get(0), way).keySet())
                        .anyMatch(respondents -> !tally.waivers().containsAll(respondents)))
                .toList();
    }

    private static List<Figure> filled(Tally tally, Line line) {
        return parts(tally, line).stream()
                .filter(figure -> tally.value(figure) > 0)
                .toList();
    }

    /** The classes of such a row or column that are empty. */
    static List<Figure> empty(Tally tally, Line line) {
        return parts(tally, line).stream()
                .filter(figure -> tally.value(figure) == 0)
                .toList();
    }

    private static List<Figure> parts(Tally tally, Line line) {
        return line.parts().stream().map(tally.plan()::figure).toList();
    }

    /**
     * The places of figures that are always told: those that are empty and hide no class. An empty cell that is withheld
     * protects little, since anybody may guess that it is empty.
     */
    static BitSet alwaysTold(Tally tally) {
        var hiding = inOneClass(tally).stream()
                .flatMap(line -> empty(tally, line).stream())
                .map(Figure::name)
                .toList();
        var told = new BitSet();
        var figures = tally.plan().figures();
        for (int f = 0; f < figures.size(); f++) {
            told.set(
                    f,
                    tally.value(figures.get(f)) == 0
                            && !hiding.contains(figures.get(f).name()));
        }
        return told;
    }
}
