package org.demebook.incubation;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A clutch that goes into an incubator. */
public record NewIncubation(
        @NotNull LocalDate startedOn,
        @NotNull @Valid Temperature setPoint,
        @Nullable @Min(1) @Max(500) Integer eggs,
        @Nullable @Size(max = 2000) String notes) {

    /**
     * A thermometer read off.
     *
     * @param readAt nothing for now
     */
    public record NewReading(
            @Nullable Instant readAt, @NotNull @Valid Temperature temperature) {}
}
