package org.demebook.season;

/**
 * A litter that is hoped for, of two animals of a pedigree.
 *
 * @param dam row
 * @param sire row
 */
public record Litter(int dam, int sire, LitterChance chance) {}
