package org.demebook.approach;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What has become of an approach, for one of its sides; derived, never stored. In JSON lower-case words with a hyphen. */
public enum ApproachState {
    /** It may be answered, for all that this side may know. */
    OPEN,
    /** Both want it, and it holds. */
    AGREED,
    /** For the side that asks: thirty days are over. For the side that is asked: it refused, or did not answer. */
    NO_AGREEMENT,
    /** The side that asks took it back; to the side that is asked also: its animal is not there any more. */
    WITHDRAWN,
    /** An agreement that holds no longer; or what this side put in is not there any more. */
    ENDED;

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
