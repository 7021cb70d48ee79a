package org.demebook.disclosure;

import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The tables of a release, as sums over common base cells; tables that share base cells are linked through them.
 *
 * <p>Where tables are not crossed, each may have a division of its own: these are linked by their sums alone, which are the
 * same. Nothing is lost by that, since any contents of two divisions with one sum are margins of a crossed table, also where
 * some units are known (the other units' margins have one sum too).
 *
 * @param divisions ways in which all units are divided: the finest classes of each, every one that a unit can be in; a figure
 *     is of one of them
 * @param figures cells and totals of all tables, each name once
 * @param lines rows and columns, looked at for group disclosure
 */
public record Plan(List<List<String>> divisions, List<Figure> figures, List<Line> lines) {
    /** A row or a column. */
    public record Line(String total, List<String> parts) {}

    public Plan {
        divisions = divisions.stream().map(List::copyOf).toList();
        figures = List.copyOf(figures);
        lines = List.copyOf(lines);
        var names = new HashSet<String>();
        for (var figure : figures) {
            if (!names.add(figure.name())) {
                throw new IllegalArgumentException("Two figures are called " + figure.name());
            }
        }
    }

    /** The base cells of all divisions, one after the other. */
    public List<String> baseCells() {
        return divisions.stream().flatMap(List::stream).toList();
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
        var cells = baseCells();
        return IntStream.range(0, cells.size())
                .filter(cell -> figure.covers().test(cells.get(cell)))
                .toArray();
    }
}
