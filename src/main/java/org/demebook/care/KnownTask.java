package org.demebook.care;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A task with what was done about it.
 *
 * @param number of its animal; null when it is about none
 * @param completion null while it is to be done
 * @param postponement null when it was never moved
 * @param silences those that it lies under
 */
record KnownTask(
        CareTask task,
        UUID collectionId,
        @Nullable String number,
        @Nullable Completion completion,
        @Nullable Postponement postponement,
        List<Silence> silences) {

    TaskState state() {
        return completion != null ? TaskState.DONE : silences.isEmpty() ? TaskState.OPEN : TaskState.SILENCED;
    }

    KnownTask done(@Nullable Completion present) {
        return new KnownTask(task, collectionId, number, present, postponement, silences);
    }

    KnownTask moved(@Nullable Postponement present) {
        return new KnownTask(task, collectionId, number, completion, present, silences);
    }

    KnownTask silenced(List<Silence> present) {
        return new KnownTask(task, collectionId, number, completion, postponement, present);
    }

    /** The day to which it was moved; null when it is on its own. */
    @Nullable
    LocalDate movedTo() {
        return postponement == null ? null : postponement.movedTo;
    }

    LocalDate dueOn() {
        var movedTo = movedTo();
        return movedTo == null ? task.dueOn() : movedTo;
    }

    /** The first day on which it matters. */
    LocalDate firstOn() {
        return movedTo() == null && task.fromOn() != null ? earlier(task.fromOn(), task.dueOn()) : dueOn();
    }

    /** The last day on which it is not yet overdue. */
    LocalDate lastOn() {
        return movedTo() == null && task.untilOn() != null ? later(task.untilOn(), task.dueOn()) : dueOn();
    }

    int overdueDays(LocalDate today) {
        return completion != null ? 0 : (int) Math.max(0, ChronoUnit.DAYS.between(lastOn(), today));
    }

    /** What lists are in the order of: overdue ones first, then by day. */
    String place(LocalDate today) {
        return String.join(
                "|",
                overdueDays(today) > 0 ? "0" : "1",
                dueOn().toString(),
                task.kind().word(),
                number == null ? "" : number,
                task.key());
    }

    /** What lists of done ones are in the order of: the latest first. */
    String placeAmongDone() {
        long daysBack = 10_000_000 - (completion == null ? task.dueOn() : completion.doneOn).toEpochDay();
        return "%08d|%s".formatted(daysBack, task.key());
    }

    CareTaskView view(LocalDate today, Map<UUID, String> names) {
        var moved = movedTo() != null;
        return new CareTaskView(
                task.key(),
                task.kind(),
                number,
                task.litterId(),
                collectionId,
                dueOn(),
                moved ? null : task.fromOn(),
                moved ? null : task.untilOn(),
                overdueDays(today),
                task.what(),
                task.why(),
                moved ? task.dueOn() : null,
                postponement == null ? 0 : postponement.timesMoved,
                completion == null ? null : completion.doneOn,
                completion == null ? null : names.get(completion.doneBy),
                silences.stream()
                        .map(silence -> silence.scope)
                        .max(SilenceScope::compareTo)
                        .orElse(null));
    }

    private static LocalDate earlier(LocalDate one, LocalDate other) {
        return one.isBefore(other) ? one : other;
    }

    private static LocalDate later(LocalDate one, LocalDate other) {
        return one.isAfter(other) ? one : other;
    }
}
