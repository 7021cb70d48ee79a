package org.demebook.season;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The fewest constraints under which a season's network has no flow, as an integer program.
 *
 * <p>A flow with lower limits exists unless some set of nodes must give off more than it can take in (Hoffman's circulation
 * theorem, 1960, from memory). So the program chooses a set of nodes, and the constraints to keep: those that oblige litters out of the
 * set, and those that keep litters from coming in. Nodes as in {@link Network}; litters return from the sink to the
 * source. Where a litter could come in from a female outside the set, the set loses nothing by her joining it.
 * A settled pair that another constraint refuses is no question of flow; see {@link #refusedLock}.
 */
final class CutProgram {
    /** Work that the solver may take, in its own measure: the same on every machine. */
    private static final double MOST_WORK = 20;

    static {
        Loader.loadNativeLibraries();
    }

    /**
     * Constraints that contradict each other.
     *
     * @param smallest there is no smaller set of them
     */
    record Found(List<Constraint> constraints, boolean smallest) {}

    private final Season season;
    private final CpModel model = new CpModel();
    private final Map<Constraint, BoolVar> kept = new LinkedHashMap<>();
    private final BoolVar source = model.newBoolVar("source");
    private final BoolVar sink = model.newBoolVar("sink");
    private final BoolVar[] collections;
    private final BoolVar[] females;
    private final BoolVar[] males;
    /** What must leave the set less what can enter it. */
    private final LinearExprBuilder over = LinearExpr.newBuilder();

    private CutProgram(Season season) {
        this.season = season;
        season.constraints().forEach(constraint -> kept.put(constraint, model.newBoolVar(constraint.toString())));
        collections = nodes(season.littersOfCollection.length);
        females = nodes(season.females);
        males = nodes(season.males);
    }

    private BoolVar[] nodes(int count) {
        var nodes = new BoolVar[count];
        for (int i = 0; i < count; i++) {
            nodes[i] = model.newBoolVar("");
        }
        return nodes;
    }

    /** The fewest constraints that contradict each other, those on travellers aside that allow some; none if there are none. */
    static Optional<Found> of(Season season) {
        var locked = refusedLock(season);
        var cut = new CutProgram(season).solve();
        if (locked.isPresent()
                && cut.map(found -> found.constraints().size() > 2).orElse(true)) {
            return Optional.of(new Found(locked.get(), cut.map(Found::smallest).orElse(true)));
        }
        return cut;
    }

    /** A settled pair and one constraint that refuses it. */
    private static Optional<List<Constraint>> refusedLock(Season season) {
        for (var pair : season.locked) {
            int home = season.collection[season.females + pair.male()];
            if (!season.isAllowed(pair)) {
                return Optional.of(
                        List.of(new Constraint.PairsOfFemale(pair.female()), new Constraint.PairLocked(pair)));
            }
            if (!season.isOpen(pair.female(), pair.male())) {
                return Optional.of(
                        List.of(new Constraint.TravellersOfCollection(home, 0), new Constraint.PairLocked(pair)));
            }
        }
        return season.least > season.most
                ? Optional.of(
                        List.of(new Constraint.LittersAtMost(season.most), new Constraint.LittersWanted(season.least)))
                : Optional.empty();
    }

    private Optional<Found> solve() {
        for (int at = 0; at < collections.length; at++) {
            int limit = season.littersOfCollection[at];
            limited(source, collections[at], new Constraint.LittersOfCollection(at, limit), limit);
        }
        for (int female = 0; female < females.length; female++) {
            enters(collections[season.collection[female]], females[female], 1);
            for (int male = 0; male < males.length; male++) {
                pair(female, male);
            }
        }
        for (int male = 0; male < males.length; male++) {
            int limit = season.littersOfMale[male];
            limited(males[male], sink, new Constraint.LittersOfMale(male, limit), limit);
        }
        limited(sink, source, new Constraint.LittersAtMost(season.most), season.most);
        leaves(sink, source, new Constraint.LittersWanted(season.least), season.least);
        for (var pair : season.locked) {
            leaves(females[pair.female()], males[pair.male()], new Constraint.PairLocked(pair), 1);
        }
        model.addGreaterOrEqual(over, 1);
        model.minimize(LinearExpr.sum(kept.values().toArray(BoolVar[]::new)));
        return solved();
    }

    /** An arc whose limit can be given up; then it can take in any number. */
    private void limited(BoolVar from, BoolVar to, Constraint constraint, int limit) {
        var limits = kept.get(constraint);
        if (limits == null) {
            model.addImplication(to, from);
        } else {
            model.addBoolOr(new Literal[] {to.not(), from, limits});
            enters(from, to, limit);
        }
    }

    private void enters(BoolVar from, BoolVar to, int limit) {
        var enters = model.newBoolVar("");
        model.addBoolOr(new Literal[] {to.not(), from, enters});
        over.addTerm(enters, -limit);
    }

    /** A male in the set brings in every female who may have him. */
    private void pair(int female, int male) {
        var either = new ArrayList<Literal>(List.of(males[male].not(), females[female]));
        if (!season.allowed[female].get(male)) {
            either.add(keeping(new Constraint.PairsOfFemale(female)));
        }
        int home = season.collection[season.females + male];
        if (season.isAcross(female, male) && season.travellersOfCollection[home] == 0) {
            either.add(keeping(new Constraint.TravellersOfCollection(home, 0)));
        }
        model.addBoolOr(either.toArray(Literal[]::new));
        var pair = new Pair(female, male);
        if (season.isLocked(pair)) {
            var locked = keeping(new Constraint.PairLocked(pair));
            model.addBoolOr(new Literal[] {males[male].not(), females[female], locked.not()});
        }
    }

    private BoolVar keeping(Constraint constraint) {
        return Objects.requireNonNull(kept.get(constraint));
    }

    private void leaves(BoolVar from, BoolVar to, Constraint constraint, int litters) {
        var obliges = kept.get(constraint);
        if (obliges != null) {
            var leaves = model.newBoolVar("");
            model.addImplication(leaves, obliges);
            model.addImplication(leaves, from);
            model.addImplication(leaves, to.not());
            over.addTerm(leaves, litters);
        }
    }

    private Optional<Found> solved() {
        var solver = new CpSolver();
        // Ctrl-C stays the server's, as in Program
        solver.getParameters()
                .setCatchSigintSignal(false)
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setLinearizationLevel(2)
                .setMaxDeterministicTime(MOST_WORK);
        var status = solver.solve(model);
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            return Optional.empty();
        }
        var constraints = kept.keySet().stream()
                .filter(constraint -> solver.booleanValue(keeping(constraint)))
                .toList();
        return Optional.of(new Found(constraints, status == CpSolverStatus.OPTIMAL));
    }
}
