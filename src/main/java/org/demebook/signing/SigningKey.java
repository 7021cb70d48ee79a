package org.demebook.signing;

import java.security.SecureRandom;

/** A private Ed25519 key (RFC 8032). It is never part of a text, a log or an answer. */
public final class SigningKey {
    private final byte[] seed;
    private final byte[] encodedPublicKey;
    private final VerifyingKey verifyingKey;

    private SigningKey(byte[] seed) {
        if (seed.length != Curve.KEY_BYTES) {
            throw new IllegalArgumentException("a private key has 32 bytes, not " + seed.length);
        }
        this.seed = seed;
        this.encodedPublicKey = Curve.publicKey(seed);
        this.verifyingKey = VerifyingKey.of(encodedPublicKey);
    }

    /** A new key from the platform's source of randomness. */
    public static SigningKey generate() {
        byte[] seed = new byte[Curve.KEY_BYTES];
        new SecureRandom().nextBytes(seed);
        return new SigningKey(seed);
    }

    /**
     * @param seed32 the 32 bytes that RFC 8032 calls the private key
     * @throws IllegalArgumentException for another length
     */
    public static SigningKey ofSeed(byte[] seed32) {
        return new SigningKey(seed32.clone());
    }

    /** The 32 bytes to be kept secret; a copy. */
    public byte[] seed() {
        return seed.clone();
    }

    public VerifyingKey verifyingKey() {
        return verifyingKey;
    }

    /** The signature of 64 bytes; the same for the same message. */
    public byte[] sign(byte[] message) {
        return Curve.sign(seed, encodedPublicKey, message);
    }

    /** Names the public half alone. */
    @Override
    public String toString() {
        return "SigningKey[" + verifyingKey.thumbprint() + "]";
    }
}
