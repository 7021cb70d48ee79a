package org.demebook.planning;

import org.jspecify.annotations.Nullable;

/**
 * That an animal is on hold, for one asker.
 *
 * @param reason what was said; null where the asker may not know it, or nothing was
 */
record OnHold(Basis basis, @Nullable String reason) {
    /** Why it is on hold. */
    enum Basis {
        STATED("stated"),
        /** It has no sire, and nobody said more. */
        NO_SIRE("no-sire"),
        /** It is of another locality or its claim does not hold, or that is so of an ancestor; and nobody said more. */
        LOCALITY("locality");

        private final String word;

        Basis(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    static final OnHold FATHERLESS = new OnHold(Basis.NO_SIRE, null);

    static final OnHold OF_DOUBTFUL_LOCALITY = new OnHold(Basis.LOCALITY, null);

    /** Why it is not proposed. */
    String words() {
        return switch (basis) {
            case NO_SIRE ->
                "on hold: it has no sire, so it carries nothing that its dam lacks; a coordinator may lift the hold";
            case LOCALITY ->
                "on hold: it, or an ancestor, is claimed to be of another locality, or of none that is sure; a coordinator may lift the hold";
            case STATED ->
                reason == null
                        ? "on hold: its holder or a coordinator wants it not bred for now"
                        : "on hold: " + reason;
        };
    }
}
