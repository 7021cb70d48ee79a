/**
 * Whether a count is within chance: tails of the binomial and beta-binomial distributions, rates that differ from group to
 * group, sex ratios.
 *
 * <p>Arithmetic on counts; knows no snake, no framework and no other room. Doors: {@link
 * org.demebook.chance.UnevenRate}, {@link org.demebook.chance.SexRatio}.
 */
@NullMarked
package org.demebook.chance;

import org.jspecify.annotations.NullMarked;
