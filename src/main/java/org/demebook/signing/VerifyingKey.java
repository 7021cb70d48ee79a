package org.demebook.signing;

/**
 * A public Ed25519 key, as the {@code x} of RFC 8037: the 32 bytes of RFC 8032 in base64url without padding, 43 characters.
 *
 * <p>Making one costs about as much as verifying a signature: keep it.
 */
public record VerifyingKey(String x) {
    /** @throws Malformed if that is no point of the curve's prime-order group in its one encoding */
    public VerifyingKey {
        if (x.length() != 43) {
            throw new Malformed(Malformed.Fault.WRONG_KEY, "a public key has 43 characters");
        }
    }

    /** What the key is called: the SHA-256 thumbprint of RFC 7638, base64url without padding, 43 characters. */
    public String thumbprint() {
        throw new UnsupportedOperationException();
    }

    /** Whether the holder of the key signed that message. Never throws, whatever the signature's length or content. */
    public boolean verifies(byte[] message, byte[] signature) {
        throw new UnsupportedOperationException();
    }
}
