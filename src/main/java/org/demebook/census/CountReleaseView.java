package org.demebook.census;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * Counts as they were released; never changed after.
 *
 * @param population code of the population
 * @param name of the population; absent in releases made before it was kept
 * @param taxon likewise
 * @param keepers how many keepers contribute, as a range; those of one household are one
 * @param cells sexes by age classes, with the totals under {@code all}; then decades of birth, then regions
 * @param geneDiversity of the animals counted, in [0, 1], decimal text of two figures; absent where fewer than three keepers
 *     contribute
 * @param founderGenomeEquivalents from coancestry, decimal text of two figures; absent likewise
 * @param method what was done, in words
 */
@ShownTo(ShownTo.Whom.EVERYBODY)
public record CountReleaseView(
        String population,
        @Nullable String name,
        @Nullable String taxon,
        LocalDate countedOn,
        Instant releasedAt,
        String keepers,
        List<Cell> cells,
        @Nullable String geneDiversity,
        @Nullable String founderGenomeEquivalents,
        String method) {

    /**
     * @param sex {@code female}, {@code male}, {@code unknown} or {@code all}
     * @param age {@code young}, {@code juvenile}, {@code immature} (both together), {@code adult}, {@code unknown} or
     *     {@code all}
     * @param born a decade ({@code 2010s}), {@code before 2010}, {@code unknown} or {@code all}; absent as {@code all}
     * @param region one of the association's, {@code not stated} or {@code all}; absent as {@code all}
     * @param count absent where it is withheld
     * @param lowest what everybody can work out from this release: a count that is withheld is at least this
     * @param highest and at most this; absent where there is no bound
     * @param informationWithheld why there is no count; absent where there is one
     */
    public record Cell(
            String sex,
            String age,
            @Nullable String born,
            @Nullable String region,
            @Nullable Integer count,
            @Nullable Integer lowest,
            @Nullable Integer highest,
            @Nullable String informationWithheld) {}
}
