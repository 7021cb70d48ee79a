package org.demebook.kinship;

/** How a figure treats the part of a genome whose origin nobody knows. Every answer is given under one of these. */
public enum Convention {
    /**
     * An unknown parent is a new founder, unrelated to all. Understates kinship and inbreeding: show
     * {@link Pedigree#knownFraction} beside the figure.
     */
    UNRELATED,

    /**
     * Genes of unknown origin are left out and the rest is rescaled: the probability of identity by descent among
     * genes that both trace to a stated founder. {@code NaN} where no such pair of genes exists.
     */
    KNOWN_ONLY
}
