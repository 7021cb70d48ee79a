package org.demebook.programme;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.season.Effort;
import org.demebook.season.Progress;
import org.demebook.season.Watch;
import org.jspecify.annotations.Nullable;

/**
 * A plan that is being computed, or was, and that nobody issued: in memory alone. The solving thread tells it how far it is,
 * and asks it whether to go on.
 */
final class Draft implements Composition.Follower {
    /** How far it is. */
    record Step(
            Composition.Step what,
            long done,
            long of,
            @Nullable Progress search) {}

    final UUID id;
    final Standing by;
    final Instant startedAt;
    final NewDraft asked;
    final Stage stage;
    final Effort effort;
    private volatile DraftState state = DraftState.WAITING;
    private volatile boolean stopping;
    private volatile @Nullable Step step;
    private volatile @Nullable PlanDocument plan;
    private volatile List<String> contradiction = List.of();

    Draft(UUID id, Standing by, Instant startedAt, NewDraft asked, Stage stage) {
        this.id = id;
        this.by = by;
        this.startedAt = startedAt;
        this.asked = asked;
        this.stage = stage;
        this.effort = Composition.effort(stage.season(), asked.seedOrOne());
    }

    boolean isOf(Standing asker) {
        return by.keeperId().equals(asker.keeperId()) && by.populationId().equals(asker.populationId());
    }

    DraftState state() {
        return state;
    }

    @Nullable
    Step step() {
        return state.isOver() ? null : step;
    }

    @Nullable
    PlanDocument plan() {
        return plan;
    }

    List<String> contradiction() {
        return contradiction;
    }

    void stop() {
        stopping = true;
    }

    /** Whether anything in it is only imagined. */
    boolean isImagined() {
        return asked.femaleFounders() + asked.maleFounders() > 0;
    }

    void begins() {
        state = DraftState.COMPUTING;
    }

    void found(PlanDocument document) {
        plan = document;
    }

    void ends(List<String> why) {
        contradiction = why;
        state = !why.isEmpty() ? DraftState.IMPOSSIBLE : stopping ? DraftState.STOPPED : DraftState.READY;
    }

    void fails() {
        state = DraftState.FAILED;
    }

    @Override
    public void begins(Composition.Step what, int of) {
        step = new Step(what, 0, of, null);
    }

    @Override
    public void done(int steps) {
        var now = step;
        if (now != null) {
            step = new Step(now.what, steps, now.of, null);
        }
    }

    @Override
    public Watch watch() {
        return progress -> {
            var now = step;
            if (now != null && now.what == Composition.Step.PLAN) {
                step = new Step(now.what, progress.done(), progress.of(), progress);
            }
            return goesOn();
        };
    }

    @Override
    public boolean goesOn() {
        return !stopping;
    }
}
