package org.demebook.disclosure;

import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The tables of a release, as sums over common base cells; tables that share base cells are linked through them.
 *
 * @param baseCells the finest classes, every one that a unit can be in
 * @param figures cells and totals of all tables, each name once
 * @param lines rows and columns, looked at for group disclosure
 */
public record Plan(List<String> baseCells, List<Figure> figures, List<Line> lines) {
    /** A row or a column. */
    public record Line(String total, List<String> parts) {}

    public Plan {
        baseCells = List.copyOf(baseCells);
        figures = List.copyOf(figures);
        lines = List.copyOf(lines);
        var names = new HashSet<String>();
        for (var figure : figures) {
            if (!names.add(figure.name())) {
                throw new IllegalArgumentException("Two figures are called " + figure.name());
            }
        }
    }

    /** @throws IllegalArgumentException if no figure has the name */
    public Figure figure(String name) {
        return figures.stream()
                .filter(figure -> figure.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("No figure is called " + name));
    }

    /** The places in {@link #baseCells} that a figure covers, ascending. */
    int[] covered(Figure figure) {
        return IntStream.range(0, baseCells.size())
                .filter(cell -> figure.covers().test(baseCells.get(cell)))
                .toArray();
    }
}
