package org.demebook.signing;

/** A private Ed25519 key (RFC 8032). It is never part of a text, a log or an answer. */
public final class SigningKey {
    private final byte[] seed;
    private final VerifyingKey verifyingKey;

    private SigningKey(byte[] seed, VerifyingKey verifyingKey) {
        this.seed = seed;
        this.verifyingKey = verifyingKey;
    }

    /** A new key from the platform's source of randomness. */
    public static SigningKey generate() {
        throw new UnsupportedOperationException();
    }

    /**
     * @param seed32 the 32 bytes that RFC 8032 calls the private key
     * @throws IllegalArgumentException for another length
     */
    public static SigningKey ofSeed(byte[] seed32) {
        throw new UnsupportedOperationException();
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
        throw new UnsupportedOperationException();
    }

    /** Names the public half alone. */
    @Override
    public String toString() {
        return "SigningKey of " + verifyingKey;
    }
}
