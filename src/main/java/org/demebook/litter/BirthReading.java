package org.demebook.litter;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Breach;
import org.jspecify.annotations.Nullable;

/**
 * What the counts and sexes of a litter tell when it is registered; a room that reads them has a bean of this kind.
 *
 * <p>Called within the transaction that registers a litter, with the population locked: answer from a few rows.
 */
public interface BirthReading {
    /**
     * A litter that is about to be registered.
     *
     * @param id that it is going to have
     * @param sexes of the live-born, one each
     * @param bornEarliest null where the day is open
     * @param lastMetOn the last day on which a male was with her; null where none is on record
     */
    record LitterAtBirth(
            UUID id,
            Outcome outcome,
            List<Sex> sexes,
            @Nullable LocalDate bornEarliest,
            @Nullable LocalDate lastMetOn) {}

    /** What is worth a second look in it. */
    List<Breach> check(Standing by, LitterAtBirth litter);
}
