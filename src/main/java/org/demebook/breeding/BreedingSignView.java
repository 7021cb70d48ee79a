package org.demebook.breeding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.gestation.HowKnown;
import org.demebook.problem.Finding;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Something seen of a female's cycle.
 *
 * @param female studbook number
 * @param happenedAt the moment, of labour; absent when only the day is known
 * @param male studbook number of the male in a copulation
 * @param eggs how many were laid
 * @param withdrawn it was not so; it counts for nothing
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record BreedingSignView(
        UUID id,
        String female,
        SignKind kind,
        LocalDate happenedOn,
        @Nullable Instant happenedAt,
        HowKnown howKnown,
        @Nullable String male,
        @Nullable Integer eggs,
        boolean withdrawn,
        @Nullable String notes,
        long revision) {

    /**
     * A sign that was saved.
     *
     * @param warnings what is worth a second look
     */
    @ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
    public record NotedBreedingSign(
            BreedingSignView sign,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Finding> warnings) {}
}
