package org.demebook.disclosure;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What is counted for a release: units in base cells, each with two respondents that stand behind it.
 *
 * <p>A respondent is a whole household: holdings are added up before anything is judged. Where holder and owner differ,
 * figures are judged both ways and the stricter view holds; each knows the unit.
 */
public final class Tally {
    /**
     * A unit that is counted.
     *
     * @param unit the same in every release, so that it is seen what changed
     * @param baseCells where it is in each division of the plan
     * @param holder respondent with whom it is
     * @param owner respondent whose it is
     */
    public record Counted(String unit, List<String> baseCells, String holder, String owner) {
        public Counted {
            baseCells = List.copyOf(baseCells);
        }

        /** Of a plan with one division. */
        public Counted(String unit, String baseCell, String holder, String owner) {
            this(unit, List.of(baseCell), holder, owner);
        }
    }

    /** The ways in which a unit is somebody's. */
    static final List<Function<Counted, String>> WAYS = List.of(Counted::holder, Counted::owner);

    private final Plan plan;
    private final List<Counted> units;
    private final Set<String> waivers;

    /**
     * @param waivers respondents who have waived the protection of their own numbers
     * @throws IllegalArgumentException if a unit is not in one base cell of each division
     */
    public Tally(Plan plan, List<Counted> units, Set<String> waivers) {
        this.plan = plan;
        this.units = List.copyOf(units);
        this.waivers = Set.copyOf(waivers);
        var known = plan.divisions().stream().map(Set::copyOf).toList();
        for (var unit : units) {
            requireInEach(known, unit.baseCells());
        }
    }

    private static void requireInEach(List<Set<String>> divisions, List<String> cells) {
        if (cells.size() != divisions.size()) {
            throw new IllegalArgumentException(
                    "One base cell of each of %d divisions, not %s".formatted(divisions.size(), cells));
        }
        for (int division = 0; division < cells.size(); division++) {
            if (!divisions.get(division).contains(cells.get(division))) {
                throw new IllegalArgumentException("No base cell is called " + cells.get(division));
            }
        }
    }

    public Plan plan() {
        return plan;
    }

    /** How many units a figure counts. */
    public int value(Figure figure) {
        return (int) units.stream().filter(in(figure)).count();
    }

    /** How many respondents stand behind a figure, by holder or by owner, whichever are fewer. */
    public int respondents(Figure figure) {
        return WAYS.stream().mapToInt(way -> shares(figure, way).size()).min().orElseThrow();
    }

    Set<String> waivers() {
        return waivers;
    }

    /** Everybody who stands behind a unit, in order. */
    Set<String> everybody() {
        var everybody = new TreeSet<String>();
        for (var unit : units) {
            everybody.add(unit.holder());
            everybody.add(unit.owner());
        }
        return everybody;
    }

    /** What each respondent contributes to a figure. */
    Map<String, Integer> shares(Figure figure, Function<Counted, String> way) {
        var shares = new TreeMap<String, Integer>();
        units.stream().filter(in(figure)).forEach(unit -> shares.merge(way.apply(unit), 1, Integer::sum));
        return shares;
    }

    /**
     * What each respondent contributes to the change of a figure since another tally: what came in less what went out. A
     * unit that is in the figure both times has not changed it, whosever it is now; who contributes nothing on balance is
     * left out.
     */
    Map<String, Integer> changes(Tally earlier, Figure figure, Function<Counted, String> way) {
        var before = earlier.inside(figure);
        var now = inside(figure);
        var changes = new TreeMap<String, Integer>();
        now.forEach((unit, counted) -> {
            if (!before.containsKey(unit)) {
                changes.merge(way.apply(counted), 1, Integer::sum);
            }
        });
        before.forEach((unit, counted) -> {
            if (!now.containsKey(unit)) {
                changes.merge(way.apply(counted), -1, Integer::sum);
            }
        });
        changes.values().removeIf(change -> change == 0);
        return changes;
    }

    /** How many units of each base cell somebody knows of. */
    int[] knownTo(String respondent) {
        var cells = plan.baseCells();
        var known = new int[cells.size()];
        var places = new HashMap<String, Integer>();
        for (int cell = 0; cell < known.length; cell++) {
            places.put(cells.get(cell), cell);
        }
        for (var unit : units) {
            if (unit.holder().equals(respondent) || unit.owner().equals(respondent)) {
                unit.baseCells().forEach(cell -> known[places.get(cell)]++);
            }
        }
        return known;
    }

    private Map<String, Counted> inside(Figure figure) {
        var inside = new TreeMap<String, Counted>();
        units.stream().filter(in(figure)).forEach(unit -> inside.put(unit.unit(), unit));
        return inside;
    }

    private static Predicate<Counted> in(Figure figure) {
        return unit -> unit.baseCells().stream().anyMatch(figure.covers());
    }
}
