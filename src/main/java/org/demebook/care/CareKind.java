package org.demebook.care;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.Locale;

/** What a care task is about; one can silence all of a kind. */
public enum CareKind {
    /** A birth, a laying or a hatching, from the first likely day to the last. */
    @JsonProperty("due-window")
    DUE_WINDOW,
    /** From here on a birth would be early, but has been seen. */
    @JsonProperty("early-birth")
    EARLY_BIRTH,
    /** The likely days begin. */
    @JsonProperty("birth-likely")
    BIRTH_LIKELY,
    /** The likely days are over. */
    @JsonProperty("birth-overdue")
    BIRTH_OVERDUE,
    /** Labour has gone on for long. */
    @JsonProperty("labour-check")
    LABOUR_CHECK,
    @JsonProperty("incubation-check")
    INCUBATION_CHECK,

    @JsonProperty("first-shed-check")
    FIRST_SHED_CHECK,
    @JsonProperty("separation")
    SEPARATION,
    @JsonProperty("first-meal")
    FIRST_MEAL,
    @JsonProperty("next-meal")
    NEXT_MEAL,
    @JsonProperty("weighing")
    WEIGHING,
    @JsonProperty("bedding")
    BEDDING,
    @JsonProperty("photograph")
    PHOTOGRAPH,

    /** The dam's first meal after a birth. */
    @JsonProperty("recovery-meal")
    RECOVERY_MEAL,
    /** The dam's mass some weeks after a birth. */
    @JsonProperty("recovery-weighing")
    RECOVERY_WEIGHING,

    @JsonProperty("test-before-pairing")
    TEST_BEFORE_PAIRING,
    @JsonProperty("quarantine-end")
    QUARANTINE_END,

    /** Written down by the keeper. */
    @JsonProperty("own")
    OWN;

    /** As in JSON and in the journal. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The kind with this word. */
    public static CareKind of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
