package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.demebook.care.CareKind;
import org.demebook.care.CareTask;
import org.demebook.care.CareTaskSource;
import org.demebook.gestation.DueWindow;
import org.demebook.keeper.Standing;
import org.demebook.registry.Populations;
import org.jspecify.annotations.Nullable;

/** What is to be done about births that are awaited, and about labour that goes on. */
@ApplicationScoped
class BreedingTasks implements CareTaskSource {
    @Inject
    Cycles cycles;

    @Inject
    Populations populations;

    @Override
    @Transactional
    public List<CareTask> tasks(Standing by, LocalDate today) {
        var tasks = new ArrayList<CareTask>();
        for (var awaited : cycles.awaited(by, populations.get(by), today)) {
            awaited.cycle().labour().ifPresent(labour -> {
                tasks.add(labour(awaited.femaleId(), labour, Labour.LOOK_AGAIN, Labour.AFTER_A_DAY));
                tasks.add(labour(awaited.femaleId(), labour, Labour.ACT, Labour.AFTER_TWO_DAYS));
            });
            var waits = awaited.cycle().state() == Cycle.State.GRAVID
                    || awaited.cycle().state() == Cycle.State.LAID;
            if (waits && awaited.due().isPresent()) {
                tasks.addAll(due(awaited, awaited.due().get()));
            }
        }
        return tasks;
    }

    private static CareTask labour(UUID femaleId, Sign labour, Duration after, String why) {
        return new CareTask(
                "labour-%dh:%s".formatted(after.toHours(), labour.id()),
                CareKind.LABOUR_CHECK,
                femaleId,
                null,
                LocalDate.ofInstant(labour.moment().plus(after), ZoneOffset.UTC),
                null,
                null,
                "Look whether labour goes on",
                why);
    }

    private static List<CareTask> due(Cycles.Awaited awaited, DueWindow due) {
        var end = due.from().landmark().end();
        return List.of(
                task(
                        awaited,
                        CareKind.DUE_WINDOW,
                        due.expectedOn(),
                        due.likely().fromOn(),
                        due.likely().untilOn(),
                        "A %s is due".formatted(end),
                        due.reason()),
                task(
                        awaited,
                        CareKind.EARLY_BIRTH,
                        due.earliestOn(),
                        null,
                        null,
                        "Have everything ready for a " + end,
                        CycleWords.earliest(due) + " " + due.reason()),
                task(
                        awaited,
                        CareKind.BIRTH_LIKELY,
                        due.likely().fromOn(),
                        null,
                        null,
                        "Look every day for a " + end,
                        CycleWords.likely(due) + " " + due.reason()),
                task(
                        awaited,
                        CareKind.BIRTH_OVERDUE,
                        due.overdueOn(),
                        null,
                        null,
                        "The %s is overdue".formatted(end),
                        CycleWords.overdue(due) + " " + due.reason()));
    }

    private static CareTask task(
            Cycles.Awaited awaited,
            CareKind kind,
            LocalDate dueOn,
            @Nullable LocalDate fromOn,
            @Nullable LocalDate untilOn,
            String what,
            String why) {
        return new CareTask(
                kind.word() + ":" + awaited.best().orElseThrow().id(),
                kind,
                awaited.femaleId(),
                null,
                dueOn,
                fromOn,
                untilOn,
                what,
                why);
    }
}
