package org.demebook.programme;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.programme.PlanDocument.Litter;
import org.demebook.registry.Animals;
import org.demebook.registry.Custody;

/** Reminds keepers to answer the plan in force, and to pair what both sides accepted. Says of the other animal nothing. */
@ApplicationScoped
class SeasonTasks implements CareTaskSource {
    private static final int DAYS_TO_ANSWER = 14;

    /** Before and after the day of the plan (common practice, no source). */
    private static final int DAYS_AROUND_PAIRING = 7;

    @Inject
    KeptPlans kept;

    @Inject
    Keepers keepers;

    @Inject
    Animals animals;

    @Override
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var issued = kept.inForce(by);
        if (issued.isEmpty()) {
            return List.of();
        }
        var plan = issued.get().document();
        var own = keepers.collectionIds(by);
        Map<UUID, Custody> custodies =
                animals.custodies(by.populationId(), PlanDocument.animals(plan).collect(Collectors.toSet()));
        var answers = kept.answers(by, plan);
        var tasks = new ArrayList<CareTask>();
        for (var litter : plan.litters()) {
            var said = answers.getOrDefault(litter.id(), List.of());
            for (var side : Side.values()) {
                var animal = custodies.get(side.animalOf(litter));
                if (animal.died() != null || animal.collectionId() == null || !own.contains(animal.collectionId())) {
                    continue;
                }
                var state = LitterState.of(said);
                if (state == LitterState.AGREED) {
                    tasks.add(pairing(litter, side, plan.pairOn()));
                } else if (state == LitterState.OPEN && said.stream().noneMatch(answer -> answer.side() == side)) {
                    tasks.add(answer(litter, side, issued.get().issuedOn));
                }
            }
        }
        return tasks;
    }

    private static CareTask answer(Litter litter, Side side, LocalDate issuedOn) {
        var dueOn = issuedOn.plusDays(DAYS_TO_ANSWER);
        return new CareTask(
                key(CareKind.SEASON_ANSWER, litter, side),
                CareKind.SEASON_ANSWER,
                side.animalOf(litter),
                null,
                dueOn,
                issuedOn,
                dueOn,
                "Answer what the plan proposes for it",
                "The plan of %s proposes a litter; answer within %d days, so that it can be planned around."
                        .formatted(issuedOn, DAYS_TO_ANSWER));
    }

    private static CareTask pairing(Litter litter, Side side, LocalDate pairOn) {
        return new CareTask(
                key(CareKind.SEASON_PAIRING, litter, side),
                CareKind.SEASON_PAIRING,
                side.animalOf(litter),
                null,
                pairOn,
                pairOn.minusDays(DAYS_AROUND_PAIRING),
                pairOn.plusDays(DAYS_AROUND_PAIRING),
                "Pair it as agreed",
                "Both keepers accepted a litter of the plan, to be paired on %s.".formatted(pairOn));
    }

    private static String key(CareKind kind, Litter litter, Side side) {
        return "%s:%s:%s".formatted(kind.word(), litter.id(), side.word());
    }
}
