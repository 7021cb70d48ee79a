/**
 * The season's plan as pure arithmetic: which pairs should have a litter, so that most gene diversity is kept under what
 * the keepers can bear, with a proven bound on what any plan could reach.
 *
 * <p>Animals are candidates, numbered from 0 in each sex. Knows nothing of registers, consent, dates or databases, reads
 * no clock, takes every seed from the caller: the same season and seed give the same plan. What is impossible is told as
 * values, not in words.
 *
 * <p>Door: {@link org.demebook.season.SeasonPlanner}. The method: docs/methods/season.md.
 */
@NullMarked
package org.demebook.season;

import org.jspecify.annotations.NullMarked;
