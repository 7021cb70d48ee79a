package org.demebook.breeding;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.demebook.breeding.CycleView.Due;
import org.demebook.breeding.CycleView.Months;
import org.demebook.breeding.CycleView.Reminder;
import org.demebook.gestation.DueWindow;
import org.demebook.gestation.Landmark;
import org.demebook.gestation.Meeting;
import org.demebook.taxon.TaxonProfile.Gestation;
import org.jspecify.annotations.Nullable;

/** A cycle told to its keeper: days, reminders, the reason, and what is to be done now. */
record CycleWords(Gestation profile, Cycles.Awaited awaited, LocalDate day) {
    static final String OVERDUE =
            "She is past the usual window. Watch for straining, weakness and discharge; see a reptile veterinarian.";
    static final String OVERDUE_EGGS =
            "They are past the usual window. Leave sound eggs as they are; if she is unwell or kept some of the clutch back, see a reptile veterinarian.";

    /**
     * What introductions alone can tell. Four to eight months from mating to birth: general texts; WikiVet has five to eight.
     */
    record Pairing(Months months, String reason) {
        private static final int FEWEST_MONTHS = 4;
        private static final int MOST_MONTHS = 8;

        boolean isOver(LocalDate day) {
            return YearMonth.from(day).isAfter(YearMonth.parse(months.until()));
        }

        /** Of the meetings since her last litter; empty when there was none. */
        static Optional<Pairing> of(List<Meeting> meetings, Cycle cycle, LocalDate day) {
            var recent = meetings.stream()
                    .filter(meeting -> meeting.untilOn().isAfter(cycle.since())
                            && !meeting.fromOn().isAfter(day))
                    .toList();
            if (recent.isEmpty()) {
                return Optional.empty();
            }
            var first = recent.stream()
                    .map(Meeting::fromOn)
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            var last = recent.stream()
                    .map(Meeting::untilOn)
                    .max(Comparator.naturalOrder())
                    .orElseThrow();
            var start = first.isAfter(cycle.since()) ? first : cycle.since();
            return Optional.of(new Pairing(
                    new Months(
                            YearMonth.from(start.plusMonths(FEWEST_MONTHS)).toString(),
                            YearMonth.from(last.plusMonths(MOST_MONTHS)).toString()),
                    "Only pairings are noted, from %s to %s. Copulation does not fix conception; sperm can wait. So there are months and no day: note the ovulation or the shed that follows it."
                            .formatted(first, last)));
        }
    }

    @Nullable
    Due due() {
        if (awaited.due().isEmpty()) {
            return null;
        }
        var due = awaited.due().get();
        var sign = awaited.best().orElseThrow();
        return new Due(
                sign.id(),
                sign.kind(),
                sign.on(),
                sign.howKnown(),
                due.expectedOn(),
                (int) Math.round(due.expectedDays()),
                (int) Math.round(due.spreadDays()),
                due.fifty(),
                due.ninety(),
                due.likely(),
                due.earliestOn(),
                due.overdueOn(),
                due.withoutHistoryOn(),
                List.of(
                        new Reminder(due.earliestOn(), earliest(due)),
                        new Reminder(due.likely().fromOn(), likely(due)),
                        new Reminder(due.overdueOn(), overdue(due))));
    }

    String reason() {
        return awaited.due()
                .map(DueWindow::reason)
                .orElseGet(() -> awaited.cycle().gravid()
                        ? "No day can be told from what is noted: note the laying, from which the hatching is counted."
                        : "Nothing is noted since her last litter, or for %d days.".formatted(Cycle.DAYS));
    }

    /** What is to be done now, the most urgent first. */
    List<String> prompts(Instant now) {
        var prompts = new ArrayList<String>();
        awaited.cycle().labour().ifPresent(labour -> prompts.add(new Labour(labour.moment()).prompt(now)));
        if (awaited.cycle().state() == Cycle.State.LABOUR_FINISHED) {
            prompts.add(
                    "Labour is over: register the litter with all that was found, or, if nothing came, see a reptile veterinarian.");
        }
        var waits =
                awaited.cycle().state() == Cycle.State.GRAVID || awaited.cycle().state() == Cycle.State.LAID;
        if (waits && awaited.due().isPresent()) {
            var due = awaited.due().get();
            if (!day.isBefore(due.overdueOn())) {
                prompts.add(overdue(due));
            } else if (!day.isBefore(due.likely().fromOn())) {
                prompts.add(likely(due));
            } else if (!day.isBefore(due.earliestOn())) {
                prompts.add(earliest(due));
            }
        }
        return prompts;
    }

    static String earliest(DueWindow due) {
        return "From this day on a %s is to be reckoned with; have everything ready."
                .formatted(due.from().landmark().end());
    }

    static String likely(DueWindow due) {
        return "The likely days for a %s begin and last to %s; look in every day."
                .formatted(due.from().landmark().end(), due.likely().untilOn());
    }

    static String overdue(DueWindow due) {
        return due.from().landmark() == Landmark.LAYING ? OVERDUE_EGGS : OVERDUE;
    }
}
