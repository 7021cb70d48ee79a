package org.demebook.web.today;

import org.demebook.care.CareKind;

/** What one usually does about a task: what its first button does. */
public enum Way {
    /** It ate, or refused. */
    MEAL,
    /** It shed. */
    SHED,
    /** Somebody gave birth: the litter is entered. */
    LITTER,
    /** The mass is written down. */
    WEIGH,
    TEST,
    PHOTOGRAPH,
    /** The quarantine is ended where it is written down. */
    QUARANTINE,
    /** It is answered, or decided, on a page of its own. */
    SEASON,
    APPROACH,
    SHARING,
    /** It is done, and that is all. */
    DONE;

    static Way of(CareKind kind) {
        return switch (kind) {
            case FIRST_MEAL, NEXT_MEAL, RECOVERY_MEAL -> MEAL;
            case FIRST_SHED_CHECK -> SHED;
            case DUE_WINDOW, BIRTH_LIKELY, BIRTH_OVERDUE -> LITTER;
            case WEIGHING, RECOVERY_WEIGHING -> WEIGH;
            case TEST_BEFORE_PAIRING -> TEST;
            case PHOTOGRAPH -> PHOTOGRAPH;
            case QUARANTINE_END -> QUARANTINE;
            case SEASON_ANSWER -> SEASON;
            case APPROACH_ANSWER -> APPROACH;
            case GRANT_RENEWAL -> SHARING;
            case EARLY_BIRTH, LABOUR_CHECK, INCUBATION_CHECK, SEPARATION, BEDDING, SEASON_PAIRING, OWN -> DONE;
        };
    }

    /** Whether one tap here does it; else it leads to where it is done. */
    public boolean isTap() {
        return this == MEAL || this == SHED || this == DONE;
    }

    /** Whether others wait for the keeper. */
    boolean othersWait() {
        return this == SEASON || this == APPROACH || this == SHARING;
    }
}
