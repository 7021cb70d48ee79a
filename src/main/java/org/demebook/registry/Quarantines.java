package org.demebook.registry;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.keeper.Standing;
import org.jspecify.annotations.Nullable;

/** When an animal was kept apart; a room that knows such things has a bean of this kind. */
public interface Quarantines {
    /**
     * @param until planned last day; null: as long as the population's profile says
     * @param endedOn when it was over; null while it goes on
     */
    record QuarantineSpan(
            LocalDate from,
            @Nullable LocalDate until,
            @Nullable LocalDate endedOn) {}

    /** What was noted of an animal in the asker's collections, the first first. */
    List<QuarantineSpan> of(Standing by, UUID animalId);
}
