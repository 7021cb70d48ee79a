/**
 * From the first introduction to the birth: who was put together with whom, what was seen of a female's cycle, when her young
 * are due and why, and which males they may come from.
 *
 * <p>A record belongs to the collection that wrote it; whoever acts for that collection, or holds the female now, sees it.
 * For every other member there is none. A cycle is derived from these records and from her litters, and is not stored. Knows
 * nothing of planning or rearing. Doors: {@link org.demebook.breeding.Introductions}, {@link
 * org.demebook.breeding.BreedingSigns}, {@link org.demebook.breeding.Cycles}.
 */
@NullMarked
package org.demebook.breeding;

import org.jspecify.annotations.NullMarked;
