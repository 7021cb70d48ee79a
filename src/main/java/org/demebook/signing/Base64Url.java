package org.demebook.signing;

import java.util.Base64;
import org.demebook.signing.Malformed.Fault;

/** Base64url without padding (RFC 7515, 2), in which any bytes have one form only. */
final class Base64Url {
    private Base64Url() {}

    static String encode(byte[] bytes) {
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    static byte[] decode(String text) {
        try {
            byte[] bytes = Base64.getUrlDecoder().decode(text);
            // the decoder takes padding, and bits beyond the last byte that are not zero
            if (encode(bytes).equals(text)) {
                return bytes;
            }
        } catch (IllegalArgumentException e) {
            throw new Malformed(Fault.NOT_BASE64URL, "not base64url: " + e.getMessage());
        }
        throw new Malformed(Fault.NOT_BASE64URL, "base64url with padding, or with bits beyond the last byte");
    }

    /** Whether that is a SHA-256 digest in its one form: 43 characters. */
    static boolean isDigest(String text) {
        try {
            return text.length() == 43 && decode(text).length == 32;
        } catch (Malformed e) {
            return false;
        }
    }
}
