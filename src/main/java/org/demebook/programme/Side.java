package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;
import java.util.UUID;

/** Whose animal of a pair. In JSON lower-case words. */
public enum Side {
    DAM,
    SIRE;

    Side other() {
        return this == DAM ? SIRE : DAM;
    }

    UUID animalOf(PlanDocument.Litter litter) {
        return this == DAM ? litter.damId() : litter.sireId();
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Side parse(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
