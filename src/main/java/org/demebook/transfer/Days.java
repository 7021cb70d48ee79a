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
public class Days {
    public static final int OFFER_STANDS = 14;
    static final int CODE_STANDS = 180;

    @Inject
    Clock clock;

    public Instant now() {
        return Instant.now(clock).truncatedTo(ChronoUnit.MILLIS);
    }

    /** The moment after the last day; today to a year ahead, else a breach. */
    public Instant end(@Nullable LocalDate expiresOn, int usualDays, List<Breach> breaches) {
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

    public void checkHandedOver(@Nullable LocalDate handedOverOn, Custody animal, List<Breach> breaches) {
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

    /**
     * A day on which an animal was seen: past, after its birth, and not before it was handed over.
     *
     * @param gaveItOn when the one who saw it had handed it over; null when they did not, or did not say
     */
    void checkSeen(LocalDate seenOn, Custody animal, @Nullable LocalDate gaveItOn, List<Breach> breaches) {
        // a day of grace: it may be tomorrow already where the keeper lives
        if (seenOn.isAfter(today().plusDays(1))) {
            breaches.add(Breach.error(
                    DATE_IN_FUTURE,
                    "seenOn",
                    seenOn,
                    "%s lies in the future; say on which day you saw it.".formatted(seenOn)));
        }
        var born = animal.born() == null ? null : animal.born().earliest();
        if (born != null && seenOn.isBefore(born)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "seenOn",
                    seenOn,
                    "%s was born on %s and cannot have been seen on %s; check the year."
                            .formatted(animal.number(), animal.born(), seenOn)));
        }
        if (gaveItOn != null && seenOn.isBefore(gaveItOn)) {
            breaches.add(Breach.error(
                    INVALID_VALUES,
                    "seenOn",
                    seenOn,
                    "You handed %s over on %s, so that it was still with you on %s: there is nothing to dispute. Say when you saw it since."
                            .formatted(animal.number(), gaveItOn, seenOn)));
        }
    }

    private LocalDate today() {
        return LocalDate.ofInstant(now(), ZoneOffset.UTC);
    }
}
