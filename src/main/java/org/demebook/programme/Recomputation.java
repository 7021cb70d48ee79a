package org.demebook.programme;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import org.demebook.programme.PlanDocument.Litter;
import org.demebook.season.Effort;
import org.demebook.season.Pair;
import org.demebook.season.Season;
import org.demebook.season.SeasonPlanner;
import org.demebook.season.Watch;
import org.jspecify.annotations.Nullable;

/** A plan computed again, held against itself. */
final class Recomputation {
    private final PlanDocument plan;
    private final PlanInput.Input input;
    private final Season season;
    private final @Nullable Season living;
    private final List<String> differs = new ArrayList<>();

    private Recomputation(PlanDocument plan, PlanInput.Input input) {
        this.plan = plan;
        this.input = input;
        this.season = Season.of(input.form());
        this.living = input.living() == null ? null : Season.of(input.living());
    }

    static RecomputationView of(PlanDocument plan, PlanInput.Input input) {
        var again = new Recomputation(plan, input);
        var digest = PlanInput.digest(input);
        again.compare("computedFrom", plan.inputDigest(), digest);
        boolean whole = plan.figures().whole();
        if (whole) {
            again.compareAll(again.search(plan.work().effort()));
        } else {
            again.compareFigures();
        }
        return new RecomputationView(
                plan.id(), again.differs.isEmpty(), List.copyOf(again.differs), digest, whole ? "whole" : "figures");
    }

    private Composition search(Effort effort) {
        var last = new AtomicReference<Composition>();
        Composition.compute(season, living, effort, plan.work().youngToKeep(season.females()), new Nobody(), last::set);
        return last.get();
    }

    private void compareAll(Composition again) {
        compare("figures", plan.figures(), Stage.figures(again));
        var ids = new HashMap<Settled.Couple, UUID>();
        plan.litters().forEach(litter -> ids.put(Settled.Couple.of(litter), litter.id()));
        var litters = again.plan().litters().stream()
                .map(litter -> {
                    var couple = new Settled.Couple(
                            input.females().get(litter.pair().female()),
                            input.males().get(litter.pair().male()));
                    return Stage.litter(
                            ids.getOrDefault(couple, new UUID(0, 0)),
                            couple.damId(),
                            couple.sireId(),
                            litter,
                            again,
                            plan.work().youngInAll() != null);
                })
                .toList();
        compare("litters", plan.litters(), litters);
        compare("curve", plan.curve(), Stage.curve(again));
    }

    private void compareFigures() {
        var pairs = plan.litters().stream().map(this::pair).toList();
        var again = new SeasonPlanner(season, plan.work().effort(), Watch.NOBODY).evaluate(pairs);
        compare("figures.after", plan.figures().after(), new Exact(again.after()));
        compare("figures.now", plan.figures().now(), new Exact(again.now()));
        compare("figures.meanInbreeding", plan.figures().meanInbreeding(), new Exact(again.meanInbreeding()));
    }

    private Pair pair(Litter litter) {
        return new Pair(input.females().indexOf(litter.damId()), input.males().indexOf(litter.sireId()));
    }

    private void compare(String what, Object issued, Object again) {
        if (!issued.equals(again)) {
            differs.add(what);
        }
    }

    /** Nobody looks on, and nobody stops it. */
    private static final class Nobody implements Composition.Follower {
        @Override
        public void begins(Composition.Step step, int of) {}

        @Override
        public void done(int steps) {}

        @Override
        public Watch watch() {
            return Watch.NOBODY;
        }

        @Override
        public boolean goesOn() {
            return true;
        }
    }
}
