package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What the years to come may bring if a plan is followed and the seasons after it go on like it. Gene diversity is in [0, 1] throughout.
 * It is a reckoning and no promise; what it assumes is told in words.
 *
 * @param summary in words
 * @param seasons the first is today
 * @param afterThisSeason what chance may make of the plan's own litters
 * @param target when gene diversity falls below it; absent where none was asked about
 * @param withFounders if unrelated founders joined today
 * @param withLongerGenerations if animals matured, and left, a season later
 * @param lastChances of founders whose genes hang on few: as far as you see whose ancestors are whose
 * @param assumptions in words
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record OutlookView(
        String summary,
        List<SeasonAhead> seasons,
        AfterThisSeason afterThisSeason,
        @Nullable Below target,
        Change withFounders,
        Change withLongerGenerations,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<LastChance> lastChances,
        List<String> assumptions) {

    /**
     * The pool after a season.
     *
     * @param season 0 for today
     * @param years from today
     * @param animals in the pool, if all goes as expected
     * @param litters of this season
     * @param geneDiversity if as many young come as are expected of all litters together; mostly somewhat too favourable
     * @param drawn with litters that fail; absent where the population is too large for it
     */
    public record SeasonAhead(
            int season,
            double years,
            int animals,
            int litters,
            double geneDiversity,
            @Nullable Range drawn) {}

    /**
     * Of many draws.
     *
     * @param low one in twenty is not above it
     * @param high one in twenty is above it
     */
    public record Range(double mean, double low, double high) {}

    /**
     * Of those who will be there when the season is over.
     *
     * @param geneDiversity with litters that fail
     * @param geneDiversityOfGenes the same over so many unlinked loci, with what chance does to genes that are handed on
     * @param loci how many
     */
    public record AfterThisSeason(Range geneDiversity, Range geneDiversityOfGenes, int loci) {}

    /**
     * When gene diversity falls below a target; each absent where it does not fall.
     *
     * @param expected if as many young come as are expected
     * @param drawn on the mean of draws; absent where there are none, like the next two
     * @param soonest one course in twenty is there by then
     * @param latest one course in twenty is not yet there
     */
    public record Below(
            double target,
            @Nullable When expected,
            @Nullable When drawn,
            @Nullable When soonest,
            @Nullable When latest) {}

    /** @param guessed it lies beyond the seasons that were looked at */
    public record When(double years, boolean guessed) {}

    /**
     * What would be otherwise, expected against expected.
     *
     * @param what in words
     * @param geneDiversity after the last season
     * @param more than without
     * @param yearsUntilTarget absent where no target was asked about, or it is never passed
     */
    public record Change(
            String what,
            double geneDiversity,
            double more,
            @Nullable When yearsUntilTarget) {}

    /**
     * @param founder studbook number
     * @param share of the population's genes that is expected to be its
     * @param animals studbook numbers of those who carry its genes and may hand them on, the largest share first
     * @param last none of them may breed after this season
     * @param geneDiversityLost after this season, if none of them has its planned litter
     * @param chanceOfLoss that nothing of it is left at a locus after this season, if the plan is followed
     * @param words what this says
     */
    public record LastChance(
            String founder,
            double share,
            List<String> animals,
            boolean last,
            double geneDiversityLost,
            double chanceOfLoss,
            String words) {}
}
