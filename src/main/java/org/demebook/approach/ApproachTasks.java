package org.demebook.approach;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.wall.WholeRegister;

/** Reminds keepers that somebody asks for an animal of theirs, as long as they may answer. */
@ApplicationScoped
class ApproachTasks implements CareTaskSource {
    @Inject
    Keepers keepers;

    @Inject
    Situations situations;

    @Override
    @Transactional
    @WholeRegister
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var asked = Approach.unanswered(
                by.populationId(), keepers.collectionIds(by), situations.today().minusDays(Approach.DAYS_OPEN));
        if (asked.isEmpty()) {
            return List.of();
        }
        var situation = situations.of(by, asked);
        return asked.stream()
                .filter(approach -> situation.state(approach, ApproachSide.ASKED) == ApproachState.OPEN)
                .map(ApproachTasks::task)
                .toList();
    }

    private static CareTask task(Approach approach) {
        return new CareTask(
                "%s:%s".formatted(CareKind.APPROACH_ANSWER.word(), approach.id),
                CareKind.APPROACH_ANSWER,
                approach.partnerId,
                null,
                approach.openUntil(),
                approach.proposedOn,
                approach.openUntil(),
                "Answer an approach for it",
                "Another keeper asked on %s whether you two want to know of each other; it may be answered until %s."
                        .formatted(approach.proposedOn, approach.openUntil()));
    }
}
