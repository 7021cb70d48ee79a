package org.demebook.litter;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.UUID;
import org.demebook.notation.Origin;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.registry.StatedSire;
import org.jspecify.annotations.Nullable;

/**
 * A litter to be registered. Live-born, stillborn and unfertilised together are the ova found.
 *
 * @param dam studbook number; she is in a collection of yours
 * @param born the day of the birth, as precisely as it is known
 * @param sire nothing when unknown
 * @param origin of the young: {@code captive-bred} when nothing is said, {@code unknown} for a dam taken from the wild gravid
 * @param liveBorn all that were alive, the malformed ones included
 * @param malformedLive how many of the live-born are malformed; nothing for none
 * @param malformedStillborn how many of the stillborn are malformed; nothing for none
 * @param young what is known of the live-born one by one, in the order in which they get their numbers; those left out are
 *     unsexed. Malformed young that are not told here get the last numbers
 * @param collection id of the collection that the young go to; nothing for the dam's
 */
public record NewLitter(
        @NotNull @Size(max = 60) String dam,
        @NotNull RoughDate born,
        @Nullable @Valid StatedSire sire,
        @Nullable Origin origin,
        @NotNull @Min(0) @Max(MOST) Integer liveBorn,
        @NotNull @Min(0) @Max(MOST) Integer stillborn,
        @NotNull @Min(0) @Max(MOST) Integer unfertilised,
        @NotNull @Min(1) @Max(MOST) Integer ovaFound,
        @Nullable @Min(0) @Max(MOST) Integer malformedLive,
        @Nullable @Min(0) @Max(MOST) Integer malformedStillborn,
        @Nullable @Size(max = MOST) List<@NotNull @Valid NewYoung> young,
        @Nullable UUID collection,
        @Nullable @Size(max = 2000) String notes) {
    static final int MOST = 200;

    /**
     * One live-born young.
     *
     * @param sex nothing when unknown
     * @param malformed nothing when it is one of those that are counted only
     * @param ownReference what you call it in your own lists; yours alone, and only once
     */
    public record NewYoung(
            @Nullable Sex sex,
            @Nullable Boolean malformed,
            @Nullable @Size(min = 1, max = 60) String ownReference,
            @Nullable @Size(max = 20) List<@NotNull @Size(min = 1, max = 200) String> marks,
            @Nullable @Size(max = 2000) String notes) {}

    Outcome outcome() {
        return new Outcome(liveBorn, stillborn, unfertilised, ovaFound, malformedLive, malformedStillborn);
    }
}
