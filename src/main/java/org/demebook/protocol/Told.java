package org.demebook.protocol;

import java.util.SortedMap;
import java.util.SortedSet;

/**
 * What was told of animals, as far as this node may know it: the last word of whoever may say so.
 *
 * @param ancestry without parents where these are set aside
 * @param inCircles animals whose told parents are set aside, since with them somebody would be their own ancestor
 * @param sameAs animals that were found to be others: the smaller id of all of them stands for them
 */
public record Told(
        SortedMap<AnimalId, Statement.AncestryTold> ancestry,
        SortedMap<AnimalId, Statement.HoldingTold> holdings,
        SortedSet<AnimalId> inCircles,
        SortedMap<AnimalId, AnimalId> sameAs) {}
