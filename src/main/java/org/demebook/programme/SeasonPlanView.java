package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * A season's plan as a coordinator sees it. Two figures, never one score: gene diversity of the population after the season, and
 * inbreeding of the young; the curve tells what one costs of the other. Figures are those of the day on which it was computed.
 *
 * @param follows the plan before, whose answers it keeps to
 * @param issuedOn absent of a draft
 * @param inForce it is the last that was issued
 * @param pairOn the day on which animals are put together
 * @param geneDiversityNow of the living, in [0, 1]; those who will soon be too old to breed count for less, unless the draft was asked
 *     not to look ahead
 * @param geneDiversityAfter when the young that are reckoned with have joined them, in [0, 1]
 * @param geneDiversityAgreedOnly if only litters were born that both keepers have accepted, in [0, 1]
 * @param ofTheLiving the same with every living animal counted as one; absent where the plan counts them so
 * @param geneDiversityAtBest what no plan under these constraints exceeds: proven, in [0, 1]
 * @param withinOfBest by which part of the least possible mean kinship that of the plan may be above it; 0.002 is 0.2 %
 * @param meanInbreeding of the young that are reckoned with, in [0, 1]
 * @param leastInbred proven: with the same litters for each animal no young could be less inbred
 * @param whole false where somebody stopped it before its time
 * @param summary in words
 * @param litters whose animals the reader may see now
 * @param curve from most gene diversity to least inbred young; absent until it is computed
 * @param computedFrom SHA-256 of what it was computed with
 * @param seed of the search's random numbers
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record SeasonPlanView(
        UUID id,
        @Nullable UUID follows,
        @Nullable LocalDate issuedOn,
        boolean inForce,
        LocalDate pairOn,
        double geneDiversityNow,
        double geneDiversityAfter,
        double geneDiversityAgreedOnly,
        @Nullable Living ofTheLiving,
        double geneDiversityAtBest,
        double withinOfBest,
        double meanInbreeding,
        boolean leastInbred,
        boolean whole,
        String summary,
        List<ProposedLitter> litters,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Point> curve,
        String computedFrom,
        long seed) {

    /** Gene diversity now and after the season, in [0, 1]. */
    public record Living(double now, double after) {}

    /**
     * @param dam studbook number; of one that is only imagined, what it is called
     * @param sire likewise
     * @param keep how many of the young to keep, if they are born: the fewest that leave most gene diversity
     * @param young that are reckoned with: the chance of a litter times the number kept
     * @param inbreedingOfYoung F of each, in [0, 1]
     * @param adds gene diversity that would be missing without this litter; below 0 for one that lowers it
     * @param state what both keepers answered, together
     * @param ifRefused what a refusal would cost; absent until it is computed
     * @param reason in words
     */
    public record ProposedLitter(
            UUID id,
            String dam,
            String sire,
            int keep,
            double young,
            double inbreedingOfYoung,
            double adds,
            LitterState state,
            @Nullable IfRefused ifRefused,
            String reason) {}

    /**
     * Gene diversity after the season that is lost at most, the season planned anew around the refusal; each absent where no plan would be
     * left.
     *
     * @param thisPair the two are not paired
     * @param anyOfHers she has no litter
     * @param anyOfHis he has no litter
     */
    public record IfRefused(
            @Nullable Double thisPair,
            @Nullable Double anyOfHers,
            @Nullable Double anyOfHis) {}

    /** A plan that gives up gene diversity for less inbred young. */
    public record Point(double geneDiversity, double meanInbreeding) {}
}
