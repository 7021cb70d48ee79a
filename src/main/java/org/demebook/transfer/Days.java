package org.demebook.transfer;

import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.INVALID_VALUES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.demebook.registry.Breach;
import org.demebook.registry.Custody;
import org.jspecify.annotations.Nullable;

/** The days of a transfer: until when it stands, and when the animal was handed over. Days end in UTC. */
@ApplicationScoped
class Days {
    static final int OFFER_STANDS = 14;
    static final int CODE_STANDS = 180;

    @Inject
    Clock clock;

    Instant now() {
        return Instant.now(clock).truncatedTo(ChronoUnit.MILLIS);
    }

    /** The moment after the last day; today to a year ahead, else a breach. */
    Instant end(@Nullable LocalDate expiresOn, int usualDays, List<Breach> breaches) {
        var today = today();
        var last = expiresOn == null ? today.plusDays(usualDays) : expiresOn;
        if (last.isBefore(today) || last.isAfter(today.plusYears(1))) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "expiresOn",
                    last,
                    "It can stand from today, %s, to %s; %s is out of that range."
                            .formatted(today, today.plusYears(1), last)));
        }
        return last.plusDays(1).atStartOfDay(ZoneOffset.UTC).toInstant();
    }

    void checkHandedOver(@Nullable LocalDate handedOverOn, Custody animal, List<Breach> breaches) {
        if (handedOverOn == null) {
            return;
        }
        // a day of grace: it may be tomorrow already where the keeper lives
        if (handedOverOn.isAfter(today().plusDays(1))) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE,
                    "handedOverOn",
                    handedOverOn,
                    "%s lies in the future; leave the day out until the animal was handed over."
                            .formatted(handedOverOn)));
        }
        var born = animal.born() == null ? null : animal.born().earliest();
        if (born != null && handedOverOn.isBefore(born)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "handedOverOn",
                    handedOverOn,
                    "%s was born on %s and cannot have been handed over on %s; check the year."
                            .formatted(animal.number(), animal.born(), handedOverOn)));
        }
    }

    private LocalDate today() {
        return LocalDate.ofInstant(now(), ZoneOffset.UTC);
    }
}
