package org.demebook.care;

import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A task of your own.
 *
 * @param animal studbook number of the one that it is about; it must be in your hands
 * @param collection whose task it is; needed when it is about no animal and you act for several collections
 * @param everyDays it is due again so many days after it was done; once when nothing is said
 */
public record NewCareTask(
        @Nullable @Size(max = 40) String animal,
        @Nullable UUID collection,

        @NotBlank
        @Size(max = 120)
        @Pattern(regexp = "\\P{Cntrl}*", message = "is one line of text, without control characters")
        String what,

        @NotNull LocalDate dueOn,
        @Nullable @Min(1) @Max(1000) Integer everyDays) {}
