package org.demebook.peering;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Supplier;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;
import org.jspecify.annotations.Nullable;

/**
 * What a node tells anybody of itself.
 *
 * @param name what it calls itself; nobody vouches for it
 * @param tlsPin of the TLS key that its node key vouches for
 */
record NodeDocument(KeyChain keys, String name, String tlsPin) {
    static final String TLS_TYPE = "demebook-tls";
    private static final int LONGEST_NAME = 200;

    /**
     * In canonical JSON: {@code {"keys":chain,"name":text,"tls":compact}}. The last is signed by the key in use over {@code
     * {"node":id,"tls":pin}}, so that nobody can stand in between with a TLS key of theirs.
     *
     * @param key the one that is in use by the chain
     */
    static byte[] write(KeyChain keys, String name, String tlsPin, SigningKey key) {
        var nodes = JsonNodeFactory.instance;
        var word = nodes.objectNode().put("node", keys.nodeId()).put("tls", tlsPin);
        var document = nodes.objectNode().put("name", name);
        document.set("keys", keys.toJson());
        document.put("tls", Signed.sign(TLS_TYPE, word, key).compact());
        return CanonicalJson.write(document);
    }

    /** @throws Malformed for any other form, and where a signature does not hold */
    static NodeDocument parse(byte[] bytes) {
        var json = CanonicalJson.read(bytes, Limits.MOST_KEY_DOCUMENT_BYTES);
        if (json.size() != 3
                || !(json.get("keys") instanceof ObjectNode keys)
                || !json.path("name").isTextual()
                || json.path("name").textValue().length() > LONGEST_NAME
                || !json.path("tls").isTextual()) {
            throw new Malformed(Malformed.Fault.WRONG_HEADER, "a node document has keys, name and tls");
        }
        var chain = KeyChain.parse(keys);
        var word = Signed.parse(json.path("tls").textValue(), Limits.MOST_HEAD_BYTES);
        var said = word.payload();
        if (!word.type().equals(TLS_TYPE)
                || said.size() != 2
                || !said.path("node").asText().equals(chain.nodeId())
                || !said.path("tls").isTextual()
                || !word.isBy(chain.current())) {
            throw new Malformed(
                    Malformed.Fault.WRONG_SIGNATURE, "the key in use does not vouch for the TLS key of the document");
        }
        return new NodeDocument(
                chain, json.path("name").textValue(), said.path("tls").textValue());
    }

    /** This node's own: signed once for each key. */
    static final class Kept implements Supplier<byte[]> {
        private final NodeIdentity self;
        private final String name;
        private volatile @Nullable Made made;

        private record Made(KeyChain keys, byte[] bytes) {}

        Kept(NodeIdentity self, String name) {
            this.self = self;
            this.name = name;
        }

        @Override
        public byte[] get() {
            var keys = self.keys();
            var known = made;
            if (known == null || known.keys != keys) {
                known = new Made(keys, self.document(name));
                made = known;
            }
            return known.bytes;
        }
    }
}
