package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** The sex of an animal as far as it is known. In JSON a lower-case word. */
public enum Sex {
    FEMALE,
    MALE,
    UNKNOWN;

    /**
     * Reads what keepers write in their lists, in English or German, as symbols or as head counts (males.females,
     * males.females.unsexed: 1.0, 0.1, 0.0.1). Common practice, no source.
     *
     * @throws IllegalArgumentException with a sentence for the keeper; also for an empty text, because a sex left
     *     out and a sex known to be unknown are two facts
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Sex parse(String text) {
        String word = text.replace("\uFE0E", "").replace("\uFE0F", "").strip().toLowerCase(Locale.ROOT);
        return switch (word) {
            case "female", "f", "f.", "fem", "fem.", "♀", "0.1", "0.1.0", "weiblich", "w" -> FEMALE;
            case "male", "m", "m.", "♂", "1.0", "1.0.0", "männlich", "maennlich" -> MALE;
            case "unknown", "u", "u.", "unk", "unk.", "unsexed", "undetermined", "?", "0.0.1", "unbekannt" -> UNKNOWN;
            default -> throw new IllegalArgumentException("This does not read as a sex; write female, male or unknown");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
