package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What somebody wants to see or use a record for. In JSON lower-case words with a hyphen. */
public enum Purpose {
    /** Keeping the register itself right. */
    RECORD_KEEPING,
    /** Handing an animal over. */
    TRANSFER,
    /** Showing where an animal comes from. */
    PEDIGREE_VIEW,
    /** Finding which animals should breed next. */
    PAIRING_COMPUTATION,
    RESEARCH,
    /** Counts that everybody may read. */
    PUBLIC_COUNTS;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Purpose parse(String word) {
        return Wording.parse(Purpose.class, word);
    }

    @JsonValue
    public String word() {
        return Wording.word(this);
    }
}
