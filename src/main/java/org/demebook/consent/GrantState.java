package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What has become of a grant at a moment; derived, never stored. In JSON lower-case words with a hyphen. */
public enum GrantState {
    /** Its time has not begun. */
    NOT_YET,
    LIVE,
    /** Taken back by a keeper of the collection. */
    WITHDRAWN,
    /** Its time is over. */
    EXPIRED,
    /** Another grant, or another ready choice, stands in its place. */
    SUPERSEDED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static GrantState parse(String word) {
        return Wording.parse(GrantState.class, word);
    }

    @JsonValue
    public String word() {
        return Wording.word(this);
    }
}
