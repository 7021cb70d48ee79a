package org.demebook.season;

/**
 * How far the solving of a season is.
 *
 * @param done steps of the bound, or moves of the search
 * @param of how many there will be at most
 * @param meanKinship of the best plan so far, by what is to be least; {@code NaN} while the bound is computed
 * @param bound no plan can fall below this mean kinship
 */
public record Progress(long done, long of, double meanKinship, double bound) {}
