package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What most keepers want to share, in one word; what each grants stands in docs/consent.md. In JSON lower-case words with a hyphen. */
public enum ReadyChoice {
    /** Nothing. */
    PRIVATE,
    /** Figures are computed with the animals, and nobody sees them. */
    COMPUTE_ONLY,
    /** Members find a partner for their animals, and see its ancestry by number. */
    PAIRING_WITH_MEMBERS,
    /** Everybody sees animals and ancestry; members see litters and figures too. */
    OPEN_PEDIGREE;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static ReadyChoice parse(String word) {
        return Wording.parse(ReadyChoice.class, word);
    }

    @JsonValue
    public String word() {
        return Wording.word(this);
    }
}
