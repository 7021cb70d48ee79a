package org.demebook.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.demebook.keeper.Standing;
import org.demebook.problem.Rule;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.demebook.registry.Quarantines;
import org.demebook.registry.Quarantines.QuarantineSpan;
import org.demebook.transfer.Departures;
import org.demebook.transfer.Departures.Departure;

/**
 * Whether an animal is put together with another before its quarantine is over: one that was noted, or the one that a
 * newcomer should have had. How long a quarantine usually is stands in the population's profile.
 */
@ApplicationScoped
class QuarantineRule {
    @Inject
    @Any
    Instance<Quarantines> rooms;

    @Inject
    Departures departures;

    /** @param usualDays of a quarantine */
    Optional<Breach> check(Standing by, Custody animal, LocalDate pairedOn, int usualDays) {
        var noted = rooms.stream()
                .flatMap(room -> room.of(by, animal.id()).stream())
                .filter(span -> !span.from().isAfter(pairedOn))
                .toList();
        var goesOn = noted.stream()
                .filter(span -> pairedOn.isBefore(end(span, usualDays)))
                .findFirst();
        return goesOn.map(span -> inQuarantine(animal, span, pairedOn, usualDays))
                .or(() -> newcomer(by, animal, noted, pairedOn, usualDays));
    }

    private static LocalDate end(QuarantineSpan span, int usualDays) {
        if (span.endedOn() != null) {
            return span.endedOn();
        }
        return span.until() == null ? span.from().plusDays(usualDays) : span.until();
    }

    private static Breach inQuarantine(Custody animal, QuarantineSpan span, LocalDate pairedOn, int usualDays) {
        var end = span.endedOn() != null
                ? "which ended on %s".formatted(span.endedOn())
                : span.until() != null
                        ? "planned until %s".formatted(span.until())
                        : "which usually lasts %d days here, until %s".formatted(usualDays, end(span, usualDays));
        return breach(
                pairedOn,
                "%s is in quarantine from %s, %s, and is put to another on %s. Separate the two; if the quarantine was over earlier, note its end."
                        .formatted(animal.number(), span.from(), end, pairedOn));
    }

    /** An animal in hand came with the last transfer that it was in. */
    private Optional<Breach> newcomer(
            Standing by, Custody animal, List<QuarantineSpan> noted, LocalDate pairedOn, int usualDays) {
        return departures.of(by.populationId(), List.of(animal.id())).stream()
                .map(Departure::on)
                .filter(came -> !came.isAfter(pairedOn))
                .max(LocalDate::compareTo)
                .filter(came -> pairedOn.isBefore(came.plusDays(usualDays)))
                .filter(came -> noted.stream().noneMatch(span -> !span.from().isBefore(came)))
                .map(came -> breach(
                        pairedOn,
                        "%s came on %s and is put to another on %s; a newcomer is kept apart for %d days here, until %s, and no quarantine is noted. Separate the two, or note the quarantine and its end."
                                .formatted(animal.number(), came, pairedOn, usualDays, came.plusDays(usualDays))));
    }

    private static Breach breach(LocalDate pairedOn, String message) {
        return Breach.warning(Rule.QUARANTINE_AFTER_PAIRING, "fromOn", pairedOn, message, null);
    }
}
