/**
 * Reading a litter: whether what was lost is within chance for its population, what a pattern makes worth checking, and
 * which signs speak for young without a sire.
 *
 * <p>Computes and words; decides nothing, names no cause and keeps nothing. Door: {@link org.demebook.reading.Readings}.
 */
@NullMarked
package org.demebook.reading;

import org.jspecify.annotations.NullMarked;
