package org.demebook.transfer;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** What has become of a dispute. In JSON lower-case words. */
public enum DisputeState {
    OPEN,
    /** Whoever reported the animal took it back. */
    WITHDRAWN,
    /** The other side agreed: the animal is where it was reported. */
    CONCEDED,
    /** A coordinator decided that the animal is where it was reported. */
    UPHELD,
    /** A coordinator decided that the animal is where the register has it. */
    DISMISSED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static DisputeState parse(String word) {
        return Arrays.stream(values())
                .filter(state -> state.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("Write "
                        + Arrays.stream(values()).map(DisputeState::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Whether the animal went to where it was reported. */
    boolean movedIt() {
        return this == CONCEDED || this == UPHELD;
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<DisputeState> {
        Column() {
            super(DisputeState::word, DisputeState::parse);
        }
    }
}
