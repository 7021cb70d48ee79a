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
 * @param keepers how many keepers contribute, as a range; those of one household are one
 * @param cells by sex and age class, with the totals under {@code all}
 * @param geneDiversity of the animals counted, in [0, 1], decimal text of two figures; absent where fewer than three keepers
 *     contribute
 * @param founderGenomeEquivalents from coancestry, decimal text of two figures; absent likewise
 * @param method what was done, in words
 */
@ShownTo(ShownTo.Whom.EVERYBODY)
public record CountReleaseView(
        String population,
        LocalDate countedOn,
        Instant releasedAt,
        String keepers,
        List<Cell> cells,
        @Nullable String geneDiversity,
        @Nullable String founderGenomeEquivalents,
        String method) {

    /**
     * @param sex {@code female}, {@code male}, {@code unknown} or {@code all}
     * @param age {@code young}, {@code juvenile}, {@code adult}, {@code unknown} or {@code all}
     * @param count absent where it is withheld
     * @param informationWithheld why there is no count; absent where there is one
     */
    public record Cell(
            String sex,
            String age,
            @Nullable Integer count,
            @Nullable String informationWithheld) {}
}
