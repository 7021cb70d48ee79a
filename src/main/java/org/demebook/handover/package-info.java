/**
 * Hand-over sheets: what goes with an animal that changes hands, on paper, and how anybody can see later that the paper is
 * genuine.
 *
 * <p>A sheet says what the register knew on its day and is never changed; a later one supersedes it, its issuer may withdraw
 * it. It is read by those who act for the collection that gave, by whoever received the animal from it, and by whoever holds
 * the animal now; the journal keeps no more of it than a digest. Whoever has the paper may check it without signing in, and
 * learns no names, no places and no holder.
 *
 * <p>Moves no animal: that is a transfer's. Gives no veterinary or legal advice. Door: {@link
 * org.demebook.handover.HandoverSheets}.
 */
@NullMarked
package org.demebook.handover;

import org.jspecify.annotations.NullMarked;
