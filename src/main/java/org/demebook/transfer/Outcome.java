package org.demebook.transfer;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;

/** For which of the two sides of a dispute a coordinator decides. In JSON lower-case words. */
public enum Outcome {
    /** The animal is where it was reported. */
    UPHELD(DisputeState.UPHELD),
    /** The animal is where the register has it. */
    DISMISSED(DisputeState.DISMISSED);

    private final DisputeState state;

    Outcome(DisputeState state) {
        this.state = state;
    }

    DisputeState state() {
        return state;
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Outcome parse(String word) {
        return Arrays.stream(values())
                .filter(outcome -> outcome.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("Write upheld or dismissed"));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
