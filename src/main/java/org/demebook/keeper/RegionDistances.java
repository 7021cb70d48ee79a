package org.demebook.keeper;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Optional;
import org.demebook.rest.ShownTo;

/**
 * How far apart regions of a population are, which tells nothing of who is where.
 *
 * @param pairs of regions; of a pair that is not there nothing is known
 */
@ShownTo(ShownTo.Whom.MEMBERS)
public record RegionDistances(
        @NotNull @Size(max = RegionDistances.MOST) List<@NotNull @Valid RegionPair> pairs) {
    static final int MOST = NewRegions.MOST * (NewRegions.MOST - 1) / 2;

    /**
     * Two regions, in whatever order.
     *
     * @param kilometres about so far, from the middle of one to the middle of the other
     * @param border whether an animal needs a permit to go from one to the other
     */
    public record RegionPair(
            @NotBlank @Size(max = NewRegions.LONGEST) String one,
            @NotBlank @Size(max = NewRegions.LONGEST) String other,
            @Min(0) @Max(20_000) int kilometres,
            boolean border) {
        boolean isOf(String region, String another) {
            return one.equals(region) && other.equals(another) || one.equals(another) && other.equals(region);
        }
    }

    /** What is known of two regions; a region is no way from itself, and no border lies within it. */
    public Optional<RegionPair> between(String one, String other) {
        return one.equals(other)
                ? Optional.of(new RegionPair(one, other, 0, false))
                : pairs.stream().filter(pair -> pair.isOf(one, other)).findFirst();
    }
}
