package org.demebook.signing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Random;

/** Objects with whatever a canonical form has to cope with: escapes, planes beyond the first, numbers at their limits. */
final class RandomJson {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private RandomJson() {}

    static ObjectNode object(Random random, int depth) {
        var object = NODES.objectNode();
        for (int i = random.nextInt(5); i >= 0; i--) {
            object.set(text(random), value(random, depth));
        }
        return object;
    }

    private static JsonNode value(Random random, int depth) {
        return switch (random.nextInt(depth > 0 ? 7 : 5)) {
            case 0 -> NODES.textNode(text(random));
            case 1 -> NODES.numberNode(random.nextInt());
            case 2 -> number(random);
            case 3 -> NODES.booleanNode(random.nextBoolean());
            case 4 -> NODES.nullNode();
            case 5 -> object(random, depth - 1);
            default -> {
                var array = NODES.arrayNode();
                for (int i = random.nextInt(4); i > 0; i--) {
                    array.add(value(random, depth - 1));
                }
                yield array;
            }
        };
    }

    private static JsonNode number(Random random) {
        long number = CanonicalJson.MOST_NUMBER >> random.nextInt(53);
        number = random.nextBoolean() ? number : -number;
        return number == (int) number ? NODES.numberNode((int) number) : NODES.numberNode(number);
    }

    static String text(Random random) {
        var text = new StringBuilder();
        for (int i = random.nextInt(8); i >= 0; i--) {
            int codePoint = random.nextInt(
                    switch (random.nextInt(4)) {
                        case 0 -> 0x20;
                        case 1 -> 0x80;
                        case 2 -> 0x3000;
                        default -> 0x110000;
                    });
            var one = Character.toString(codePoint);
            if (!CodePoints.hasLoneSurrogate(one) && !CodePoints.hasNoncharacter(one)) {
                text.append(one);
            }
        }
        return text.toString();
    }
}
