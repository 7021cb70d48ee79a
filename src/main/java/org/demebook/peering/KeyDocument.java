package org.demebook.peering;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Supplier;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.jspecify.annotations.Nullable;

/**
 * What a node tells anybody of itself.
 *
 * @param name what it calls itself; nobody vouches for it
 * @param tlsPin of the TLS key that its node key vouches for
 */
record KeyDocument(KeyChain keys, String name, String tlsPin) {
    private static final int LONGEST_NAME = 200;

    /** @throws Malformed for any other form, and where a signature does not hold */
    static KeyDocument parse(byte[] bytes) {
        var json = CanonicalJson.read(bytes, Limits.MOST_KEY_DOCUMENT_BYTES);
        if (json.size() != 3
                || !(json.get("keys") instanceof ObjectNode keys)
                || !json.path("name").isTextual()
                || json.path("name").textValue().length() > LONGEST_NAME
                || !json.path("tls").isTextual()) {
            throw new Malformed(Malformed.Fault.WRONG_HEADER, "a key document has keys, name and tls");
        }
        var chain = KeyChain.parse(keys);
        var word = Signed.parse(json.path("tls").textValue(), Limits.MOST_HEAD_BYTES);
        var said = word.payload();
        if (!word.type().equals(NodeIdentity.TLS_TYPE)
                || said.size() != 2
                || !said.path("node").asText().equals(chain.nodeId())
                || !said.path("tls").isTextual()
                || !word.isBy(chain.current())) {
            throw new Malformed(
                    Malformed.Fault.WRONG_SIGNATURE, "the key in use does not vouch for the TLS key of the document");
        }
        return new KeyDocument(chain, json.path("name").textValue(), said.path("tls").textValue());
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
