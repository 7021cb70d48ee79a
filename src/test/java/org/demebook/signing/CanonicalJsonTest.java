package org.demebook.signing;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.HexFormat;
import java.util.Random;
import org.demebook.Thorough;
import org.demebook.signing.Malformed.Fault;
import org.erdtman.jcs.JsonCanonicalizer;
import org.junit.jupiter.api.Test;

/** Values of RFC 8785 are those that the RFC prints; the second opinion is the library of one of its authors. */
class CanonicalJsonTest {
    private static final int MOST = 10_000;
    private static final ObjectMapper JACKSON = new ObjectMapper();

    @Test
    void the_sample_of_the_standard_gives_the_bytes_of_the_standard() throws IOException {
        // RFC 8785, 3.2.2 (input) and 3.2.4 (bytes), without its numbers, which have fractions
        var sample = JACKSON.readTree(
                "{\"string\":\"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\",\"literals\":[null,true,false]}");
        assertThat(HexFormat.ofDelimiter(" ").formatHex(CanonicalJson.write((ObjectNode) sample)))
                .isEqualTo(
                        "7b 22 6c 69 74 65 72 61 6c 73 22 3a 5b 6e 75 6c 6c 2c 74 72 75 65 2c 66 61 6c 73 65 5d 2c "
                                + "22 73 74 72 69 6e 67 22 3a 22 e2 82 ac 24 5c 75 30 30 30 66 5c 6e 41 27 42 5c 22 5c 5c 5c 5c 5c 22 2f 22 7d");
    }

    @Test
    void names_are_sorted_by_utf_16_units() throws IOException {
        // RFC 8785, 3.2.3
        var sample = JACKSON.readTree(
                "{\"\\u20ac\":\"Euro Sign\",\"\\r\":\"Carriage Return\",\"\\ufb33\":\"Hebrew Letter Dalet With Dagesh\","
                        + "\"1\":\"One\",\"\\ud83d\\ude00\":\"Emoji: Grinning Face\",\"\\u0080\":\"Control\",\"\\u00f6\":\"Latin Small Letter O With Diaeresis\"}");
        assertThat(new String(CanonicalJson.write((ObjectNode) sample), UTF_8))
                .isEqualTo(
                        "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"\u00f6\":\"Latin Small Letter O With Diaeresis\","
                                + "\"\u20ac\":\"Euro Sign\",\"\ud83d\ude00\":\"Emoji: Grinning Face\",\"\ufb33\":\"Hebrew Letter Dalet With Dagesh\"}");
    }

    @Test
    void every_number_of_the_standards_table_that_is_not_whole_or_not_safe_is_refused() {
        // RFC 8785, appendix B: what an ECMAScript number looks like in JSON; +0 alone is taken here
        for (var number : new String[] {
            "5e-324",
            "-5e-324",
            "1.7976931348623157e+308",
            "-1.7976931348623157e+308",
            "9007199254740992",
            "-9007199254740992",
            "295147905179352830000",
            "9.999999999999997e+22",
            "1e+23",
            "1.0000000000000001e+23",
            "999999999999999700000",
            "999999999999999900000",
            "1e+21",
            "9.999999999999997e-7",
            "0.000001",
            "333333333.3333332",
            "333333333.33333325",
            "333333333.3333333",
            "333333333.3333334",
            "333333333.33333343",
            "-0.0000033333333333333333",
            "1424953923781206.2"
        }) {
            refused(Fault.UNSAFE_NUMBER, "{\"a\":" + number + "}");
        }
        // its "NaN" and "Infinity" rows are errors by the RFC itself
        refused(Fault.NOT_JSON, "{\"a\":NaN}");
        refused(Fault.NOT_JSON, "{\"a\":Infinity}");
        accepted("{\"a\":0}");
    }

    @Test
    void whole_numbers_are_taken_as_far_as_i_json_calls_them_interoperable() {
        // RFC 7493, 2.2: [-(2**53)+1, (2**53)-1]
        accepted("{\"a\":9007199254740991}");
        accepted("{\"a\":-9007199254740991}");
        accepted("{\"a\":[2147483647,2147483648,-2147483648,-2147483649]}");
        refused(Fault.UNSAFE_NUMBER, "{\"a\":9007199254740993}");
        refused(Fault.UNSAFE_NUMBER, "{\"a\":99999999999999999999999999}");
        refused(Fault.UNSAFE_NUMBER, "{\"a\":-0}");
        refused(Fault.UNSAFE_NUMBER, "{\"a\":1.0}");
        refused(Fault.UNSAFE_NUMBER, "{\"a\":1E0}");
        for (var number : new String[] {"01", "-01", "+1", "1.", ".5", "-", "1e", "1e+", "0x10", "--1"}) {
            refused(Fault.NOT_JSON, "{\"a\":" + number + "}");
        }
    }

    @Test
    void what_i_json_rules_out_is_refused() {
        refused(Fault.DUPLICATE_NAME, "{\"a\":1,\"a\":1}"); // RFC 7493, 2.3
        refused(Fault.DUPLICATE_NAME, "{\"a\":1,\"\\u0061\":2}"); // the same after escapes are processed
        refused(Fault.DUPLICATE_NAME, "{\"b\":[{\"a\":{},\"a\":{}}]}");
        refused(Fault.LONE_SURROGATE, "{\"a\":\"\\uDEAD\"}"); // RFC 7493, 2.1
        refused(Fault.LONE_SURROGATE, "{\"a\":\"\\ud83d\"}");
        refused(Fault.LONE_SURROGATE, "{\"\\ud83dx\":1}");
        refused(Fault.LONE_SURROGATE, "{\"a\":\"\\ude00\\ud83d\"}");
        refused(Fault.NONCHARACTER, "{\"a\":\"\uffff\"}"); // RFC 7493, 2.1, with Unicode's list of 66
        refused(Fault.NONCHARACTER, "{\"a\":\"\ufdd0\"}");
        refused(Fault.NONCHARACTER, "{\"a\":\"\\udbff\\udfff\"}");
        accepted("{\"a\":\"\ufffd\ufdf0\"}");
    }

    @Test
    void bytes_that_are_no_utf_8_are_refused() {
        // RFC 7493, 2.1, with the forms that RFC 3629, 3 and 10, forbids
        refused(Fault.NOT_UTF8, bytes("7b2261223a22ff227d"));
        refused(Fault.NOT_UTF8, bytes("7b2261223a22c0af227d")); // an overlong slash
        refused(Fault.NOT_UTF8, bytes("7b2261223a22eda080227d")); // an encoded surrogate
        refused(Fault.NOT_UTF8, bytes("7b2261223a22f4908080227d")); // beyond U+10FFFF
        refused(Fault.NOT_UTF8, bytes("7b2261223a22e282"));
        refused(Fault.NOT_JSON, "\ufeff{}"); // RFC 8259, 8.1: no byte order mark
    }

    @Test
    void what_is_no_json_object_is_refused() {
        for (var text : new String[] {
            "",
            " ",
            "[]",
            "1",
            "null",
            "\"a\"",
            "{",
            "}",
            "{}{}",
            "{} x",
            "{a:1}",
            "{'a':1}",
            "{\"a\"}",
            "{\"a\":}",
            "{\"a\":1,}",
            "{,}",
            "{\"a\":[1,]}",
            "{\"a\":[1 2]}",
            "{\"a\":[1",
            "{\"a\":tru}",
            "{\"a\":True}",
            "{\"a\":\"",
            "{\"a\":\"\\",
            "{\"a\":\"\\x\"}",
            "{\"a\":\"\\u12\"}",
            "{\"a\":\"\\u\uff11\uff11\uff11\uff11\"}",
            "{\"a\":\"\n\"}",
            "{\"a\":\"\u0000\"}",
            "{\u00a0}",
            "{/**/}"
        }) {
            refused(Fault.NOT_JSON, text);
        }
    }

    @Test
    void another_form_of_the_same_value_is_refused() {
        for (var text : new String[] {
            " {}",
            "{}\n",
            "{ }",
            "{\"a\": 1}",
            "{\"b\":1,\"a\":1}",
            "{\"a\":\"\\/\"}",
            "{\"a\":\"\\u0041\"}",
            "{\"a\":\"\\u000A\"}",
            "{\"a\":\"\\u000F\"}",
            "{\"a\":\"\\u20ac\"}",
            "{\"a\":\"\\ud83d\\ude00\"}",
            "{\"\\u007f\":1}"
        }) {
            refused(Fault.NOT_CANONICAL, text);
        }
    }

    @Test
    void size_is_looked_at_first_and_depth_before_the_stack_ends() {
        refused(Fault.TOO_LARGE, "x".repeat(MOST + 1));
        accepted("{\"a\":" + "[".repeat(31) + "]".repeat(31) + "}");
        refused(Fault.TOO_DEEP, "{\"a\":" + "[".repeat(32) + "]".repeat(32) + "}");
        refused(Fault.TOO_DEEP, "{\"a\":".repeat(33));
        assertThat(thrown("{\"a\":" + "[".repeat(1_000_000), 2_000_000)).isEqualTo(Fault.TOO_DEEP);
    }

    @Test
    void what_has_no_canonical_form_is_not_written() {
        var nodes = JsonNodeFactory.instance;
        for (JsonNode value : new JsonNode[] {
            nodes.numberNode(1.5), nodes.numberNode(1.0f), nodes.numberNode(new BigDecimal("1.0")),
                    nodes.numberNode(1L << 53),
            nodes.numberNode(-(1L << 53)), nodes.numberNode(BigInteger.TWO.pow(80)), nodes.binaryNode(new byte[1]),
                    nodes.pojoNode(this),
            nodes.textNode("\ud83d"), nodes.textNode("\uffff")
        }) {
            assertThatThrownBy(() -> CanonicalJson.write(nodes.objectNode().set("a", value)))
                    .as("%s", value.getNodeType())
                    .isInstanceOf(IllegalArgumentException.class);
        }
        var deep = nodes.objectNode();
        for (int level = 1; level < 33; level++) {
            deep = nodes.objectNode().set("a", deep);
        }
        var tooDeep = deep;
        assertThatThrownBy(() -> CanonicalJson.write(tooDeep)).isInstanceOf(IllegalArgumentException.class);
        assertThat(CanonicalJson.write((ObjectNode) tooDeep.get("a"))).hasSize(32 * 6 - 4);
    }

    @Test
    void random_objects_are_written_as_the_reference_library_writes_them_and_read_back() throws IOException {
        // io.github.erdtman:java-json-canonicalization
        int size = Thorough.size("demebook.json", 2_000, 100_000);
        long seed = 20261128;
        var random = new Random(seed);
        for (int i = 0; i < size; i++) {
            var object = RandomJson.object(random, 3);
            byte[] written = CanonicalJson.write(object);
            assertThat(written)
                    .as("seed %d, object %d", seed, i)
                    .isEqualTo(new JsonCanonicalizer(JACKSON.writeValueAsString(object)).getEncodedUTF8());
            assertThat(CanonicalJson.read(written, written.length))
                    .isEqualTo(object)
                    .isEqualTo(JACKSON.readTree(written));
        }
    }

    @Test
    void whatever_byte_is_changed_only_canonical_bytes_are_taken() {
        var random = new Random(7);
        byte[] good = CanonicalJson.write(RandomJson.object(random, 3));
        for (int at = 0; at < good.length; at++) {
            for (int change = 1; change < 256; change++) {
                byte[] changed = good.clone();
                changed[at] ^= (byte) change;
                try {
                    assertThat(CanonicalJson.write(CanonicalJson.read(changed, MOST)))
                            .isEqualTo(changed);
                } catch (Malformed refused) {
                    assertThat(refused.fault()).isNotNull();
                }
            }
        }
    }

    private static byte[] bytes(String hex) {
        return HexFormat.of().parseHex(hex);
    }

    private static void accepted(String text) {
        assertThat(CanonicalJson.write(CanonicalJson.read(text.getBytes(UTF_8), MOST)))
                .isEqualTo(text.getBytes(UTF_8));
    }

    private static void refused(Fault fault, String text) {
        assertThat(thrown(text, MOST)).as(text.length() > 100 ? "long" : text).isEqualTo(fault);
    }

    private static void refused(Fault fault, byte[] bytes) {
        assertThatThrownBy(() -> CanonicalJson.read(bytes, MOST))
                .isInstanceOfSatisfying(
                        Malformed.class, e -> assertThat(e.fault()).isEqualTo(fault));
    }

    private static Fault thrown(String text, int most) {
        try {
            CanonicalJson.read(text.getBytes(UTF_8), most);
        } catch (Malformed e) {
            return e.fault();
        }
        throw new AssertionError("taken: " + text);
    }
}
