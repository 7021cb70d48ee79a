/**
 * Approaches: a keeper asks, through the house, the keeper of an unnamed partner whether the two want to know of each other's
 * animal, and what it would come to if they bred.
 *
 * <pre>
 * open → agreed → ended
 *      → no-agreement | withdrawn | ended
 * </pre>
 *
 * <p>Until both sides have agreed neither learns who the other is; whether the other side refused, stayed silent, or could not
 * answer any more, the side that asks learns after thirty days, and always the same way. An agreement is nothing but grants that
 * both give each other for one animal. Door: {@link org.demebook.approach.Approaches}.
 */
@NullMarked
package org.demebook.approach;

import org.jspecify.annotations.NullMarked;
