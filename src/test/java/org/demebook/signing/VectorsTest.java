package org.demebook.signing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.demebook.Vectors;
import org.demebook.signing.Malformed.Fault;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;

/** The published vectors, reproduced; judged by the reference library of RFC 8785 and by the JDK's Ed25519. */
class VectorsTest {
    private static final HexFormat HEX = HexFormat.of();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
    private static final ObjectMapper JACKSON = new ObjectMapper();

    @Test
    void canonical_json() throws IOException {
        var made = NODES.objectNode();
        var accepted = made.putArray("accepted");
        for (var text : new String[] {
            "{}",
            "{\"adult\":true,\"mass\":null,\"young\":[9,0,-1],\"name\":\"Wren\"}",
            "{\"a\":9007199254740991,\"b\":-9007199254740991}",
            "{\"\u20ac\":\"Euro Sign\",\"\\r\":\"Carriage Return\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\",\"1\":\"One\","
                    + "\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\u0080\":\"Control\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\"}",
            "{\"escapes\":\"\\u0000\\u0007\\b\\t\\n\\u000b\\f\\r\\u001f\\\"\\\\/\u007f\u2028\"}",
            "{\"a\":" + "[".repeat(31) + "]".repeat(31) + "}"
        }) {
            byte[] canonical = CanonicalJson.write((ObjectNode) JACKSON.readTree(text));
            accepted.addObject()
                    .put("anyForm", text)
                    .put("canonical", new String(canonical, UTF_8))
                    .put("bytes", HEX.formatHex(canonical));
        }
        var refused = made.putArray("refused");
        refuse(refused, "a space", "{\"a\": 1}");
        refuse(refused, "names not in order", "{\"b\":1,\"a\":1}");
        refuse(refused, "an escape that is not needed", "{\"a\":\"\\u0041\"}");
        refuse(refused, "an escape in upper case", "{\"a\":\"\\u001F\"}");
        refuse(refused, "a name twice", "{\"a\":1,\"a\":1}");
        refuse(refused, "the same name behind an escape", "{\"a\":1,\"\\u0061\":1}");
        refuse(refused, "a fraction", "{\"a\":1.0}");
        refuse(refused, "an exponent", "{\"a\":1e2}");
        refuse(refused, "negative zero", "{\"a\":-0}");
        refuse(refused, "2^53", "{\"a\":9007199254740992}");
        refuse(refused, "2^53 + 1, which a double rounds", "{\"a\":9007199254740993}");
        refuse(refused, "a number that starts with 0", "{\"a\":01}");
        refuse(refused, "half a surrogate pair", "{\"a\":\"\\ud83d\"}");
        refuse(refused, "a noncharacter", "{\"a\":\"\uffff\"}");
        refuse(refused, "33 levels", "{\"a\":" + "[".repeat(32) + "]".repeat(32) + "}");
        refuse(refused, "an array", "[]");
        refuse(refused, "a byte order mark", "\ufeff{}");
        refuse(refused, "a comma too many", "{\"a\":1,}");
        refused.addObject()
                .put("what", "no UTF-8")
                .put("bytes", "7b2261223a22ff227d")
                .put("fault", "NOT_UTF8");
        refused.addObject()
                .put("what", "an encoded surrogate")
                .put("bytes", "7b2261223a22eda080227d")
                .put("fault", "NOT_UTF8");

        var published = Vectors.reproduced("canonical-json", made);
        for (var one : published.get("accepted")) {
            byte[] bytes = HEX.parseHex(one.get("bytes").asText());
            assertThat(new JsonCanonicalizer(one.get("anyForm").asText()).getEncodedUTF8())
                    .isEqualTo(bytes);
            assertThat(CanonicalJson.write(CanonicalJson.read(bytes, bytes.length)))
                    .isEqualTo(bytes);
        }
        for (var one : published.get("refused")) {
            assertThat(fault(HEX.parseHex(one.get("bytes").asText())))
                    .as(one.toString())
                    .hasToString(one.get("fault").asText());
        }
    }

    private static void refuse(ArrayNode refused, String what, String text) {
        byte[] bytes = text.getBytes(UTF_8);
        refused.addObject()
                .put("what", what)
                .put("bytes", HEX.formatHex(bytes))
                .put("fault", fault(bytes).name());
    }

    private static Fault fault(byte[] bytes) {
        try {
            CanonicalJson.read(bytes, 10_000);
        } catch (Malformed e) {
            return e.fault();
        }
        throw new AssertionError("taken: " + new String(bytes, UTF_8));
    }

    @Test
    void key_chain() throws GeneralSecurityException {
        var made = NODES.objectNode();
        var keys = made.putObject("keys");
        var first = key(keys, "first", 1);
        var second = key(keys, "second", 2);
        var third = key(keys, "third", 3);
        var safe = key(keys, "recovery", 4);
        var safeAfter = key(keys, "recoveryAfterwards", 5);
        var thief = key(keys, "thief", 6);
        var founded = KeyChain.of(first, safe.verifyingKey());
        var rotated = founded.rotated(first, second, safe.verifyingKey());
        var recovered = rotated.recovered(safe, third, safeAfter.verifyingKey());
        made.put("node", founded.nodeId());
        var accepted = made.putArray("accepted");
        accepted.addObject().put("what", "founded").put("current", "first").set("chain", founded.toJson());
        accepted.addObject().put("what", "rotated").put("current", "second").set("chain", rotated.toJson());
        accepted.addObject().put("what", "recovered").put("current", "third").set("chain", recovered.toJson());
        var stolen = rotated.rotated(second, thief, safe.verifyingKey());
        accepted.addObject()
                .put("what", "rotated by a thief of the second key; overruled by the recovered one")
                .put("current", "thief")
                .set("chain", stolen.toJson());
        var refused = made.putArray("refused");
        refuseChain(
                refused, "the new key did not sign", founded, statement(founded, 2, second, safe, first), first, first);
        refuseChain(
                refused,
                "neither the key in use nor the recovery key",
                founded,
                statement(founded, 2, second, safe, thief),
                thief,
                second);
        refuseChain(refused, "a number left out", founded, statement(founded, 3, second, safe, first), first, second);
        refuseChain(
                refused,
                "a key for the second time",
                rotated,
                statement(founded, 3, first, safe, second),
                second,
                first);
        refuseChain(
                refused,
                "a recovery key for the second time",
                rotated,
                statement(founded, 3, third, safe, safe),
                safe,
                third);
        refuseChain(
                refused,
                "the recovery key in use",
                founded,
                statement(founded, 2, safe, safeAfter, first),
                first,
                safe);

        var published = Vectors.reproduced("key-chain", made);
        var last = KeyChain.parse((ObjectNode) published.get("accepted").get(2).get("chain"));
        var byThief =
                KeyChain.parse((ObjectNode) published.get("accepted").get(3).get("chain"));
        assertThat(last.overrules(byThief)).isTrue();
        assertThat(byThief.overrules(last)).isFalse();
        for (var one : published.get("accepted")) {
            var chain = KeyChain.parse((ObjectNode) one.get("chain"));
            assertThat(chain.current().x())
                    .isEqualTo(published
                            .get("keys")
                            .get(one.get("current").asText())
                            .get("x")
                            .asText());
            assertThat(chain.nodeId()).isEqualTo(published.get("node").asText());
            for (var link : chain.links()) {
                var by = new VerifyingKey(link.byOld().payload().get("by").asText());
                var parts = link.byOld().compact();
                int dot = parts.lastIndexOf('.');
                assertThat(Jdk.verifies(
                                by.encoded(),
                                parts.substring(0, dot).getBytes(UTF_8),
                                Base64.getUrlDecoder().decode(parts.substring(dot + 1))))
                        .isTrue();
            }
        }
        for (var one : published.get("refused")) {
            assertThat(chainFault((ObjectNode) one.get("chain")))
                    .as(one.get("what").asText())
                    .hasToString(one.get("fault").asText());
        }
    }

    private static SigningKey key(ObjectNode keys, String name, int filling) {
        byte[] seed = new byte[32];
        Arrays.fill(seed, (byte) filling);
        var key = SigningKey.ofSeed(seed);
        keys.putObject(name)
                .put("seed", HEX.formatHex(seed))
                .put("x", key.verifyingKey().x())
                .put("thumbprint", key.verifyingKey().thumbprint());
        return key;
    }

    private static ObjectNode statement(
            KeyChain chain, int number, SigningKey key, SigningKey recovery, SigningKey by) {
        return new KeyStatement(
                        chain.nodeId(),
                        number,
                        key.verifyingKey(),
                        recovery.verifyingKey().thumbprint(),
                        by.verifyingKey())
                .toJson();
    }

    private static void refuseChain(
            ArrayNode refused, String what, KeyChain chain, ObjectNode statement, SigningKey old, SigningKey next) {
        var json = chain.toJson();
        ((ArrayNode) json.get("links"))
                .addArray()
                .add(Signed.sign(KeyChain.TYPE, statement, old).compact())
                .add(Signed.sign(KeyChain.TYPE, statement, next).compact());
        refused.addObject()
                .put("what", what)
                .put("fault", chainFault(json).name())
                .set("chain", json);
    }

    private static Fault chainFault(ObjectNode json) {
        try {
            KeyChain.parse(json);
        } catch (Malformed e) {
            return e.fault();
        }
        throw new AssertionError("taken: " + json);
    }
}
