package org.demebook.crossing;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** What has become of a crossing. In JSON lower-case words with hyphens. */
public enum CrossingState {
    OFFERED,
    /** The receiver took it up, and the giver's node has not released the animal yet, as far as is known here. */
    ACCEPTED,
    /** The giver's node released it, the receiver's has not taken it yet, as far as is known here: it is with neither. */
    ON_ITS_WAY,
    ARRIVED,
    REFUSED,
    WITHDRAWN,
    EXPIRED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static CrossingState parse(String word) {
        return Arrays.stream(values())
                .filter(state -> state.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("Write "
                        + Arrays.stream(values()).map(CrossingState::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether something is still to come. */
    public boolean open() {
        return this == OFFERED || this == ACCEPTED || this == ON_ITS_WAY;
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<CrossingState> {
        Column() {
            super(CrossingState::word, CrossingState::parse);
        }
    }
}
