/**
 * What happened, in order: one append-only journal for each population, written in the transaction that makes the change.
 *
 * <p>State follows from it: a room changes its rows only when a fact is applied, whether the fact is new or replayed.
 * Knows no fact itself; rooms bring theirs as a {@link org.demebook.journal.FactBook}. Door: {@link
 * org.demebook.journal.Journal}.
 */
@NullMarked
package org.demebook.journal;

import org.jspecify.annotations.NullMarked;
