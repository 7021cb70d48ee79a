package org.demebook.signing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/** Writes by RFC 8785, 3.2: no white space, names sorted by UTF-16 code units, the shortest escapes. */
final class CanonicalWriter {
    private static final HexFormat LOWER_CASE = HexFormat.of();

    private final StringBuilder out = new StringBuilder();

    private CanonicalWriter() {}

    static byte[] write(ObjectNode node) {
        var writer = new CanonicalWriter();
        writer.value(node, 0);
        return writer.out.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void value(JsonNode node, int depth) {
        if (node.isTextual()) {
            string(node.textValue());
        } else if (node.isIntegralNumber()) {
            number(node);
        } else if (node.isBoolean() || node.isNull()) {
            out.append(node.asText());
        } else if (node.isObject()) {
            object((ObjectNode) node, deeper(depth));
        } else if (node.isArray()) {
            array(node, deeper(depth));
        } else {
            throw new IllegalArgumentException(
                    "canonical JSON has text and whole numbers; write this " + node.getNodeType() + " as text");
        }
    }

    private static int deeper(int depth) {
        if (depth == CanonicalJson.MOST_DEPTH) {
            throw new IllegalArgumentException("nested beyond " + CanonicalJson.MOST_DEPTH + " levels");
        }
        return depth + 1;
    }

    private void object(ObjectNode object, int depth) {
        List<String> names = new ArrayList<>(object.size());
        object.fieldNames().forEachRemaining(names::add);
        names.sort(null); // String compares UTF-16 code units, which is the order of RFC 8785, 3.2.3
        out.append('{');
        for (int i = 0; i < names.size(); i++) {
            if (i > 0) {
                out.append(',');
            }
            string(names.get(i));
            out.append(':');
            value(object.get(names.get(i)), depth);
        }
        out.append('}');
    }

    private void array(JsonNode array, int depth) {
        out.append('[');
        for (int i = 0; i < array.size(); i++) {
            if (i > 0) {
                out.append(',');
            }
            value(array.get(i), depth);
        }
        out.append(']');
    }

    private void number(JsonNode number) {
        if (!number.canConvertToLong()
                || number.longValue() > CanonicalJson.MOST_NUMBER
                || number.longValue() < -CanonicalJson.MOST_NUMBER) {
            throw new IllegalArgumentException(number + " is beyond ±(2^53 - 1); write it as text");
        }
        out.append(number.longValue());
    }

    private void string(String text) {
        if (CodePoints.hasLoneSurrogate(text) || CodePoints.hasNoncharacter(text)) {
            throw new IllegalArgumentException("a text holds half a surrogate pair or a noncharacter");
        }
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\b' -> out.append("\\b");
                case '\t' -> out.append("\\t");
                case '\n' -> out.append("\\n");
                case '\f' -> out.append("\\f");
                case '\r' -> out.append("\\r");
                default -> {
                    if (c < ' ') {
                        out.append("\\u").append(LOWER_CASE.toHexDigits(c));
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }
}
