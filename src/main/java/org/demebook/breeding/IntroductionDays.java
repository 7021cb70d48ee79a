package org.demebook.breeding;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** The days of an introduction as they were. */
public record IntroductionDays(
        @NotNull LocalDate fromOn,
        @Nullable LocalDate untilOn,
        @Nullable @Size(max = 2000) String notes) {}
