package org.demebook.protocol;

import java.util.Locale;

/** Why a node gives no entries. */
public final class FeedError extends RuntimeException {
    public enum Reason {
        /** Who asks says that it holds more than there is here. Without a signed head that is no sign that this node was rolled back. */
        CURSOR_FROM_THE_FUTURE,
        NO_SUCH_JOURNAL,
        /** Others carry entries of it, but it is not held here. */
        ONLY_SIGNS_OF_IT,
        /** More at once than a page may hold, or fewer than one. */
        TOO_MANY,
        /** Who asks takes no part in this population. */
        NOT_A_MEMBER;

        /** In answers. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    private final Reason reason;

    public FeedError(Reason reason) {
        super(reason.word());
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
