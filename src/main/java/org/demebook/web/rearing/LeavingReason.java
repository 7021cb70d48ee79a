package org.demebook.web.rearing;

import java.util.Locale;

/** What a young has to have before it may leave, as the API names it. */
public enum LeavingReason {
    AGE,
    SHEDS,
    MEALS,
    LAST_MEAL,
    MASS,
    HEALTH,
    SEX,
    PHOTOGRAPH;

    static LeavingReason of(String name) {
        return valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
    }
}
