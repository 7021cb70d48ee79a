package org.demebook.breeding;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One male put together with one female.
 *
 * @param female studbook number
 * @param male studbook number
 * @param fromOn first day together
 * @param untilOn last day together; nothing while they are
 */
public record NewIntroduction(
        @NotNull @Size(max = 60) String female,
        @NotNull @Size(max = 60) String male,
        @NotNull LocalDate fromOn,
        @Nullable LocalDate untilOn,
        @Nullable @Size(max = 2000) String notes) {}
