package org.demebook.signing;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Arrays;

class KeyChainFuzz {
    private static final int MOST = 8_192;
    private static final SigningKey FIRST = key(1);
    private static final SigningKey SECOND = key(2);
    private static final SigningKey SAFE = key(3);
    private static final KeyChain CHAIN = KeyChain.of(FIRST, SAFE.verifyingKey());

    /** The input is a whole chain, then what a first key says, then what follows by the key in use, and by the recovery key. */
    @FuzzTest
    void what_is_taken_holds_and_has_one_form(byte[] bytes) {
        ObjectNode json;
        try {
            json = CanonicalJson.read(bytes, MOST);
        } catch (Malformed refused) {
            return;
        }
        taken(json);
        var founding = CHAIN.toJson();
        founding.put("founding", Signed.sign(KeyChain.TYPE, json, FIRST).compact());
        taken(founding);
        taken(further(json, FIRST));
        taken(further(json, SAFE));
    }

    private static void taken(ObjectNode json) {
        try {
            var chain = KeyChain.parse(json);
            assertThat(CanonicalJson.write(chain.toJson())).isEqualTo(CanonicalJson.write(json));
            assertThat(chain.nodeId()).isEqualTo(chain.first().thumbprint());
            assertThat(chain.keys())
                    .doesNotHaveDuplicates()
                    .hasSize(1 + chain.links().size());
            assertThat(chain.keys()).noneMatch(key -> key.thumbprint().equals(chain.recovery()));
            assertThat(chain.extendsChain(chain)).isTrue();
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }

    private static ObjectNode further(ObjectNode statement, SigningKey by) {
        var json = CHAIN.toJson();
        ((ArrayNode) json.get("links"))
                .addArray()
                .add(Signed.sign(KeyChain.TYPE, statement, by).compact())
                .add(Signed.sign(KeyChain.TYPE, statement, SECOND).compact());
        return json;
    }

    private static SigningKey key(int filling) {
        byte[] seed = new byte[32];
        Arrays.fill(seed, (byte) filling);
        return SigningKey.ofSeed(seed);
    }
}
