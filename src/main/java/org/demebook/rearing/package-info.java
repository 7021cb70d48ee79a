/**
 * What follows from the diaries of animals: how they grow, which young are behind their siblings, whether one may leave and
 * when it is likely to, which tests count, and what is to be done next.
 *
 * <p>Everything is computed from what the asker sees, or may have computed with, and nothing of it is stored. Knows nothing of breeding, transfers or
 * planning, and gives no veterinary advice. Doors: {@link org.demebook.rearing.Rearing}, {@link
 * org.demebook.rearing.TestsBeforePairing}.
 */
@NullMarked
package org.demebook.rearing;

import org.jspecify.annotations.NullMarked;
