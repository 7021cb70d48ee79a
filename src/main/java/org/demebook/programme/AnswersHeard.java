package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.ancestry.Ancestries;
import org.demebook.keeper.Standing;
import org.demebook.programme.AnswersView.Answered;
import org.demebook.programme.AnswersView.Said;
import org.demebook.programme.PlanDocument.Litter;

/** What coordinators read of the answers to a plan: reasons and notes too. */
@ApplicationScoped
public class AnswersHeard {
    @Inject
    SeasonPlans plans;

    @Inject
    KeptPlans kept;

    @Inject
    Ancestries ancestries;

    @Inject
    Clock clock;

    /** Refuses with NOT_ALLOWED all but coordinators, and with NO_SUCH_PLAN. */
    public AnswersView of(Standing by, UUID planId) {
        Drafts.requireCoordinator(by);
        var plan = plans.require(by, planId).document();
        var answers = kept.answers(by, plan);
        var sight = PlanSight.of(ancestries, by, clock.instant());
        var litters = plan.litters().stream()
                .flatMap(litter -> answered(sight, litter, answers.getOrDefault(litter.id(), List.of())).stream())
                .toList();
        sight.disclosed(
                ancestries,
                plan.litters().stream()
                        .filter(litter -> sight.shows(litter))
                        .flatMap(litter -> Stream.of(litter.damId(), litter.sireId())));
        int sides = litters.size() * Side.values().length;
        int answered =
                litters.stream().mapToInt(litter -> litter.answers().size()).sum();
        return new AnswersView(planId, sides, answered, sides == 0 ? null : (double) answered / sides, litters);
    }

    private static Optional<Answered> answered(PlanSight sight, Litter litter, List<LitterAnswer> answers) {
        if (!sight.shows(litter)) {
            return Optional.empty();
        }
        return Optional.of(new Answered(
                litter.id(),
                sight.number(litter.damId()).orElseThrow(),
                sight.number(litter.sireId()).orElseThrow(),
                LitterState.of(answers),
                answers.stream()
                        .sorted(Comparator.comparing(LitterAnswer::side))
                        .map(said -> new Said(said.side(), said.answer, said.reason, said.note, said.answeredOn()))
                        .toList()));
    }
}
