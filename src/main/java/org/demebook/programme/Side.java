package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Whose animal of a pair. In JSON lower-case words. */
enum Side {
    DAM,
    SIRE;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Side parse(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    @JsonValue
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
