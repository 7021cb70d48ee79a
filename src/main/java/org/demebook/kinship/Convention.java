package org.demebook.kinship;

/** How a figure treats the part of a genome whose origin nobody knows. Every answer is given under one of these. A
 * fourth way, to leave animals out, is the choice of the pool: those whose {@link Pedigree#knownFraction} is too low. */
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
    KNOWN_ONLY,

    /**
     * All unknown parents are full siblings, young of one unrelated pair that are in no other way related to the stated
     * founders. The customary worst case: beside {@link #UNRELATED}, the best, it shows how much a figure rests on what
     * nobody knows. As an assumption to breed by it costs more diversity than the other, Zoo Biol. 20: 305 (2001), read in
     * the abstract. An animal of unknown parents whose kinship with others is known from DNA keeps that instead.
     */
    UNKNOWN_FULL_SIBS
}
