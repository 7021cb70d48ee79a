package org.demebook.peering;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.junit.FuzzTest;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.UUID;
import org.demebook.signing.CanonicalJson;
import org.demebook.signing.KeyChain;
import org.demebook.signing.Malformed;
import org.demebook.signing.Signed;
import org.demebook.signing.SigningKey;

/** What a stranger can send to the TLS port, or answer from one. */
class TransportFuzz {
    private static final SigningKey KEY = SigningKey.ofSeed(new byte[32]);
    private static final KeyChain KEYS = KeyChain.of(
            KEY,
            SigningKey.ofSeed(new byte[] {
                        1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1
                    })
                    .verifyingKey());
    private static final String PIN = KEYS.recovery();

    /** The input is an address, a payload that is signed rightly, and a document as it is and in the place of a name. */
    @FuzzTest
    void what_is_taken_has_one_form(byte[] bytes) {
        address(new String(bytes, ISO_8859_1));
        token(bytes);
        document(bytes);
        named(new String(bytes, UTF_8));
    }

    private static void address(String target) {
        var asked = new ArrayList<String>();
        var routes = new Routes(new Conversation() {
            @Override
            public Reply entries(String asking, UUID population, String of, long after, int most, String start) {
                asked.add("/federation/populations/%s/journals/%s/entries".formatted(population, of));
                assertThat(after).isBetween(0L, (1L << 53) - 1);
                assertThat(most).isBetween(1, Limits.MOST_ENTRIES);
                assertThat(start).hasSizeLessThanOrEqualTo(200);
                return Reply.done();
            }

            @Override
            public Reply hint(String asking, UUID population) {
                asked.add("/federation/populations/%s/hint".formatted(population));
                return Reply.done();
            }
        });
        for (var method : new String[] {"GET", "POST"}) {
            try {
                routes.find(method, target).speak().apply("peer", new byte[0]);
                assertThat(target.replaceFirst("\\?.*", "")).isEqualTo(asked.get(asked.size() - 1));
            } catch (Turned refused) {
                assertThat(refused.reply().status()).isIn(400, 404);
            }
        }
    }

    private static void token(byte[] payload) {
        ObjectNode said;
        try {
            said = CanonicalJson.read(payload, 4_096);
        } catch (Malformed refused) {
            return;
        }
        try {
            var token = RequestToken.parse(RequestToken.SCHEME
                    + Signed.sign(RequestToken.TYPE, said, KEY).compact());
            assertThat(said).hasSize(4);
            assertThat(said.get("from").textValue()).isEqualTo(token.from());
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }

    private static void document(byte[] bytes) {
        try {
            var read = NodeDocument.parse(bytes);
            assertThat(CanonicalJson.read(bytes, bytes.length)).hasSize(3);
            assertThat(read.keys().toJson())
                    .isEqualTo(CanonicalJson.read(bytes, bytes.length).get("keys"));
        } catch (Malformed refused) {
            assertThat(refused.getMessage()).isNotBlank();
        }
    }

    private static void named(String name) {
        try {
            var bytes = NodeDocument.write(KEYS, name, PIN, KEY);
            var read = NodeDocument.parse(bytes);
            assertThat(read).isEqualTo(new NodeDocument(KEYS, name, PIN));
            assertThat(NodeDocument.write(read.keys(), read.name(), read.tlsPin(), KEY))
                    .isEqualTo(bytes);
        } catch (Malformed | IllegalArgumentException refused) {
            // too long, or no text of Unicode
        }
    }
}
