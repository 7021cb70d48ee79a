package org.demebook.consent;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** The words of this room's enums, in JSON, in the journal and in columns: lower case, with hyphens. */
final class Wording {
    private Wording() {}

    static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static <E extends Enum<E>> E parse(Class<E> type, String word) {
        return Arrays.stream(type.getEnumConstants())
                .filter(value -> word(value).equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("\"%s\" is none of them; write %s"
                        .formatted(
                                word,
                                Arrays.stream(type.getEnumConstants())
                                        .map(Wording::word)
                                        .collect(Collectors.joining(", ")))));
    }
}
