package org.demebook.kinship;

/**
 * How the egg of a fatherless young got its second set of chromosomes.
 *
 * <p>Source: formulas for F after terminal and central fusion as in Pearcy, Hardy &amp; Aron (2006), Heredity 96:
 * 377–382 (from memory).
 */
public enum Fusion {
    /** With the sister nucleus of the second division: F = 1 − y·(1 − F of the dam). */
    TERMINAL,

    /** With a nucleus of the other first-division product: F = F of the dam + (y/2)·(1 − F of the dam). */
    CENTRAL;

    /**
     * The probability that a young keeps both genes that its dam has at a locus; otherwise it has one of them twice.
     *
     * @param secondDivisionShare y, the share of loci segregating at the second division: 0 at the centromere, ⅔ far
     *     from it with many crossovers, at most 1
     */
    double keepsBoth(double secondDivisionShare) {
        if (!(secondDivisionShare >= 0 && secondDivisionShare <= 1)) {
            throw new IllegalArgumentException(
                    "share of second-division segregation must be 0 to 1, was " + secondDivisionShare);
        }
        return switch (this) {
            case TERMINAL -> secondDivisionShare;
            case CENTRAL -> 1 - secondDivisionShare / 2;
        };
    }
}
