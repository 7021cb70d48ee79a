package org.demebook.taxon;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Whether the females of a population bear their young or lay. */
public enum BirthMode {
    LIVE_BEARING,
    EGG_LAYING;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static BirthMode parse(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "live-bearing" -> LIVE_BEARING;
            case "egg-laying" -> EGG_LAYING;
            default -> throw new IllegalArgumentException("Write live-bearing or egg-laying");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
