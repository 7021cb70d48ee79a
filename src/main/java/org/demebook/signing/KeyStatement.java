package org.demebook.signing;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.demebook.signing.Malformed.Fault;

/**
 * What is said of one key of a node.
 *
 * @param node the node's id
 * @param number of the key, from 1
 * @param recovery the thumbprint of the recovery key from now on
 * @param by who says so: the first key itself, the key before, or the recovery key committed to before
 */
record KeyStatement(String node, int number, VerifyingKey key, String recovery, VerifyingKey by) {
    static final int MOST_BYTES = 1024;

    ObjectNode toJson() {
        return JsonNodeFactory.instance
                .objectNode()
                .put("node", node)
                .put("number", number)
                .put("key", key.x())
                .put("recovery", recovery)
                .put("by", by.x());
    }

    static KeyStatement of(Signed signed) {
        var json = signed.payload();
        if (!signed.type().equals(KeyChain.TYPE)
                || json.size() != 5
                || !json.path("number").isInt()
                || !Base64Url.isDigest(json.path("node").asText())
                || !Base64Url.isDigest(json.path("recovery").asText())
                || !json.path("key").isTextual()
                || !json.path("by").isTextual()) {
            throw new Malformed(
                    Fault.WRONG_KEY,
                    "a key's statement has the type " + KeyChain.TYPE + " and names node, number, key, recovery, by");
        }
        return new KeyStatement(
                json.get("node").asText(),
                json.get("number").asInt(),
                new VerifyingKey(json.get("key").asText()),
                json.get("recovery").asText(),
                new VerifyingKey(json.get("by").asText()));
    }
}
