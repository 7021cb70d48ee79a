package org.demebook.season;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A smallest contradiction by implicit hitting sets (Ignatiev, Previti, Liffiton and Marques-Silva 2015, <i>Smallest MUS
 * extraction with minimal hitting set dualization</i>, from memory).
 *
 * <p>Constraints that have to be given up so that the rest can be kept are a correction; a contradiction has one of every
 * correction. So a smallest set that has one of every correction known so far is no larger than any contradiction; if
 * it is one, it is a smallest. If not, it is kept, with as many more as can be kept with it, and what is left over is a correction
 * not known before.
 */
final class HittingSets {
    /** Work that the solver may take for a hitting set, in its own measure: the same on every machine. */
    private static final double MOST_WORK = 5;

    static {
        Loader.loadNativeLibraries();
    }

    /** What a question costs that takes an integer program, in questions that do not. */
    private static final int HARD = 40;

    private static final int LOOK_EVERY = 16;

    private final Season season;
    private final int mostAsked;
    private final Watch watch;
    private final List<Constraint> all;
    private final List<Set<Constraint>> corrections = new ArrayList<>();
    private int asked;
    private int looked;
    private boolean stopped;

    /** @param mostAsked about so many sets of constraints are tried, at most */
    HittingSets(Season season, int mostAsked, Watch watch) {
        this.season = season;
        this.mostAsked = mostAsked;
        this.watch = watch;
        all = season.constraints();
    }

    /**
     * A smallest contradiction.
     *
     * @param known a contradiction
     * @return the known one if it is a smallest; nothing if the work allowed is not enough, or somebody stops it
     * @throws ArithmeticException as {@link Plans#isPossible}
     */
    Optional<List<Constraint>> smallest(List<Constraint> known) {
        while (!isEnough()) {
            var hitting = hittingSet();
            if (hitting.isEmpty()) {
                return Optional.empty();
            }
            if (hitting.get().size() >= known.size()) {
                return Optional.of(known);
            }
            if (!canKeep(hitting.get())) {
                return stopped ? Optional.empty() : hitting.map(List::copyOf);
            }
            addCorrections(hitting.get());
        }
        return Optional.empty();
    }

    private boolean isEnough() {
        return stopped || asked >= mostAsked;
    }

    /** False if they contradict each other, or somebody stops it. */
    private boolean canKeep(Collection<Constraint> kept) {
        if (asked >= looked + LOOK_EVERY && !stopped) {
            looked = asked;
            stopped = !watch.goOn(new Progress(Math.min(asked, mostAsked), mostAsked, Double.NaN, 0));
        }
        if (stopped) {
            return false;
        }
        var without = new LinkedHashSet<>(all);
        without.removeAll(kept);
        var rest = season.without(without);
        var possible = Plans.isPossibleByFlow(rest);
        asked += possible.isPresent() ? 1 : HARD;
        return possible.orElseGet(() -> Plans.isPossible(rest));
    }

    /** Corrections that have nothing in common with what is kept, nor with each other. */
    private void addCorrections(Set<Constraint> hitting) {
        var kept = new LinkedHashSet<>(hitting);
        while (!isEnough() && canKeep(kept)) {
            var most = new LinkedHashSet<>(kept);
            var rest = new ArrayList<>(all);
            rest.removeAll(kept);
            keepMore(most, rest);
            var correction = new LinkedHashSet<>(all);
            correction.removeAll(most);
            corrections.add(correction);
            kept.addAll(correction);
        }
    }

    /** Keeps of some as many as can be kept one after the other; many at once where that goes, which comes to the same. */
    private void keepMore(Set<Constraint> kept, List<Constraint> some) {
        var more = new LinkedHashSet<>(kept);
        more.addAll(some);
        if (canKeep(more)) {
            kept.addAll(some);
        } else if (some.size() > 1) {
            int half = some.size() / 2;
            keepMore(kept, some.subList(0, half));
            keepMore(kept, some.subList(half, some.size()));
        }
    }

    /** The fewest constraints of which every correction has one. */
    private Optional<Set<Constraint>> hittingSet() {
        var model = new CpModel();
        Map<Constraint, BoolVar> taken = new LinkedHashMap<>();
        for (var correction : corrections) {
            model.addBoolOr(correction.stream()
                    .map(constraint -> taken.computeIfAbsent(constraint, one -> model.newBoolVar("")))
                    .toArray(BoolVar[]::new));
        }
        model.minimize(LinearExpr.sum(taken.values().toArray(BoolVar[]::new)));
        var solver = new CpSolver();
        // Ctrl-C stays the server's, as in Program
        solver.getParameters()
                .setCatchSigintSignal(false)
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setMaxDeterministicTime(MOST_WORK);
        if (solver.solve(model) != CpSolverStatus.OPTIMAL) {
            return Optional.empty();
        }
        var hitting = new LinkedHashSet<Constraint>();
        taken.forEach((constraint, one) -> {
            if (solver.booleanValue(one)) {
                hitting.add(constraint);
            }
        });
        return Optional.of(hitting);
    }
}
