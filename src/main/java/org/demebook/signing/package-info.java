/**
 * What one node signs and another believes: canonical JSON, Ed25519 keys and their succession, compact signatures in their
 * one accepted form.
 *
 * <p>Knows no snake, no framework and no other room. Everything that strangers sent is read here or refused as {@link
 * org.demebook.signing.Malformed}. Doors: {@link org.demebook.signing.CanonicalJson}, {@link org.demebook.signing.Signed}, {@link
 * org.demebook.signing.KeyChain}, {@link org.demebook.signing.SigningKey}, {@link org.demebook.signing.VerifyingKey}.
 */
@NullMarked
package org.demebook.signing;

import org.jspecify.annotations.NullMarked;
