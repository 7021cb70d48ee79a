package org.demebook.consent;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;

/** What is granted together: the parts of what is recorded about an animal. In JSON lower-case words with a hyphen. */
public enum FieldGroup {
    /** Number, sex, dates of birth and death, origin. */
    IDENTITY,
    /** Marks, transponders, photographs. */
    MARKS_AND_PHOTOS,
    /** Which collection holds and owns it, and how it came there. */
    CUSTODY,
    /** The region in which it lives. */
    COARSE_PLACE,
    /** Any place nearer than the region. */
    FINE_PLACE,
    /** Dam, sire, candidates, litter. */
    PARENTAGE,
    /** Introductions, breeding signs, litters and what came of them. */
    BREEDING_RESULTS,
    /** Meals, sheds, measures, tests, illness, quarantine. */
    HEALTH,
    /** Results of DNA tests, and figures that are computed from a pedigree. */
    GENETICS,
    /** Free text. */
    NOTES;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static FieldGroup parse(String word) {
        return Wording.parse(FieldGroup.class, word);
    }

    @JsonValue
    public String word() {
        return Wording.word(this);
    }
}
