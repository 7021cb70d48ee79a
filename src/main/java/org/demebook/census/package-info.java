/**
 * Published counts: how many animals of a population live, by sex, age, decade of birth and region, told so that nobody
 * learns what one keeper has.
 *
 * <p>The unit protected is the keeper, and those of one household count as one. No id of an animal, a collection or a
 * keeper leaves this room. A release is immutable and public. Doors: {@link org.demebook.census.Census}, {@link
 * org.demebook.census.Protection}.
 */
@NullMarked
package org.demebook.census;

import org.jspecify.annotations.NullMarked;
