package org.demebook.season;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Why a season is impossible: constraints that contradict each other, none of which can be left out, by a deletion filter
 * (Chinneck and Dravnieks 1991, from memory). There may be other such sets, and smaller ones.
 */
final class Conflicts {
    private final Season season;
    private final Set<Constraint> givenUp = new HashSet<>();

    private Conflicts(Season season) {
        this.season = season;
    }

    /** Of an impossible season. */
    static List<Constraint> of(Season season) {
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
