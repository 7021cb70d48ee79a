package org.demebook.ancestry;

import static org.demebook.kinship.Convention.UNKNOWN_FULL_SIBS;

import java.time.LocalDate;
import java.util.List;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * The living animals that the asker sees, over the years: how many, how old, what genes they had, and what drift alone would leave of
 * these. An animal that only counts in figures is in none of it, since its days would follow from it. Method:
 * docs/methods/population-over-time.md.
 *
 * @param course by year, the last one today; none from before the first animal is known to have lived, and of 60 years at most
 * @param ages of those who live today, the youngest first; last, if there are any, those whose age is not known
 * @param notShown how many living animals count in the gene pool and are not in the course, since they are not shown
 * @param sinceUnknown how many of those who live today are not in the course of earlier years, since nobody knows since when they live
 * @param drift absent where no young of known parents was born within a generation
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record PoolOverTime(
        List<YearEnd> course,
        List<AgeGroup> ages,
        int notShown,
        int sinceUnknown,
        @Nullable Drift drift) {

    /**
     * The pool of those known to live on a day: on the last of the year, or today.
     *
     * @param geneDiversity in [0, 1]; absent where nobody lives
     * @param geneDiversityIfUnknownAreSiblings what it would be if all unknown parents were full siblings; the same where none is unknown
     * @param knownAncestry the share of all genes, in [0, 1], that traces to stated founders; absent where nobody lives
     */
    public record YearEnd(
            LocalDate on,
            int living,
            @Nullable Double geneDiversity,
            @Nullable Double geneDiversityIfUnknownAreSiblings,
            @Nullable Double knownAncestry) {

        static YearEnd of(Snapshot snapshot, LocalDate on, int[] rows) {
            if (rows.length == 0) {
                return new YearEnd(on, 0, null, null, null);
            }
            var pool = snapshot.pedigree().pool(rows);
            double known = pool.knownFraction();
            return new YearEnd(
                    on,
                    rows.length,
                    pool.geneDiversity(),
                    known == 1
                            ? pool.geneDiversity()
                            : snapshot.pedigree()
                                    .under(UNKNOWN_FULL_SIBS)
                                    .pool(rows)
                                    .geneDiversity(),
                    known);
        }
    }

    /**
     * Animals of an age, in full years; of a birth that is known roughly the latest day counts, so they may be older.
     *
     * @param from absent where the age is not known
     * @param to the last year of the class
     */
    public record AgeGroup(@Nullable Integer from, @Nullable Integer to, int males, int females, int unknown) {}

    /**
     * What drift did, by those who bred within the last generation, and would leave of today's gene diversity.
     *
     * @param generationYears the mean age of parents at the births of their young
     * @param sires known and shown, of young born within the last generation
     * @param dams likewise
     * @param effectiveSize from these: 4 · sires · dams / (sires + dams)
     * @param effectiveSizeByInbreeding from the rise of mean inbreeding between young of the generation before and of the last one;
     *     absent where it did not rise, or one of them had no young
     * @param ahead by year
     */
    public record Drift(
            double generationYears,
            int sires,
            int dams,
            double effectiveSize,
            @Nullable Double effectiveSizeByInbreeding,
            List<YearAhead> ahead) {}

    /**
     * @param geneDiversity expected at the effective size by those who bred
     * @param low at the smaller of the two effective sizes
     * @param high at the larger
     */
    public record YearAhead(int year, double geneDiversity, double low, double high) {}
}
