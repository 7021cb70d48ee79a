package org.demebook.approach;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** On which side of an approach somebody stands. In JSON a lower-case word. */
public enum ApproachSide {
    /** That proposed it. */
    ASKING,
    /** That answers it. */
    ASKED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static ApproachSide parse(String word) {
        for (var side : values()) {
            if (side.word().equals(word)) {
                return side;
            }
        }
        throw new IllegalArgumentException("Write asking or asked");
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
