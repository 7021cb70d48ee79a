package org.demebook.protocol;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Reads the members of an object, each once and by its type; one that nobody asked for is a fault. */
final class Fields {
    private static final int NODE_ID_CHARACTERS = 43;

    private final ObjectNode object;
    private final Set<String> read = new HashSet<>();

    private Fields(ObjectNode object) {
        this.object = object;
    }

    static Fields of(JsonNode node) {
        if (node instanceof ObjectNode object) {
            return new Fields(object);
        }
        throw new BadStatement("is no object");
    }

    private @Nullable JsonNode take(String name) {
        read.add(name);
        return object.get(name);
    }

    private static BadStatement bad(String name) {
        return new BadStatement("has no good " + name);
    }

    String text(String name) {
        return optionalText(name).orElseThrow(() -> bad(name));
    }

    Optional<String> optionalText(String name) {
        var value = take(name);
        if (value == null) {
            return Optional.empty();
        }
        if (!value.isTextual()) {
            throw bad(name);
        }
        return Optional.of(value.textValue());
    }

    long number(String name, long least, long most) {
        var value = take(name);
        if (value == null || !value.isIntegralNumber() || value.longValue() < least || value.longValue() > most) {
            throw bad(name);
        }
        return value.longValue();
    }

    boolean flag(String name) {
        var value = take(name);
        if (value == null || !value.isBoolean()) {
            throw bad(name);
        }
        return value.booleanValue();
    }

    UUID uuid(String name) {
        return optionalUuid(name).orElseThrow(() -> bad(name));
    }

    Optional<UUID> optionalUuid(String name) {
        return optionalText(name).map(text -> {
            try {
                var id = UUID.fromString(text);
                if (id.toString().equals(text)) {
                    return id;
                }
            } catch (IllegalArgumentException e) {
                // said below
            }
            throw bad(name);
        });
    }

    String nodeId(String name) {
        var text = text(name);
        if (text.length() != NODE_ID_CHARACTERS) {
            throw bad(name);
        }
        return text;
    }

    AnimalId animal(String name) {
        return optionalAnimal(name).orElseThrow(() -> bad(name));
    }

    Optional<AnimalId> optionalAnimal(String name) {
        return optionalText(name).map(text -> {
            try {
                return AnimalId.parse(text);
            } catch (IllegalArgumentException e) {
                throw bad(name);
            }
        });
    }

    ObjectNode object(String name) {
        if (take(name) instanceof ObjectNode value) {
            return value;
        }
        throw bad(name);
    }

    <T> List<T> list(String name, int most, Function<JsonNode, T> read) {
        var value = take(name);
        if (value == null || !value.isArray() || value.size() > most) {
            throw bad(name);
        }
        var items = new ArrayList<T>(value.size());
        value.forEach(item -> items.add(read.apply(item)));
        return items;
    }

    void end() {
        object.fieldNames().forEachRemaining(name -> {
            if (!read.contains(name)) {
                throw new BadStatement("has " + name + ", which nobody knows");
            }
        });
    }
}
