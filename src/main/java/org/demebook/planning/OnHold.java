package org.demebook.planning;

import org.jspecify.annotations.Nullable;

/**
 * That an animal is on hold, for one asker.
 *
 * @param fatherless it has no sire, and nobody said more
 * @param reason what was said; null where the asker may not know it, or nothing was
 */
record OnHold(boolean fatherless, @Nullable String reason) {
    static final OnHold FATHERLESS = new OnHold(true, null);

    /** Why it is not proposed. */
    String words() {
        if (fatherless) {
            return "on hold: it has no sire, so it carries nothing that its dam lacks; a coordinator may lift the hold";
        }
        return reason == null ? "on hold: its holder or a coordinator wants it not bred for now" : "on hold: " + reason;
    }
}
