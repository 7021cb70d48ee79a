/**
 * The season's plan as pure arithmetic: which pairs should have a litter, so that most gene diversity is kept under what
 * the keepers can bear, with a proven bound on what any plan could reach; and what several seasons of it are expected to bring.
 *
 * <p>Animals are candidates, numbered from 0 in each sex. Knows nothing of registers, consent, dates or databases, reads
 * no clock, takes every seed from the caller: the same season and seed give the same plan. What is impossible is told as
 * values, not in words.
 *
 * <p>Doors: {@link org.demebook.season.SeasonPlanner}; {@link org.demebook.season.SeasonsAhead},
 * {@link org.demebook.season.FounderLines}, {@link org.demebook.season.AfterLitters}. The methods: docs/methods/season.md,
 * docs/methods/outlook.md.
 */
@NullMarked
package org.demebook.season;

import org.jspecify.annotations.NullMarked;
