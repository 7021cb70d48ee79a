/**
 * The sale of an animal to a keeper on another node: what the two keepers see of it, and what becomes of the animal in this register.
 *
 * <pre>
 * at the giver's:     offered → on-its-way → arrived
 * at the receiver's:  offered → accepted   → arrived
 * at both:            offered → refused | withdrawn | expired
 * </pre>
 *
 * <p>Between the nodes it is a hand-over in signed journals ({@code protocol}; docs/federation/hand-over.md), which alone decides where
 * the animal is; here it is turned into facts of this register. An animal on its way is with neither side: in no collection, but in its
 * crossing. One that arrived elsewhere stays in this register under a holder that nobody acts for, so that the ancestry of its young here
 * stands. Only the two sides know of a crossing.
 *
 * <p>Animals of a node that is gone for good, which this one adopted, get their keepers here by a coordinator's word.
 *
 * <p>Doors: {@link org.demebook.crossing.Crossings}, {@link org.demebook.crossing.AdoptedAnimals}.
 */
@NullMarked
package org.demebook.crossing;

import org.jspecify.annotations.NullMarked;
