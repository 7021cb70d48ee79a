package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Locale;

/** What has become of a proposed litter; derived, never stored. All that one side learns of the other's answer. In JSON lower-case words with a hyphen. */
public enum LitterState {
    OPEN,
    /** Both sides accepted. */
    AGREED,
    /** One side, whichever, does not want it or cannot have it in this season. */
    NOT_THIS_YEAR;

    /** @param answers at most one of each side */
    static LitterState of(List<LitterAnswer> answers) {
        if (answers.stream().anyMatch(answer -> answer.answer != Answer.ACCEPT)) {
            return NOT_THIS_YEAR;
        }
        return answers.size() == Side.values().length ? AGREED : OPEN;
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
