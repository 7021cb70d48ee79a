package org.demebook.programme;

import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A season that a coordinator wants a plan for. What keepers state of their animals and collections holds besides.
 *
 * @param pairOn the day on which animals are put together: ages, rests, tests and quarantines are counted to it
 * @param litters so many, no more and no fewer; not together with {@code littersAtMost}
 * @param littersAtMost no more than so many, fewer where more would not help; a quarter of the living when nothing is said
 * @param youngKept of each litter, if it is born; 2 when nothing is said
 * @param youngInAll young to keep of all litters together, spread over them as does most good, {@code youngKept} of one at most (4 when
 *     nothing is said); together with {@code litters}, and each litter is taken as certain then
 * @param chanceOfLitter that a pair has a litter at all; 0.7 when nothing is said (common practice, no source)
 * @param maximumInbreeding no young more inbred than this; 0.125 when nothing is said
 * @param leastKnownAncestry animals of whose genome less is traced to stated founders are left out; 0 when nothing is said
 * @param lookAhead whether animals that will soon be too old to breed count for less, so that their genes are handed on in time; true when
 *     nothing is said
 * @param littersOfMale at most so many of one male; 2 when nothing is said
 * @param together pairs that stand in every plan
 * @param apart pairs that stand in none
 * @param leftOut studbook numbers of animals that are not to breed
 * @param follows the plan whose answers are kept to: what both keepers accepted stays, what one of them cannot or does not want is not
 *     proposed again
 * @param whatIf what is not so, and only looked at
 * @param seed of the search's random numbers; 1 when nothing is said
 */
public record NewDraft(
        @NotNull LocalDate pairOn,
        @Nullable @Min(0) @Max(5000) Integer litters,
        @Nullable @Min(0) @Max(5000) Integer littersAtMost,
        @Nullable @Min(1) @Max(30) Integer youngKept,
        @Nullable @Min(0) @Max(5000) Integer youngInAll,
        @Nullable @DecimalMin("0.01") @DecimalMax("1") BigDecimal chanceOfLitter,
        @Nullable @DecimalMin("0") @DecimalMax("1") BigDecimal maximumInbreeding,
        @Nullable @DecimalMin("0") @DecimalMax("1") BigDecimal leastKnownAncestry,
        @Nullable Boolean lookAhead,
        @Nullable @Min(1) @Max(100) Integer littersOfMale,
        @Nullable @Size(max = 1000) List<@Valid @NotNull Two> together,
        @Nullable @Size(max = 1000) List<@Valid @NotNull Two> apart,
        @Nullable @Size(max = 1000) List<@NotBlank @Size(max = 60) String> leftOut,
        @Nullable UUID follows,
        @Nullable @Valid WhatIf whatIf,
        @Nullable @Min(0) @Max(1L << 53) Long seed) {

    /** Studbook numbers of a pair. */
    public record Two(
            @NotBlank @Size(max = 60) String dam,
            @NotBlank @Size(max = 60) String sire) {}

    /**
     * @param newFemales founders that would join, unrelated to all
     * @param newMales likewise
     * @param lost studbook numbers: these, and all that are known to live with one of them, would be gone
     * @param capacity how many litters the collection of an animal would take
     */
    public record WhatIf(
            @Nullable @Min(0) @Max(20) Integer newFemales,
            @Nullable @Min(0) @Max(20) Integer newMales,
            @Nullable @Size(max = 100) List<@NotBlank @Size(max = 60) String> lost,
            @Nullable @Size(max = 100) List<@Valid @NotNull Capacity> capacity) {

        int founders() {
            return orZero(newFemales) + orZero(newMales);
        }
    }

    /** @param animal studbook number of one that lives there */
    public record Capacity(
            @NotBlank @Size(max = 60) String animal,
            @Min(0) @Max(5000) int litters) {}

    private static final double USUAL_CHANCE = 0.7;
    private static final double USUAL_MAXIMUM_INBREEDING = 0.125;
    private static final int USUAL_LITTERS_OF_MALE = 2;
    private static final int USUAL_YOUNG = 2;
    private static final int USUAL_MOST_YOUNG = 4;

    double chance() {
        return youngInAll != null ? 1 : chanceOfLitter == null ? USUAL_CHANCE : chanceOfLitter.doubleValue();
    }

    double inbreedingAtMost() {
        return maximumInbreeding == null ? USUAL_MAXIMUM_INBREEDING : maximumInbreeding.doubleValue();
    }

    double knownAtLeast() {
        return leastKnownAncestry == null ? 0 : leastKnownAncestry.doubleValue();
    }

    boolean looksAhead() {
        return lookAhead == null || lookAhead;
    }

    int littersOfAMale() {
        return littersOfMale == null ? USUAL_LITTERS_OF_MALE : littersOfMale;
    }

    int young() {
        return youngKept != null ? youngKept : youngInAll != null ? USUAL_MOST_YOUNG : USUAL_YOUNG;
    }

    List<Two> pairsTogether() {
        return together == null ? List.of() : together;
    }

    List<Two> pairsApart() {
        return apart == null ? List.of() : apart;
    }

    List<String> animalsLeftOut() {
        return leftOut == null ? List.of() : leftOut;
    }

    List<String> animalsLost() {
        return whatIf == null || whatIf.lost == null ? List.of() : whatIf.lost;
    }

    List<Capacity> capacities() {
        return whatIf == null || whatIf.capacity == null ? List.of() : whatIf.capacity;
    }

    int femaleFounders() {
        return whatIf == null ? 0 : orZero(whatIf.newFemales);
    }

    int maleFounders() {
        return whatIf == null ? 0 : orZero(whatIf.newMales);
    }

    long seedOrOne() {
        return seed == null ? 1 : seed;
    }

    private static int orZero(@Nullable Integer number) {
        return number == null ? 0 : number;
    }
}
