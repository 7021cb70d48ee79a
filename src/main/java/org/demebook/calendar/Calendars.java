package org.demebook.calendar;

import static org.demebook.problem.ProblemType.NO_SUCH_CALENDAR;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.demebook.care.CareTasks;
import org.demebook.keeper.Asker;
import org.demebook.keeper.Keepers;
import org.demebook.problem.Refusal;
import org.demebook.registry.Populations;

/** The calendars of the keepers of this node. */
@ApplicationScoped
public class Calendars {
    private static final int DAYS_BACK = 60;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    CareTasks tasks;

    @Inject
    Clock clock;

    /** Makes the secret address of the asker's calendar; an earlier one leads nowhere from now on. */
    @Transactional
    public CalendarView open(Asker by) {
        var now = Instant.now(clock).truncatedTo(ChronoUnit.MILLIS);
        return new CalendarView("/api/v1/calendars/" + CalendarAddress.issue(by.keeperId(), now) + ".ics", now);
    }

    /** When the present address was made; the address itself is not kept. */
    @Transactional
    public CalendarView get(Asker by) {
        return CalendarAddress.<CalendarAddress>findByIdOptional(by.keeperId())
                .map(address -> new CalendarView(null, address.openedAt))
                .orElse(new CalendarView(null, null));
    }

    /** The address leads nowhere from now on. */
    @Transactional
    public void close(Asker by) {
        CalendarAddress.deleteById(by.keeperId());
    }

    /**
     * The calendar at a secret address, as text: open care tasks and due windows of all populations of its keeper, from
     * {@value #DAYS_BACK} days back to {@value CareTasks#MOST_DAYS_AHEAD} ahead. Refuses with NO_SUCH_CALENDAR alike when
     * the secret is mistyped, renewed, closed, or of somebody who is gone.
     */
    public String feed(String secret) {
        var entries = QuarkusTransaction.joiningExisting().call(() -> entries(keeper(secret)));
        return new Feed(entries, Instant.now(clock)).text();
    }

    private Asker keeper(String secret) {
        return CalendarAddress.of(secret)
                .flatMap(address -> keepers.names(Set.of(address.keeperId)).entrySet().stream()
                        .findFirst()
                        .map(keeper -> new Asker(keeper.getKey(), keeper.getValue(), false)))
                .orElseThrow(
                        () -> new Refusal(
                                NO_SUCH_CALENDAR,
                                "The address is mistyped, or its keeper made a new one or closed it; make a new one and give it to your calendar."));
    }

    private List<Feed.Entry> entries(Asker keeper) {
        var today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        var entries = new ArrayList<Feed.Entry>();
        for (var population : populations.of(keeper)) {
            var by = keepers.standing(keeper, population.code());
            tasks.open(by, today.minusDays(DAYS_BACK), today.plusDays(CareTasks.MOST_DAYS_AHEAD))
                    .forEach(task -> entries.add(new Feed.Entry(by.populationId(), task)));
        }
        return entries;
    }
}
