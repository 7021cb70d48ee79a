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
import org.demebook.problem.LeftAsIs;
import org.demebook.registry.StatedSire;
import org.demebook.registry.TwinKind;
import org.jspecify.annotations.Nullable;

/**
 * A litter to be registered. Live-born, stillborn, part-developed and unfertilised together are the ova found; each count
 * is as {@link Outcome} says.
 *
 * @param dam studbook number; she is in a collection of yours. Where another number stands for hers, it is written down
 *     for that
 * @param born the day of the birth, as precisely as it is known
 * @param sire nothing when unknown; of the kind {@code worked-out}, found from the males that she met
 * @param origin of the young: {@code captive-bred} when nothing is said, {@code unknown} for a dam taken from the wild gravid
 * @param young what is known of the live-born one by one, in the order in which they get their numbers; those left out are
 *     unsexed. Malformed young that are not told here get the last numbers
 * @param twins which of the live-born came from one sac
 * @param collection id of the collection that the young go to; nothing for the dam's
 * @param leave findings that are as they are, with the reason
 */
public record NewLitter(
        @NotNull @Size(max = 60) String dam,
        @NotNull RoughDate born,
        @Nullable @Valid StatedSire sire,
        @Nullable Origin origin,
        @NotNull @Min(0) @Max(MOST) Integer liveBorn,
        @Nullable @Min(0) @Max(MOST) Integer malformedLive,
        @NotNull @Min(0) @Max(MOST) Integer stillborn,
        @Nullable @Min(0) @Max(MOST) Integer malformedStillborn,
        @Nullable @Min(0) @Max(MOST) Integer partDeveloped,
        @NotNull @Min(0) @Max(MOST) Integer unfertilised,
        @Nullable @Min(0) @Max(MOST) Integer infertile,
        @Nullable @Min(0) @Max(MOST) Integer earlyDead,
        @NotNull @Min(1) @Max(MOST) Integer ovaFound,
        @Nullable @Size(max = MOST) List<@NotNull @Valid NewYoung> young,
        @Nullable @Size(max = MOST) List<@NotNull @Valid NewTwins> twins,
        @Nullable UUID collection,
        @Nullable @Size(max = 2000) String notes,
        @Nullable @Size(max = 20) List<@NotNull @Valid LeftAsIs> leave) {
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

    /**
     * Two of the live-born that came from one sac.
     *
     * @param young their places among the live-born, from 0, in the order of their numbers
     */
    public record NewTwins(
            @NotNull @Size(min = 2, max = 2) List<@NotNull @Min(0) @Max(MOST) Integer> young,
            @NotNull TwinKind kind) {}

    Outcome outcome() {
        return new Outcome(
                liveBorn,
                malformedLive,
                stillborn,
                malformedStillborn,
                partDeveloped,
                unfertilised,
                infertile,
                earlyDead,
                ovaFound);
    }
}
