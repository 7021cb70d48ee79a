package org.demebook.season;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntPredicate;

/** A season as an integer program, for what does not fit into a network: how many males of a collection travel. */
final class Program {
    /** Work that the solver may take, in its own measure: the same on every machine. */
    private static final double MOST_WORK = 20;

    private static final int BITS = 40;

    static {
        Loader.loadNativeLibraries();
    }

    private final Season season;
    private final CpModel model = new CpModel();
    private final Map<Pair, BoolVar> pairs = new LinkedHashMap<>();
    private final List<List<BoolVar>> ofFemale = new ArrayList<>();
    private final List<List<BoolVar>> ofMale = new ArrayList<>();

    Program(Season season) {
        this.season = season;
        for (int male = 0; male < season.males; male++) {
            ofMale.add(new ArrayList<>());
        }
        for (int female = 0; female < season.females; female++) {
            ofFemale.add(new ArrayList<>());
            for (int male = 0; male < season.males; male++) {
                if (season.allowed[female].get(male) && season.littersOfMale[male] > 0) {
                    var pair = model.newBoolVar(female + "x" + male);
                    pairs.put(new Pair(female, male), pair);
                    ofFemale.get(female).add(pair);
                    ofMale.get(male).add(pair);
                }
            }
            model.addAtMostOne(ofFemale.get(female).toArray(new BoolVar[0]));
        }
        limits();
        travellers();
        for (var pair : season.locked) {
            if (pairs.containsKey(pair)) {
                model.addEquality(pairs.get(pair), 1);
            } else {
                model.addBoolOr(new BoolVar[0]);
            }
        }
    }

    private void limits() {
        for (int male = 0; male < season.males; male++) {
            model.addLessOrEqual(sum(ofMale.get(male)), Math.min(season.littersOfMale[male], season.females));
        }
        var all = new ArrayList<BoolVar>();
        for (int at = 0; at < season.littersOfCollection.length; at++) {
            var there = new ArrayList<BoolVar>();
            for (int female = 0; female < season.females; female++) {
                if (season.collection[female] == at) {
                    there.addAll(ofFemale.get(female));
                }
            }
            model.addLessOrEqual(sum(there), Math.min(season.littersOfCollection[at], season.females));
            all.addAll(there);
        }
        model.addLinearConstraint(
                sum(all), season.least, Math.max(season.least, Math.min(season.most, season.females)));
        if (season.least > season.most) {
            model.addBoolOr(new BoolVar[0]);
        }
    }

    private void travellers() {
        for (int at = 0; at < season.travellersOfCollection.length; at++) {
            int home = at;
            var travellers = new ArrayList<BoolVar>();
            IntPredicate lives = male -> season.collection[season.females + male] == home;
            for (int male = 0; male < season.males; male++) {
                if (lives.test(male) && season.travellersOfCollection[at] < season.males) {
                    var travels = model.newBoolVar("travels" + male);
                    travellers.add(travels);
                    var abroad = new ArrayList<BoolVar>();
                    for (int female = 0; female < season.females; female++) {
                        var pair = pairs.get(new Pair(female, male));
                        if (pair != null && season.isAcross(female, male)) {
                            abroad.add(pair);
                        }
                    }
                    // all at once, not each by itself: so the solver counts who would have to travel
                    model.addLessOrEqual(
                            sum(abroad),
                            LinearExpr.term(travels, Math.min(season.littersOfMale[male], season.females)));
                }
            }
            if (!travellers.isEmpty()) {
                model.addLessOrEqual(sum(travellers), season.travellersOfCollection[at]);
            }
        }
    }

    /** Has females and males have just the litters that they have in a plan. */
    Program withNumbersOf(int[] sires) {
        for (int female = 0; female < season.females; female++) {
            model.addEquality(sum(ofFemale.get(female)), sires[female] == Season.NONE ? 0 : 1);
        }
        var byYoung = new HashMap<Double, List<Integer>>();
        for (int female = 0; female < season.females; female++) {
            byYoung.computeIfAbsent(season.young[female], young -> new ArrayList<>())
                    .add(female);
        }
        for (var alike : byYoung.values()) {
            for (int male = 0; male < season.males; male++) {
                int he = male;
                var his = alike.stream()
                        .map(female -> new Pair(female, he))
                        .filter(pairs::containsKey)
                        .map(pairs::get)
                        .toList();
                model.addEquality(
                        sum(his),
                        alike.stream().filter(female -> sires[female] == he).count());
            }
        }
        return this;
    }

    /**
     * What the solver found.
     *
     * @param proven nothing is cheaper
     */
    record Solution(int[] sires, boolean proven) {}

    /** Begins the search at a plan that keeps all constraints. */
    Program from(int[] sires) {
        pairs.forEach((pair, chosen) -> model.addHint(chosen, sires[pair.female()] == pair.male() ? 1 : 0));
        return this;
    }

    /**
     * A plan under all constraints, or nothing if there is none.
     *
     * @throws ArithmeticException if that is not found out within the work allowed
     */
    Optional<int[]> anyPlan() {
        return solve().map(Solution::sires);
    }

    /**
     * The cheapest plan under all constraints, or nothing if there is none.
     *
     * @throws ArithmeticException if no plan is found within the work allowed
     */
    Optional<Solution> cheapest(Network.Cost cost) {
        double largest = pairs.keySet().stream()
                .mapToDouble(pair -> Math.abs(cost.of(pair.female(), pair.male())))
                .max()
                .orElse(0);
        double scale = largest == 0 ? 1 : Math.scalb(1.0, BITS) / largest;
        var keys = new ArrayList<>(pairs.keySet());
        model.minimize(LinearExpr.weightedSum(
                keys.stream().map(pairs::get).toArray(BoolVar[]::new),
                keys.stream()
                        .mapToLong(pair -> Math.round(cost.of(pair.female(), pair.male()) * scale))
                        .toArray()));
        return solve();
    }

    private Optional<Solution> solve() {
        var solver = new CpSolver();
        // Ctrl-C stays the server's: a solver that catches it leaves the process without a handler behind
        solver.getParameters()
                .setCatchSigintSignal(false)
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setMaxDeterministicTime(MOST_WORK);
        var status = solver.solve(model);
        if (status == CpSolverStatus.INFEASIBLE) {
            return Optional.empty();
        }
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            throw new ArithmeticException("The season was not solved within the work allowed");
        }
        int[] sires = new int[season.females];
        Arrays.fill(sires, Season.NONE);
        pairs.forEach((pair, chosen) -> {
            if (solver.booleanValue(chosen)) {
                sires[pair.female()] = pair.male();
            }
        });
        return Optional.of(new Solution(sires, status == CpSolverStatus.OPTIMAL));
    }

    private static LinearExpr sum(List<BoolVar> parts) {
        return LinearExpr.sum(parts.toArray(new BoolVar[0]));
    }
}
