package org.demebook.programme;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.demebook.season.Constraint;
import org.demebook.season.Effort;
import org.demebook.season.Evaluation;
import org.demebook.season.ImpossibleSeason;
import org.demebook.season.Pair;
import org.demebook.season.Planned;
import org.demebook.season.Refusal;
import org.demebook.season.Season;
import org.demebook.season.SeasonForm;
import org.demebook.season.SeasonPlan;
import org.demebook.season.SeasonPlanner;
import org.demebook.season.TradeOff;
import org.demebook.season.Watch;
import org.demebook.season.YoungToKeep;
import org.jspecify.annotations.Nullable;

/**
 * A plan with all that is shown of it, in the numbers of its season. The same season and effort give the same to the last bit,
 * as long as nobody stops it.
 *
 * @param curve empty until it is computed, as are the refusals
 * @param refusals by litter and by what is refused
 * @param living the plan's pairs with every living animal counted as one; null where the plan counts them so
 * @param complete nothing was left out since somebody stopped it
 */
record Composition(
        SeasonPlan plan,
        @Nullable Evaluation living,
        List<TradeOff> curve,
        Map<Pair, Map<Refusal.What, Refusal>> refusals,
        Map<Pair, Integer> keep,
        boolean complete) {

    static final int MOST_YOUNG = 30;

    private static final int LEAST_MOVES = 50_000;
    private static final int MOVES_FOR_A_CANDIDATE = 5_000;
    private static final int PARTS_FOR_THE_CURVE = 5;
    private static final int PARTS_FOR_A_REFUSAL = 20;
    private static final double SAME = 1e-12;

    /** What is being done. */
    enum Step {
        PLAN,
        CURVE,
        REFUSALS
    }

    /** Somebody who follows the work. */
    interface Follower {
        void begins(Step step, int of);

        void done(int steps);

        Watch watch();

        boolean goesOn();
    }

    /** By the size of the season, so that a small one takes no time. */
    static Effort effort(Season season, long seed) {
        long moves = (long) MOVES_FOR_A_CANDIDATE * (season.females() + season.males());
        return new Effort(
                Effort.USUAL.boundSteps(),
                Effort.USUAL.starts(),
                Math.min(Effort.USUAL.moves(), Math.max(LEAST_MOVES, moves)),
                seed);
    }

    /**
     * Computes, and tells of what is there already when the plan is, and when the curve is.
     *
     * @param young to be chosen; null where the season has the numbers
     * @param found told of each, the last one included
     * @return why there is no plan; empty when there is
     * @throws IllegalArgumentException where no plan has so many young in all
     */
    static List<Constraint> compute(
            Season season,
            @Nullable Season living,
            Effort effort,
            @Nullable YoungToKeep young,
            Follower follower,
            Consumer<Composition> found) {
        follower.begins(Step.PLAN, 1);
        var planner = new SeasonPlanner(season, effort, follower.watch());
        if (young == null) {
            return compute(season, living, effort, planner.plan(), follower, found);
        }
        var chosen = planner.plan(young);
        return compute(
                chosen.season(),
                living == null ? null : withYoungOf(living.form(), chosen.season()),
                effort,
                chosen.planned(),
                follower,
                found);
    }

    private static Season withYoungOf(SeasonForm form, Season chosen) {
        return Season.of(new SeasonForm(
                form.poolSize(),
                form.poolMeanKinship(),
                form.kinship(),
                form.toPool(),
                chosen.form().young(),
                form.allowed(),
                form.littersOfMale(),
                form.collection(),
                form.littersOfCollection(),
                form.travellersOfCollection(),
                form.least(),
                form.most(),
                form.locked()));
    }

    private static List<Constraint> compute(
            Season season,
            @Nullable Season living,
            Effort effort,
            Planned planned,
            Follower follower,
            Consumer<Composition> found) {
        if (planned instanceof ImpossibleSeason impossible) {
            return impossible.contradiction();
        }
        var plan = (SeasonPlan) planned;
        var first = new Composition(
                plan,
                living == null ? null : evaluated(living, effort, plan),
                List.of(),
                Map.of(),
                keep(season, effort, plan),
                false);
        found.accept(first);
        if (!follower.goesOn()) {
            return List.of();
        }
        follower.begins(Step.CURVE, 1);
        var second = first.withCurve(
                new SeasonPlanner(season, part(effort, PARTS_FOR_THE_CURVE), follower.watch()).curve(plan));
        if (!follower.goesOn()) {
            return List.of();
        }
        found.accept(second);
        second.withRefusals(season, part(effort, PARTS_FOR_A_REFUSAL), follower).ifPresent(found);
        return List.of();
    }

    private static Effort part(Effort effort, int parts) {
        return new Effort(effort.boundSteps(), 1, effort.moves() / parts, effort.seed());
    }

    private Composition withCurve(List<TradeOff> points) {
        return new Composition(plan, living, points, refusals, keep, false);
    }

    private Optional<Composition> withRefusals(Season season, Effort effort, Follower follower) {
        var planner = new SeasonPlanner(season, effort, follower.watch());
        var all = new HashMap<Pair, Map<Refusal.What, Refusal>>();
        var litters = new ArrayList<>(plan.litters());
        follower.begins(Step.REFUSALS, litters.size());
        for (int at = 0; at < litters.size(); at++) {
            var pair = litters.get(at).pair();
            var ofPair = new HashMap<Refusal.What, Refusal>();
            for (var what : Refusal.What.values()) {
                ofPair.put(what, planner.refusal(plan, pair, what));
            }
            if (!follower.goesOn()) {
                return Optional.empty();
            }
            all.put(pair, ofPair);
            follower.done(at + 1);
        }
        return Optional.of(new Composition(plan, living, curve, all, keep, true));
    }

    private static Evaluation evaluated(Season living, Effort effort, SeasonPlan plan) {
        return new SeasonPlanner(living, effort, Watch.NOBODY)
                .evaluate(plan.litters().stream().map(SeasonPlan.Litter::pair).toList());
    }

    /** Of each litter the fewest young that leave most gene diversity, all other litters as they are. */
    private static Map<Pair, Integer> keep(Season season, Effort effort, SeasonPlan plan) {
        var planner = new SeasonPlanner(season, effort, Watch.NOBODY);
        var keep = new HashMap<Pair, Integer>();
        for (var litter : plan.litters()) {
            double[] diversity = planner.keeping(plan, litter.pair(), MOST_YOUNG);
            int best = 0;
            for (int young = 1; young < diversity.length; young++) {
                if (diversity[young] > diversity[best] + SAME) {
                    best = young;
                }
            }
            keep.put(litter.pair(), best);
        }
        return keep;
    }
}
