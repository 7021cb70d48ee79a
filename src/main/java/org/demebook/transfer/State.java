package org.demebook.transfer;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** What has become of a transfer. In JSON lower-case words with a hyphen. */
public enum State {
    OFFERED,
    ACCEPTED,
    REFUSED,
    WITHDRAWN,
    EXPIRED,
    /** With a holder who does not take part yet; a claim code is out. */
    HANDED_OUT,
    CLAIMED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static State parse(String word) {
        return Arrays.stream(values())
                .filter(state -> state.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException(
                        "Write " + Arrays.stream(values()).map(State::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether it can still be answered, or claimed. */
    public boolean open() {
        return this == OFFERED || this == HANDED_OUT;
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<State> {
        Column() {
            super(State::word, State::parse);
        }
    }
}
