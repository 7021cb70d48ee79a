package org.demebook.signing;

import org.bouncycastle.math.ec.rfc8032.Ed25519;

/**
 * Ed25519 (RFC 8032, 5.1) such that every implementation decides alike, including for keys and signatures made with bad intent.
 *
 * <p>RFC 8032 leaves two equations to a verifier, with and without the cofactor 8; libraries differ, the one used here even
 * between messages. They agree once the key and the signature's first half R are of the prime-order group, so both are
 * checked. A library that recomputes R and compares bytes (RFC 8032's own second equation) decides the same without that.
 */
final class Curve {
    static final int KEY_BYTES = 32;
    static final int SIGNATURE_BYTES = 64;

    private Curve() {}

    static byte[] publicKey(byte[] seed) {
        byte[] key = new byte[KEY_BYTES];
        Ed25519.generatePublicKey(seed, 0, key, 0);
        return key;
    }

    /** Whether that is a point of the prime-order group other than its neutral element, in its one encoding. */
    static boolean isPublicKey(byte[] key) {
        return key.length == KEY_BYTES && Ed25519.validatePublicKeyFull(key, 0);
    }

    static byte[] sign(byte[] seed, byte[] publicKey, byte[] message) {
        byte[] signature = new byte[SIGNATURE_BYTES];
        Ed25519.sign(seed, 0, publicKey, 0, message, 0, message.length, signature, 0);
        return signature;
    }

    /** @param publicKey for which {@link #isPublicKey} holds */
    static boolean verifies(byte[] publicKey, byte[] message, byte[] signature) {
        return signature.length == SIGNATURE_BYTES
                && Ed25519.verify(signature, 0, publicKey, 0, message, 0, message.length)
                && (Ed25519.validatePublicKeyFull(signature, 0) || startsWithNeutralElement(signature));
    }

    // no honest signer ever meets it; but the equations hold with it, so whoever compares bytes accepts it
    private static boolean startsWithNeutralElement(byte[] signature) {
        if (signature[0] != 1) {
            return false;
        }
        for (int i = 1; i < KEY_BYTES; i++) {
            if (signature[i] != 0) {
                return false;
            }
        }
        return true;
    }
}
