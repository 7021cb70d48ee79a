package org.demebook.signing;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;
import org.demebook.signing.Malformed.Fault;

/**
 * A compact JWS (RFC 7515) in its one accepted form: the header is exactly {@code {"alg":"Ed25519","kid":thumbprint,"typ":type}}
 * and the payload an object, both in canonical JSON; base64url without padding and without stray bits.
 */
public final class Signed {
    private static final Pattern TYPE = Pattern.compile("[a-z0-9-]{1,40}");
    private static final String ALGORITHM = "Ed25519"; // RFC 9864; RFC 8037 called it EdDSA
    private static final int MOST_HEADER_BYTES = 128;

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
        if (!TYPE.matcher(type).matches()) {
            throw new IllegalArgumentException("a type has 1 to 40 of a-z, 0-9 and hyphen, not " + type);
        }
        var keyId = key.verifyingKey().thumbprint();
        var header = JsonNodeFactory.instance.objectNode();
        header.put("alg", ALGORITHM).put("kid", keyId).put("typ", type);
        byte[] body = CanonicalJson.write(payload);
        var signed = Base64Url.encode(CanonicalJson.write(header)) + '.' + Base64Url.encode(body);
        var signature = Base64Url.encode(key.sign(signed.getBytes(StandardCharsets.US_ASCII)));
        return new Signed(signed + '.' + signature, type, keyId, StrictReader.read(body));
    }

    /**
     * Reads what a stranger sent; the form is checked, the signature is <em>not</em>: ask {@link #isBy}.
     *
     * @param mostBytes the largest length that is taken, in characters, all of them ASCII
     * @throws Malformed for any other form
     */
    public static Signed parse(String compact, int mostBytes) {
        if (compact.length() > mostBytes) {
            throw new Malformed(Fault.TOO_LARGE, compact.length() + " characters, at most " + mostBytes + " are taken");
        }
        var parts = compact.split("\\.", -1);
        if (parts.length != 3) {
            throw new Malformed(Fault.WRONG_HEADER, "a compact signature has three parts, not " + parts.length);
        }
        var header = CanonicalJson.read(Base64Url.decode(parts[0]), MOST_HEADER_BYTES);
        var type = header.path("typ").asText();
        var keyId = header.path("kid").asText();
        if (header.size() != 3
                || !header.path("alg").asText().equals(ALGORITHM)
                || !header.path("typ").isTextual()
                || !header.path("kid").isTextual()
                || !TYPE.matcher(type).matches()
                || !Base64Url.isDigest(keyId)) {
            throw new Malformed(
                    Fault.WRONG_HEADER, "the header names alg Ed25519, kid (a thumbprint) and typ, and nothing else");
        }
        var payload = CanonicalJson.read(Base64Url.decode(parts[1]), mostBytes);
        if (Base64Url.decode(parts[2]).length != Curve.SIGNATURE_BYTES) {
            throw new Malformed(Fault.WRONG_SIGNATURE, "a signature has 64 bytes");
        }
        return new Signed(compact, type, keyId, payload);
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
        int dot = compact.lastIndexOf('.');
        return keyId.equals(key.thumbprint())
                && key.verifies(
                        compact.substring(0, dot).getBytes(StandardCharsets.US_ASCII),
                        Base64Url.decode(compact.substring(dot + 1)));
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
