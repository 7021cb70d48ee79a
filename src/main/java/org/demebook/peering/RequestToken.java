package org.demebook.peering;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;

/**
 * Who asks, of whom, for what: {@code {"body":sha256,"from":node,"target":"GET /federation/…","to":node}}, signed by the key that
 * the asker has in use, in the header {@code Authorization: Node …}. There is no time in it: within TLS with a pinned key only the one who is asked sees
 * it, and can send it to nobody but itself.
 *
 * @param from who claims to ask; to be believed when the signature was verified
 * @param target method and path with query
 * @param body SHA-256 of the body, base64url without padding; of no body, of no bytes
 */
record RequestToken(Signed signed, String from, String to, String target, String body) {
    static final String SCHEME = "Node ";
    static final String TYPE = "demebook-request";
    private static final int MOST_BYTES = Limits.MOST_HEAD_BYTES;

    static String header(NodeIdentity self, String to, String method, String target, byte[] body) {
        var payload = payload(self.nodeId(), to, method + " " + target, body);
        return SCHEME + self.sign(TYPE, payload).compact();
    }

    static ObjectNode payload(String from, String to, String methodAndTarget, byte[] body) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("body", digest(body))
                .put("from", from)
                .put("target", methodAndTarget)
                .put("to", to);
    }

    /** @throws Malformed for any other form */
    static RequestToken parse(String header) {
        if (!header.startsWith(SCHEME)) {
            throw new Malformed(Malformed.Fault.WRONG_HEADER, "no token of a node");
        }
        var signed = Signed.parse(header.substring(SCHEME.length()), MOST_BYTES);
        var payload = signed.payload();
        if (!signed.type().equals(TYPE) || payload.size() != 4) {
            throw new Malformed(Malformed.Fault.WRONG_HEADER, "no token of a request");
        }
        return new RequestToken(
                signed, text(payload, "from"), text(payload, "to"), text(payload, "target"), text(payload, "body"));
    }

    private static String text(ObjectNode payload, String name) {
        var value = payload.get(name);
        if (value == null || !value.isTextual()) {
            throw new Malformed(Malformed.Fault.WRONG_HEADER, "a token of a request has a text \"%s\"".formatted(name));
        }
        return value.textValue();
    }

    boolean isOf(byte[] sent) {
        return body.equals(digest(sent));
    }

    private static String digest(byte[] body) {
        try {
            return Base64.getUrlEncoder()
                    .withoutPadding()
                    .encodeToString(MessageDigest.getInstance("SHA-256").digest(body));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
