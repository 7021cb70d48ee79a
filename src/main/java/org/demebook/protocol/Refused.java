package org.demebook.protocol;

/** A statement that this node may not make, or not now. Nothing was changed. */
public final class Refused extends RuntimeException {
    public enum Reason {
        /** It was started and has not heard yet from every other node how far its journal went. */
        FENCED,
        /** Its journal has not begun. */
        NOT_OPEN,
        NO_SUCH_TRANSFER,
        /** The transfer has gone on, or ended. */
        TOO_LATE,
        /** That node takes no part in the population. */
        NOT_SEATED,
        NOT_ITS_HOLDER,
        /** Too few nodes named this one as the heir of a gone one. */
        NOT_THE_HEIR,
        FOREIGN_AUTHORITY,
        REPLAYED,
        FALSE_PROOF,
        MALFORMED
    }

    private final Reason reason;

    Refused(Reason reason, String sentence) {
        super(sentence);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
