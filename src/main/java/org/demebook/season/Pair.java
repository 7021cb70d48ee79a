package org.demebook.season;

/**
 * Two candidates who may have a litter.
 *
 * @param female her place among the season's females
 * @param male his place among the season's males
 */
public record Pair(int female, int male) {}
