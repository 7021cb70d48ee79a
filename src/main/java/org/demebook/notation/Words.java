package org.demebook.notation;

import org.jspecify.annotations.Nullable;

/** Free text as keepers type it. */
public final class Words {
    private Words() {}

    /** Without the space around it; null when nothing is left. */
    public static @Nullable String orNull(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }
}
