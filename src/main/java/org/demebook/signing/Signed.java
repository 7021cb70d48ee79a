package org.demebook.signing;

import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * A compact JWS (RFC 7515) in its one accepted form: the header is exactly {@code {"alg":"Ed25519","kid":thumbprint,"typ":type}}
 * and the payload an object, both in canonical JSON; base64url without padding and without stray bits.
 */
public final class Signed {
    private final String compact;
    private final String type;
    private final String keyId;
    private final ObjectNode payload;

    private Signed(String compact, String type, String keyId, ObjectNode payload) {
        this.compact = compact;
        this.type = type;
        this.keyId = keyId;
        this.payload = payload;
    }

    /**
     * @param type says what the payload is: 1 to 40 of a–z, 0–9 and hyphen, such as {@code demebook-entry}
     * @throws IllegalArgumentException if the payload has no canonical form
     */
    public static Signed sign(String type, ObjectNode payload, SigningKey key) {
        throw new UnsupportedOperationException();
    }

    /**
     * Reads what a stranger sent; the form is checked, the signature is <em>not</em>: ask {@link #isBy}.
     *
     * @param mostBytes the largest length that is taken, in characters, all of them ASCII
     * @throws Malformed for any other form
     */
    public static Signed parse(String compact, int mostBytes) {
        throw new UnsupportedOperationException();
    }

    public String type() {
        return type;
    }

    /** The thumbprint of the key that claims to have signed. */
    public String keyId() {
        return keyId;
    }

    /** A copy: what was signed does not change. */
    public ObjectNode payload() {
        return payload.deepCopy();
    }

    /** The very characters that are stored, hashed and passed on. */
    public String compact() {
        return compact;
    }

    /** Whether that key signed it. Cost: one verification of Ed25519. */
    public boolean isBy(VerifyingKey key) {
        throw new UnsupportedOperationException();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Signed that && compact.equals(that.compact);
    }

    @Override
    public int hashCode() {
        return compact.hashCode();
    }

    @Override
    public String toString() {
        return compact;
    }
}
