/**
 * A journal as a Merkle tree: that an entry is in it, that it only grew, and heads that others have signed.
 *
 * <p>Hashes of RFC 6962, checkpoints of C2SP; knows no framework, and of the other rooms only {@code signing}. Doors: {@link
 * org.demebook.merkle.MerkleTree}, {@link org.demebook.merkle.Checkpoint}, {@link org.demebook.merkle.SignedCheckpoint}.
 */
@NullMarked
package org.demebook.merkle;

import org.jspecify.annotations.NullMarked;
