package org.demebook.ancestry;

import java.util.function.DoubleUnaryOperator;
import org.demebook.kinship.KinshipRange;
import org.demebook.kinship.Pedigree;
import org.jspecify.annotations.Nullable;

/**
 * What a figure would be if every sire that is one of several were known. The figure itself is the mean of all cases, each
 * weighed by its probability.
 *
 * @param lowest in [0, 1]
 * @param highest in [0, 1]
 * @param cases how many ways to name the sires were tried
 * @param allCases false: there are more, these were drawn by their probabilities, and the range may be wider
 */
public record FigureRange(double lowest, double highest, int cases, boolean allCases) {
    private static final int MOST_CASES = 64;
    private static final long SEED = 1; // the same question has the same answer

    /** Of two animals by their rows; null where it depends on no such sire. */
    public static @Nullable FigureRange ofKinship(Pedigree pedigree, int row, int other) {
        return of(pedigree, row, other, kinship -> kinship);
    }

    static @Nullable FigureRange ofInbreeding(Pedigree pedigree, int row) {
        return of(pedigree, row, row, self -> 2 * self - 1);
    }

    /** Null where it depends on no such sire. */
    private static @Nullable FigureRange of(Pedigree pedigree, int row, int other, DoubleUnaryOperator figure) {
        if (!pedigree.hasUncertainSires()) {
            return null;
        }
        KinshipRange range = pedigree.kinshipRange(row, other, MOST_CASES, SEED);
        return range.assignments() == 1
                ? null
                : new FigureRange(
                        figure.applyAsDouble(range.lowest()),
                        figure.applyAsDouble(range.highest()),
                        range.assignments(),
                        range.exhaustive());
    }
}
