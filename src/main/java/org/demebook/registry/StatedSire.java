package org.demebook.registry;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is stated of a sire.
 *
 * @param kind {@code known} (with animal), {@code unknown}, {@code candidates} (with candidates), {@code none}: the dam
 *     alone, parthenogenesis; or, for a litter that is registered, {@code worked-out}: from the males that she met
 * @param animal studbook number of the known sire
 * @param doubtful with known: true when the link is of low confidence. Where a litter is registered and nothing is said, the
 *     days tell it: a sire that was dead, or long away, when it was conceived is doubtful. Anywhere else nothing said is no
 *     doubt, as after a DNA test
 * @param candidates the males that it may be; what their probabilities leave to 1 is an unrelated, unnamed male
 * @param wholeLitter with candidates or worked-out: true when one and the same male sired the whole litter; false, or
 *     nothing, when each young may have another, as is common in snakes
 * @param fusion with none: {@code terminal} (the default) or {@code central}
 * @param secondDivision with none: share of second-division segregation, 0 (the default) to 1
 */
public record StatedSire(
        @NotNull
        @Pattern(
                regexp = "known|unknown|candidates|none|worked-out",
                message = "is known, unknown, candidates, none or worked-out")
        String kind,

        @Nullable @Size(max = 60) String animal,
        @Nullable Boolean doubtful,
        @Nullable @Size(min = 1, max = MOST_CANDIDATES) List<@NotNull @Valid StatedCandidate> candidates,
        @Nullable Boolean wholeLitter,

        @Nullable @Pattern(regexp = "terminal|central", message = "is terminal or central")
        String fusion,

        @Nullable @DecimalMin("0") @DecimalMax("1") BigDecimal secondDivision) {

    /**
     * A male that it may be.
     *
     * @param animal its studbook number
     * @param probability above 0, at most 1
     */
    public record StatedCandidate(
            @NotNull @Size(max = 60) String animal,

            @NotNull @DecimalMin(value = "0", inclusive = false) @DecimalMax("1")
            BigDecimal probability) {}

    public static final int MOST_CANDIDATES = 20;
    public static final StatedSire UNKNOWN = new StatedSire("unknown", null, null, null, null, null, null);

    /** What stands where no parentage is to be seen. */
    public static StatedSire absent() {
        return UNKNOWN;
    }

    public static StatedSire known(String animal) {
        return new StatedSire("known", animal, null, null, null, null, null);
    }

    /** A sire that is named, with low confidence. */
    public static StatedSire doubted(String animal) {
        return new StatedSire("known", animal, true, null, null, null, null);
    }

    public static StatedSire candidates(List<StatedCandidate> candidates, boolean wholeLitter) {
        return new StatedSire("candidates", null, null, candidates, wholeLitter, null, null);
    }

    public static StatedSire none(@Nullable String fusion, @Nullable BigDecimal secondDivision) {
        return new StatedSire("none", null, null, null, null, fusion, secondDivision);
    }

    /** Whether it is a male that was named with low confidence. */
    public boolean inDoubt() {
        return Boolean.TRUE.equals(doubtful);
    }

    /**
     * What was recorded of a sire, as it was stated.
     *
     * @param numbers studbook numbers of {@link Sire#animalIds}
     */
    public static StatedSire of(Sire sire, Map<UUID, String> numbers) {
        if (sire instanceof Sire.Known known) {
            var number = numbers.get(known.sireId());
            return known.doubtful() ? doubted(number) : known(number);
        } else if (sire instanceof Sire.Candidates several) {
            var candidates = several.candidates().stream()
                    .map(candidate -> new StatedCandidate(numbers.get(candidate.sireId()), candidate.value()))
                    .toList();
            return candidates(candidates, several.drawId() != null);
        } else if (sire instanceof Sire.None none) {
            return none(none.fusion(), new BigDecimal(none.secondDivision()));
        }
        return UNKNOWN;
    }
}
