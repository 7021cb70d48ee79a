package org.demebook.signing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.NullNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.demebook.signing.Malformed.Fault;

/**
 * Reads JSON (RFC 8259) with the refusals of I-JSON (RFC 7493), and of fractions. Usual readers are no help: they take the last
 * of two equal names, round 2⁵³ + 1, and let half a surrogate pair through.
 */
final class StrictReader {
    private static final int END = -1;
    private static final int MOST_DIGITS =
            Long.toString(CanonicalJson.MOST_NUMBER).length();

    private final String text;
    private int at;

    private StrictReader(String text) {
        this.text = text;
    }

    static ObjectNode read(byte[] bytes) {
        var reader = new StrictReader(decode(bytes));
        reader.skipSpace();
        if (reader.peek() != '{') {
            throw reader.notJson("an object starts with {");
        }
        var object = reader.object(1);
        reader.skipSpace();
        if (reader.peek() != END) {
            throw reader.notJson("nothing follows the object");
        }
        return object;
    }

    // the decoder of the JDK refuses overlong forms and encoded surrogates, if told to report
    private static String decode(byte[] bytes) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new Malformed(Fault.NOT_UTF8, "not UTF-8: " + e.getMessage());
        }
    }

    private JsonNode value(int depth) {
        return switch (peek()) {
            case '{' -> object(depth + 1);
            case '[' -> array(depth + 1);
            case '"' -> TextNode.valueOf(string());
            case 't' -> literal("true", BooleanNode.TRUE);
            case 'f' -> literal("false", BooleanNode.FALSE);
            case 'n' -> literal("null", NullNode.instance);
            default -> number();
        };
    }

    private ObjectNode object(int depth) {
        requireDepth(depth);
        var object = JsonNodeFactory.instance.objectNode();
        expect('{');
        skipSpace();
        if (take('}')) {
            return object;
        }
        do {
            skipSpace();
            var name = string();
            if (object.has(name)) {
                throw new Malformed(
                        Fault.DUPLICATE_NAME,
                        "a name stands twice in one object, the second time before character " + at);
            }
            skipSpace();
            expect(':');
            skipSpace();
            object.set(name, value(depth));
            skipSpace();
        } while (take(','));
        expect('}');
        return object;
    }

    private ArrayNode array(int depth) {
        requireDepth(depth);
        var array = JsonNodeFactory.instance.arrayNode();
        expect('[');
        skipSpace();
        if (take(']')) {
            return array;
        }
        do {
            skipSpace();
            array.add(value(depth));
            skipSpace();
        } while (take(','));
        expect(']');
        return array;
    }

    private void requireDepth(int depth) {
        if (depth > CanonicalJson.MOST_DEPTH) {
            throw new Malformed(
                    Fault.TOO_DEEP, "nested beyond " + CanonicalJson.MOST_DEPTH + " levels at character " + at);
        }
    }

    private JsonNode literal(String word, JsonNode meaning) {
        if (!text.startsWith(word, at)) {
            throw notJson("expected " + word);
        }
        at += word.length();
        return meaning;
    }

    private JsonNode number() {
        int start = at;
        boolean negative = take('-');
        int firstDigit = at;
        digits();
        int digits = at - firstDigit;
        if (digits > 1 && text.charAt(firstDigit) == '0') {
            throw notJson("a number does not start with 0");
        }
        boolean fraction = take('.');
        if (fraction) {
            digits();
        }
        boolean exponent = take('e') || take('E');
        if (exponent) {
            if (!take('+')) {
                take('-');
            }
            digits();
        }
        long amount = digits > MOST_DIGITS ? Long.MAX_VALUE : Long.parseLong(text, firstDigit, firstDigit + digits, 10);
        if (fraction || exponent || negative && amount == 0 || amount > CanonicalJson.MOST_NUMBER) {
            throw new Malformed(
                    Fault.UNSAFE_NUMBER,
                    "only whole numbers up to 2^53 - 1 and down to its negative, not the one at character " + start);
        }
        long number = negative ? -amount : amount;
        return number == (int) number ? IntNode.valueOf((int) number) : LongNode.valueOf(number);
    }

    private void digits() {
        int start = at;
        while (peek() >= '0' && peek() <= '9') {
            at++;
        }
        if (at == start) {
            throw notJson("expected a value");
        }
    }

    private String string() {
        expect('"');
        var string = new StringBuilder();
        while (!take('"')) {
            int c = next();
            if (c < ' ') {
                throw notJson(c == END ? "a string does not end" : "control characters are escaped");
            }
            string.append(c == '\\' ? escaped() : (char) c);
        }
        var whole = string.toString();
        if (CodePoints.hasLoneSurrogate(whole)) {
            throw new Malformed(
                    Fault.LONE_SURROGATE, "half a surrogate pair in the string that ends at character " + at);
        }
        if (CodePoints.hasNoncharacter(whole)) {
            throw new Malformed(Fault.NONCHARACTER, "a noncharacter in the string that ends at character " + at);
        }
        return whole;
    }

    private char escaped() {
        int c = next();
        return switch (c) {
            case '"', '\\', '/' -> (char) c;
            case 'b' -> '\b';
            case 'f' -> '\f';
            case 'n' -> '\n';
            case 'r' -> '\r';
            case 't' -> '\t';
            case 'u' -> hex();
            default -> throw notJson("no such escape");
        };
    }

    private char hex() {
        int unit = 0;
        for (int i = 0; i < 4; i++) {
            int c = next();
            int digit = c < 128 ? Character.digit(c, 16) : -1; // digit() knows digits of other scripts, too
            if (digit < 0) {
                throw notJson("\\u is followed by four hexadecimal digits");
            }
            unit = unit << 4 | digit;
        }
        return (char) unit;
    }

    private void skipSpace() {
        while (peek() == ' ' || peek() == '\n' || peek() == '\r' || peek() == '\t') {
            at++;
        }
    }

    private int peek() {
        return at < text.length() ? text.charAt(at) : END;
    }

    private int next() {
        return at < text.length() ? text.charAt(at++) : END;
    }

    private boolean take(char wanted) {
        if (peek() == wanted) {
            at++;
            return true;
        }
        return false;
    }

    private void expect(char wanted) {
        if (!take(wanted)) {
            throw notJson("expected " + wanted);
        }
    }

    private Malformed notJson(String why) {
        return new Malformed(Fault.NOT_JSON, why + ", at character " + at);
    }
}
