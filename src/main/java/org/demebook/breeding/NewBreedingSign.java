package org.demebook.breeding;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import org.demebook.gestation.HowKnown;
import org.jspecify.annotations.Nullable;

/**
 * Something seen of a female's cycle.
 *
 * @param happenedOn the local day
 * @param happenedAt the moment, for labour; nothing when only the day is known
 * @param howKnown {@code seen} when nothing is said; {@code skin-found} only of a shed
 * @param male studbook number of the male in a copulation
 * @param eggs how many were laid
 */
public record NewBreedingSign(
        @NotNull SignKind kind,
        @NotNull LocalDate happenedOn,
        @Nullable Instant happenedAt,
        @Nullable HowKnown howKnown,
        @Nullable @Size(max = 60) String male,
        @Nullable @Min(1) @Max(500) Integer eggs,
        @Nullable @Size(max = 2000) String notes) {}
