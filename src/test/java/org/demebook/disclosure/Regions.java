package org.demebook.disclosure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.demebook.disclosure.Plan.Line;
import org.demebook.disclosure.Tally.Counted;

/** Two-way tables for tests, written cell by cell: {@code Middle·F} is {@code D9 E2 F1}. */
final class Regions {
    static final String TOTAL = "total";

    private Regions() {}

    /** All cells of some rows and columns, their totals and the total of all. */
    static Plan plan(List<String> rows, List<String> columns) {
        var base = new ArrayList<String>();
        var figures = new ArrayList<Figure>();
        var lines = new ArrayList<Line>();
        for (var row : rows) {
            for (var column : columns) {
                var cell = row + "·" + column;
                base.add(cell);
                figures.add(new Figure(cell, cell::equals));
            }
            figures.add(new Figure(row + "·" + TOTAL, cell -> cell.startsWith(row + "·")));
            lines.add(new Line(
                    row + "·" + TOTAL,
                    columns.stream().map(column -> row + "·" + column).toList()));
        }
        for (var column : columns) {
            figures.add(new Figure(TOTAL + "·" + column, cell -> cell.endsWith("·" + column)));
            lines.add(new Line(
                    TOTAL + "·" + column,
                    rows.stream().map(row -> row + "·" + column).toList()));
        }
        figures.add(new Figure(TOTAL, cell -> true));
        return new Plan(List.of(base), figures, lines);
    }

    /** The table of three regions that the tests of the whole room share: A to C in the North, D to F, G to I. */
    static Map<String, String> threeRegions() {
        var cells = new LinkedHashMap<String, String>();
        cells.put("North·F", "A4 B3 C2");
        cells.put("North·M", "A3 B4 C1");
        cells.put("North·U", "A6 C5 B4");
        cells.put("Middle·F", "D9 E2 F1");
        cells.put("Middle·M", "D2 E3 F3");
        cells.put("Middle·U", "D8");
        cells.put("South·F", "G3 H2 I2");
        cells.put("South·M", "G1 H1");
        cells.put("South·U", "G2 H4 I3");
        return cells;
    }

    static Tally tally(Map<String, String> cells, String... waivers) {
        var rows = new ArrayList<String>();
        var columns = new ArrayList<String>();
        for (var cell : cells.keySet()) {
            var parts = cell.split("·");
            if (!rows.contains(parts[0])) {
                rows.add(parts[0]);
            }
            if (!columns.contains(parts[1])) {
                columns.add(parts[1]);
            }
        }
        var units = new ArrayList<Counted>();
        cells.forEach((cell, shares) -> {
            for (var share : shares.isBlank() ? new String[0] : shares.split(" ")) {
                var who = share.substring(0, 1);
                for (int unit = 0; unit < Integer.parseInt(share.substring(1)); unit++) {
                    units.add(new Counted(cell + " " + who + unit, cell, who, who));
                }
            }
        });
        return new Tally(plan(rows, columns), units, Set.of(waivers));
    }

    /** All but some figures. */
    static Release withholding(Tally tally, String... withheld) {
        var told = names(tally);
        told.removeAll(Set.of(withheld));
        return new Release(tally, told);
    }

    static Set<String> withheld(Release release) {
        var withheld = names(release.tally());
        withheld.removeAll(release.told());
        return withheld;
    }

    static int suppressed(Release release) {
        return withheld(release).stream()
                .mapToInt(name -> release.tally().value(release.tally().plan().figure(name)))
                .sum();
    }

    private static Set<String> names(Tally tally) {
        var names = new TreeSet<String>();
        tally.plan().figures().forEach(figure -> names.add(figure.name()));
        return names;
    }
}
