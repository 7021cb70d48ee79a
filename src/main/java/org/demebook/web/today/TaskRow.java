package org.demebook.web.today;

import java.time.LocalDate;
import org.demebook.care.CareKind;
import org.demebook.care.CareTaskView;
import org.jspecify.annotations.Nullable;

/**
 * A task, and what its buttons do.
 *
 * @param base where the addresses of the population's pages begin
 * @param day of the list
 */
public record TaskRow(CareTaskView task, String base, LocalDate day) {
    public Way way() {
        // a meal or a shed without an animal can only be done
        var way = Way.of(task.kind());
        return task.animal() == null && (way == Way.MEAL || way == Way.SHED) ? Way.DONE : way;
    }

    /** The page of the task. */
    public String address() {
        return base + "/care-tasks/" + task.key();
    }

    /** Where its completion is sent, below the population. */
    public String path() {
        return "/care-tasks/" + task.key() + "/completion";
    }

    /** Where one does it, when that is not here; null when it is. */
    public @Nullable String link() {
        return switch (way()) {
            case LITTER -> base + "/litters/new?dam=" + task.animal();
            case WEIGH -> write("measures");
            case TEST -> write("test");
            case PHOTOGRAPH -> base + "/animals/" + task.animal() + "/photos";
            case QUARANTINE -> base + "/animals/" + task.animal() + "/care-records?kind=quarantine";
            case SEASON -> base + "/season";
            case APPROACH ->
                base + "/approaches/" + task.key().substring(task.key().indexOf(':') + 1);
            case SHARING -> base + "/sharing";
            case MEAL, SHED, DONE -> null;
        };
    }

    private String write(String kind) {
        return "%s/care-records/new?animal=%s&kind=%s&back=%s/today".formatted(base, task.animal(), kind, base);
    }

    /** What the words for its kind leave out: the agent of a test. */
    public String detail() {
        int colon = task.what().indexOf(": ");
        return way() == Way.TEST && colon >= 0 ? task.what().substring(colon + 2) : "";
    }

    public boolean isLate() {
        return task.overdueDays() > 0;
    }

    public boolean isToday() {
        return task.dueOn().equals(day);
    }

    public boolean isTomorrow() {
        return task.dueOn().equals(day.plusDays(1));
    }

    /** A birth: its day is nature's. */
    public boolean isExpected() {
        return task.kind() == CareKind.DUE_WINDOW;
    }

    public boolean isMovable() {
        return !task.kind().isOfABirth() && task.doneOn() == null;
    }

    public boolean isOwn() {
        return task.kind() == CareKind.OWN;
    }

    public LocalDate nextDay() {
        return day.plusDays(1);
    }

    public LocalDate inThreeDays() {
        return day.plusDays(3);
    }

    public LocalDate inAWeek() {
        return day.plusDays(7);
    }
}
