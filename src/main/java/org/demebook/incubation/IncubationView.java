package org.demebook.incubation;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A clutch in an incubator.
 *
 * @param female studbook number
 * @param readings the latest first
 * @param warnings what the latest reading says, and whether eggs were ever overheated
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record IncubationView(
        UUID id,
        String female,
        LocalDate startedOn,
        @Nullable Integer eggs,
        Degrees setPoint,
        List<ReadingView> readings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> warnings,
        @Nullable String notes,
        long revision) {

    /** @param written as it was read off, with its unit */
    public record Degrees(BigDecimal celsius, BigDecimal fahrenheit, String written) {
        static Degrees of(BigDecimal celsius, String written) {
            return new Degrees(celsius, Temperature.fahrenheit(celsius), written);
        }
    }

    /** @param advice what to do; absent when nothing */
    public record ReadingView(
            UUID id,
            Instant readAt,
            Degrees temperature,
            Warmth warmth,
            @Nullable String advice) {}
}
