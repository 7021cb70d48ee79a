package org.demebook.disclosure;

import com.google.ortools.Loader;
import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.demebook.disclosure.Knowledge.Sum;
import org.demebook.disclosure.Knowledge.View;

/**
 * How far up or down a question can be answered in the worlds that somebody holds possible.
 *
 * <p>A linear program first; where its best world is not in whole numbers, an integer program. A world that is handed out is
 * whole and was checked without rounding.
 */
final class Reach implements AutoCloseable {
    /** Work that an integer program may take, in the solver's own measure: the same on every machine. */
    private static final double MOST_WORK = 60;

    private static final double EXACT = 1e-6;

    static {
        Loader.loadNativeLibraries();
    }

    /**
     * The best that is possible.
     *
     * @param value of the question
     * @param world in which it has it
     * @param binding figures without which the bound might be further out; the others do not matter to it
     */
    record Best(long value, long[] world, BitSet binding) {}

    private final Knowledge knowledge;
    private final MPSolver solver;
    private final MPVariable[] variables;
    private final MPConstraint[] constraints;
    private BitSet toldNow = new BitSet();

    Reach(Knowledge knowledge) {
        this.knowledge = knowledge;
        solver = MPSolver.createSolver("GLOP");
        variables = solver.makeNumVarArray(knowledge.variables(), 0, knowledge.ceiling());
        constraints = new MPConstraint[knowledge.sums().size()];
        for (int i = 0; i < constraints.length; i++) {
            var sum = knowledge.sums().get(i);
            constraints[i] = sum.figure() < 0
                    ? solver.makeConstraint(sum.value(), sum.value())
                    : solver.makeConstraint(-MPSolver.infinity(), MPSolver.infinity());
            for (int variable : sum.plus()) {
                constraints[i].setCoefficient(variables[variable], 1);
            }
            for (int variable : sum.minus()) {
                constraints[i].setCoefficient(variables[variable], -1);
            }
        }
    }

    /**
     * The largest (or smallest) value of a question for who is told some figures.
     *
     * @throws ArithmeticException if the solvers do not find it within the work that they may do
     */
    Best best(Question question, View view, boolean upwards, BitSet told) {
        tell(told);
        for (int variable = 0; variable < variables.length; variable++) {
            variables[variable].setLb(view.known()[variable]);
        }
        var objective = solver.objective();
        objective.clear();
        for (int variable : question.plus()) {
            objective.setCoefficient(variables[variable], 1);
        }
        for (int variable : question.minus()) {
            objective.setCoefficient(variables[variable], -1);
        }
        objective.setOptimizationDirection(upwards);
        if (solver.solve() == MPSolver.ResultStatus.OPTIMAL) {
            long[] world = rounded();
            if (Math.abs(objective.value() - question.in(world)) < EXACT && knowledge.allows(world, view, told)) {
                return new Best(question.in(world), world, binding());
            }
        }
        long[] world = inWholeNumbers(question, view, upwards, told);
        return new Best(question.in(world), world, told);
    }

    private void tell(BitSet told) {
        for (int i = 0; i < constraints.length; i++) {
            var sum = knowledge.sums().get(i);
            if (sum.figure() >= 0 && told.get(sum.figure()) != toldNow.get(sum.figure())) {
                if (told.get(sum.figure())) {
                    constraints[i].setBounds(sum.value(), sum.value());
                } else {
                    constraints[i].setBounds(-MPSolver.infinity(), MPSolver.infinity());
                }
            }
        }
        toldNow = (BitSet) told.clone();
    }

    private long[] rounded() {
        long[] world = new long[variables.length];
        for (int variable = 0; variable < world.length; variable++) {
            world[variable] = Math.round(variables[variable].solutionValue());
        }
        return world;
    }

    private BitSet binding() {
        var binding = new BitSet();
        for (int i = 0; i < constraints.length; i++) {
            int figure = knowledge.sums().get(i).figure();
            if (figure >= 0 && toldNow.get(figure) && Math.abs(constraints[i].dualValue()) > EXACT) {
                binding.set(figure);
            }
        }
        return binding;
    }

    private long[] inWholeNumbers(Question question, View view, boolean upwards, BitSet told) {
        var model = new CpModel();
        var unknowns = new ArrayList<IntVar>();
        for (int variable = 0; variable < variables.length; variable++) {
            unknowns.add(model.newIntVar(view.known()[variable], knowledge.ceiling(), "y" + variable));
        }
        for (var sum : knowledge.sums()) {
            if (Knowledge.isKnown(sum, told)) {
                model.addEquality(expression(unknowns, sum), sum.value());
            }
        }
        var asked = expression(unknowns, new Sum(question.plus(), question.minus(), 0, -1));
        if (upwards) {
            model.maximize(asked);
        } else {
            model.minimize(asked);
        }
        var solver = frugal(MOST_WORK);
        if (solver.solve(model) != CpSolverStatus.OPTIMAL) {
            throw new ArithmeticException(
                    "The bound of %s was not found within the work allowed".formatted(question.subject()));
        }
        return unknowns.stream().mapToLong(solver::value).toArray();
    }

    private static LinearExpr expression(List<IntVar> unknowns, Sum sum) {
        LinearExprBuilder expression = LinearExpr.newBuilder();
        for (int variable : sum.plus()) {
            expression.add(unknowns.get(variable));
        }
        for (int variable : sum.minus()) {
            expression.addTerm(unknowns.get(variable), -1);
        }
        return expression.build();
    }

    /** One worker, one seed, bounded by work and not by the clock: the same answer every time. */
    static CpSolver frugal(double work) {
        var solver = new CpSolver();
        // Ctrl-C stays the server's: a solver that catches it leaves the process without a handler behind
        solver.getParameters()
                .setCatchSigintSignal(false)
                .setNumWorkers(1)
                .setRandomSeed(1)
                .setMaxDeterministicTime(work);
        return solver;
    }

    @Override
    public void close() {
        solver.delete();
    }
}
