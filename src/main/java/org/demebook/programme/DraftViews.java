package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.ancestry.Ancestries;
import org.demebook.keeper.Standing;
import org.demebook.programme.DraftView.Beside;
import org.demebook.programme.DraftView.Both;
import org.demebook.programme.DraftView.Doing;
import org.demebook.programme.DraftView.ProgressView;
import org.demebook.programme.Settled.Couple;
import org.jspecify.annotations.Nullable;

/** Shows drafts, beside the plan in force. */
@ApplicationScoped
class DraftViews {
    @Inject
    Ancestries ancestries;

    @Inject
    SeasonPlans plans;

    @Inject
    KeptPlans kept;

    @Inject
    Clock clock;

    DraftView of(Standing by, Draft draft) {
        var sight = PlanSight.of(ancestries, by, clock.instant());
        // before its plan: of one that is over the plan is the last
        var state = draft.state();
        var plan = draft.plan();
        var inForce = plans.inForce(by);
        if (plan != null) {
            sight.disclosed(ancestries, PlanDocument.animals(plan));
            inForce.ifPresent(other -> sight.disclosed(ancestries, PlanDocument.animals(other)));
        }
        return new DraftView(
                draft.id,
                state,
                draft.startedAt,
                progress(draft),
                plan == null
                        ? null
                        : new PlanViews(id -> name(sight, draft, id), kept.answers(by, plan)).of(plan, null, false),
                draft.contradiction(),
                draft.isImagined(),
                plan == null
                        ? null
                        : inForce.map(other -> beside(sight, draft, plan, other))
                                .orElse(null));
    }

    private static Optional<String> name(PlanSight sight, Draft draft, UUID animalId) {
        return draft.stage.imagined(animalId).or(() -> sight.number(animalId));
    }

    private static @Nullable ProgressView progress(Draft draft) {
        var step = draft.step();
        if (step == null) {
            return null;
        }
        var search = step.search();
        return new ProgressView(
                Doing.valueOf(step.what().name()),
                step.done(),
                step.of(),
                search == null || Double.isNaN(search.meanKinship()) || Double.isInfinite(search.meanKinship())
                        ? null
                        : 1 - search.meanKinship(),
                search == null || !(search.bound() > 0) ? null : 1 - search.bound());
    }

    private static Beside beside(PlanSight sight, Draft draft, PlanDocument plan, PlanDocument inForce) {
        var here = couples(plan);
        var there = couples(inForce);
        return new Beside(
                inForce.id(),
                1 - inForce.figures().after().value(),
                inForce.figures().meanInbreeding().value(),
                inForce.litters().size(),
                both(sight, draft, here, there),
                both(sight, draft, there, here));
    }

    private static Set<Couple> couples(PlanDocument plan) {
        return plan.litters().stream().map(Couple::of).collect(Collectors.toSet());
    }

    private static List<Both> both(PlanSight sight, Draft draft, Set<Couple> some, Set<Couple> others) {
        return some.stream()
                .filter(couple -> !others.contains(couple))
                .map(couple -> name(sight, draft, couple.damId())
                        .flatMap(dam -> name(sight, draft, couple.sireId()).map(sire -> new Both(dam, sire)))
                        .orElse(null))
                .filter(Objects::nonNull)
                .sorted((one, other) -> one.dam().compareTo(other.dam()))
                .toList();
    }
}
