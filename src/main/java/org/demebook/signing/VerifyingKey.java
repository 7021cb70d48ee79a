package org.demebook.signing;

import java.nio.charset.StandardCharsets;
import org.demebook.signing.Malformed.Fault;

/**
 * A public Ed25519 key, as the {@code x} of RFC 8037: the 32 bytes of RFC 8032 in base64url without padding, 43 characters.
 *
 * <p>Making one from text costs about as much as verifying a signature: keep it.
 */
public record VerifyingKey(String x) {
    /** @throws Malformed if that is no point of the curve's prime-order group in its one encoding */
    public VerifyingKey {
        if (!Base64Url.isDigest(x) || !Curve.isPublicKey(Base64Url.decode(x))) {
            throw new Malformed(
                    Fault.WRONG_KEY, "no Ed25519 key that may be used: " + (x.length() > 50 ? "too long" : x));
        }
    }

    /**
     * @param encoded the 32 bytes of RFC 8032
     * @throws Malformed if they are no key that may be used
     */
    public static VerifyingKey of(byte[] encoded) {
        if (encoded.length != Curve.KEY_BYTES) {
            throw new Malformed(Fault.WRONG_KEY, "an Ed25519 key has 32 bytes, not " + encoded.length);
        }
        return new VerifyingKey(Base64Url.encode(encoded));
    }

    /** The 32 bytes of RFC 8032. */
    public byte[] encoded() {
        return Base64Url.decode(x);
    }

    /** What the key is called: the SHA-256 thumbprint of RFC 7638, base64url without padding, 43 characters. */
    public String thumbprint() {
        var members = "{\"crv\":\"Ed25519\",\"kty\":\"OKP\",\"x\":\"" + x + "\"}";
        return Base64Url.encode(Digests.sha256(members.getBytes(StandardCharsets.US_ASCII)));
    }

    /** Whether the holder of the key signed that message. Never throws, whatever the signature's length or content. */
    public boolean verifies(byte[] message, byte[] signature) {
        return Curve.verifies(encoded(), message, signature);
    }
}
