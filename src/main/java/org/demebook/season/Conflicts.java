package org.demebook.season;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Why a season is impossible: a smallest set of constraints that contradict each other, or one of which none can be left out. */
final class Conflicts {
    /** Sets of constraints that are tried; some milliseconds each with 80 females and 60 males. */
    private static final int MOST_ASKED = 2_000;

    private final Season season;
    private final Set<Constraint> givenUp = new HashSet<>();

    private Conflicts(Season season) {
        this.season = season;
    }

    /** Of an impossible season. */
    static ImpossibleSeason of(Season season, Watch watch) {
        var irreducible = irreducible(season);
        var cut = CutProgram.of(season);
        var known = cut.map(CutProgram.Found::constraints)
                .filter(found -> found.size() < irreducible.size())
                .map(found -> irreducible(only(season, found)))
                .orElse(irreducible);
        if (!season.hasTravelLimits()) {
            return new ImpossibleSeason(
                    known, cut.map(CutProgram.Found::smallest).orElse(false));
        }
        var smallest = smallest(season, known, watch);
        return new ImpossibleSeason(smallest.orElse(known), smallest.isPresent());
    }

    private static Season only(Season season, List<Constraint> kept) {
        var rest = new HashSet<>(season.constraints());
        rest.removeAll(kept);
        return season.without(rest);
    }

    private static Optional<List<Constraint>> smallest(Season season, List<Constraint> known, Watch watch) {
        try {
            return new HittingSets(season, MOST_ASKED, watch).smallest(known);
        } catch (ArithmeticException undecided) {
            // what is known stays a contradiction
            return Optional.empty();
        }
    }

    /** None can be left out: a deletion filter (Chinneck and Dravnieks 1991, from memory). There may be smaller ones. */
    static List<Constraint> irreducible(Season season) {
        var conflicts = new Conflicts(season);
        var all = season.constraints();
        conflicts.filter(all);
        var left = new ArrayList<>(all);
        left.removeAll(conflicts.givenUp);
        return List.copyOf(left);
    }

    /** Gives up all that leaves the season impossible; many at once where that goes, which comes to the same. */
    private void filter(List<Constraint> some) {
        var without = new HashSet<>(givenUp);
        without.addAll(some);
        if (!Plans.isPossible(season.without(without))) {
            givenUp.addAll(some);
        } else if (some.size() > 1) {
            int half = some.size() / 2;
            filter(some.subList(0, half));
            filter(some.subList(half, some.size()));
        }
    }
}
