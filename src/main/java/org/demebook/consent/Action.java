package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What is done with what was recorded. None of them includes another. In JSON lower-case words with a hyphen. */
public enum Action {
    /** Shown as it stands. */
    READ,
    /** Computed with, and not shown. */
    COMPUTE,
    /** Passed on to another node. */
    RELAY,
    /** Counted in what is published. */
    PUBLISH_IN_AGGREGATE;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Action parse(String word) {
        return Wording.parse(Action.class, word);
    }

    @JsonValue
    public String word() {
        return Wording.word(this);
    }
}
