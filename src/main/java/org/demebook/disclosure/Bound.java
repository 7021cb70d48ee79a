package org.demebook.disclosure;

import java.util.BitSet;
import org.demebook.disclosure.Knowledge.View;
import org.ojalgo.optimisation.Expression;
import org.ojalgo.optimisation.ExpressionsBasedModel;
import org.ojalgo.optimisation.Optimisation;
import org.ojalgo.optimisation.Variable;

/** The bounds of a question by the solver that audits: one integer program each, from scratch. */
final class Bound {
    private static final int MOST_STEPS = 1_000_000;

    static {
        // the library prints a word about unknown hardware to the console unless it is told not to
        System.setProperty("shut.up.ojAlgo", "");
    }

    private Bound() {}

    /**
     * A world in which the question has its largest (or smallest) value; checked without rounding.
     *
     * @throws ArithmeticException if the solver does not find it
     */
    static long[] world(Knowledge knowledge, Question question, View view, BitSet told, boolean upwards) {
        var model = new ExpressionsBasedModel();
        model.options.iterations_abort = MOST_STEPS;
        var unknowns = new Variable[knowledge.variables()];
        for (int variable = 0; variable < unknowns.length; variable++) {
            unknowns[variable] = model.newVariable("y" + variable)
                    .lower(view.known()[variable])
                    .upper(knowledge.ceiling())
                    .integer();
        }
        for (int i = 0; i < knowledge.sums().size(); i++) {
            var sum = knowledge.sums().get(i);
            if (Knowledge.isKnown(sum, told)) {
                var equation = model.newExpression("sum" + i).level(sum.value());
                add(equation, unknowns, sum.plus(), 1);
                add(equation, unknowns, sum.minus(), -1);
            }
        }
        var asked = model.newExpression("asked").weight(1);
        add(asked, unknowns, question.plus(), 1);
        add(asked, unknowns, question.minus(), -1);
        var result = upwards ? model.maximise() : model.minimise();
        long[] world = world(result, unknowns.length);
        if (!result.getState().isOptimal() || !knowledge.allows(world, view, told)) {
            throw new ArithmeticException("The audit did not find the %s bound of %s as %s sees it"
                    .formatted(upwards ? "upper" : "lower", question.subject(), view.who()));
        }
        return world;
    }

    private static void add(Expression expression, Variable[] unknowns, int[] places, int times) {
        for (int variable : places) {
            expression.set(unknowns[variable], times);
        }
    }

    private static long[] world(Optimisation.Result result, int variables) {
        long[] world = new long[variables];
        for (int variable = 0; variable < variables; variable++) {
            world[variable] = Math.round(result.doubleValue(variable));
        }
        return world;
    }
}
