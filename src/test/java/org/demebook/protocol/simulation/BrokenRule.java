package org.demebook.protocol.simulation;

/** An invariant of the protocol does not hold. */
final class BrokenRule extends AssertionError {
    private static final long serialVersionUID = 1;

    private final String rule;

    BrokenRule(String rule, String message) {
        super(message);
        this.rule = rule;
    }

    /** Such as {@code I4}. */
    String rule() {
        return rule;
    }
}
