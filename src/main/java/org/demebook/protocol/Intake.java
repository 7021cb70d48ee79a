package org.demebook.protocol;

/**
 * What became of a page.
 *
 * @param taken how many entries
 * @param more whether the journal goes on beyond them
 */
public record Intake(Outcome outcome, int taken, boolean more) {
    public enum Outcome {
        TAKEN,
        NOTHING_NEW,
        /** It answers a question that is not asked any more. */
        STALE,
        /** An alarm says why. */
        REFUSED
    }

    static Intake of(Outcome outcome) {
        return new Intake(outcome, 0, false);
    }
}
