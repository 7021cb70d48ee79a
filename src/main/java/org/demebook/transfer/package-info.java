/**
 * Animals that change hands: offers to fellow members and what became of them, breeding loans, and claim codes for buyers
 * who have no account yet.
 *
 * <pre>
 * offered    → accepted | refused | withdrawn | expired
 * handed-out → claimed  | withdrawn
 * </pre>
 *
 * <p>An offer leaves the animal where it is until it is accepted. An animal that was handed out is with a holder who does
 * not take part: in no collection, but in its transfer. Its claim code may run out, and then the animal stays handed out
 * until it is claimed with a fresh code or taken back.
 *
 * <pre>
 * open → withdrawn | conceded | upheld | dismissed
 * </pre>
 *
 * <p>An animal that a keeper reports where the register does not have it is in dispute: it changes hands no more until one
 * side gives way or a coordinator decides. Only the two sides know of a transfer. Knows nothing of ancestry,
 * planning or federation. Doors: {@link org.demebook.transfer.Transfers}, {@link org.demebook.transfer.Claims},
 * {@link org.demebook.transfer.Disputes}.
 */
@NullMarked
package org.demebook.transfer;

import org.jspecify.annotations.NullMarked;
