package org.demebook.web.season;

import org.demebook.plot.Tradeoff;
import org.demebook.programme.SeasonPlanView;
import org.jspecify.annotations.Nullable;

/**
 * A plan with its curve drawn.
 *
 * @param percentBelowBest how far its mean kinship may be above the least possible, rounded up; null where nothing is left to gain
 */
public record PlanShown(
        SeasonPlanView plan, Tradeoff curve, @Nullable Double percentBelowBest) {
    private static final double SAME = 1e-12;
    private static final double THOUSANDTHS = 1e3;

    static PlanShown of(SeasonPlanView plan, Tradeoff curve) {
        double percent = plan.withinOfBest() * 100;
        return new PlanShown(
                plan, curve, plan.withinOfBest() <= SAME ? null : Math.ceil(percent * THOUSANDTHS) / THOUSANDTHS);
    }

    /** Whether there are other plans, with less of one figure for more of the other. */
    public boolean isTraded() {
        return plan.curve().size() > 1;
    }

    public int litters() {
        return plan.litters().size();
    }

    /** Young that are reckoned with, of all its litters. */
    public double young() {
        return plan.litters().stream()
                .mapToDouble(SeasonPlanView.ProposedLitter::young)
                .sum();
    }
}
