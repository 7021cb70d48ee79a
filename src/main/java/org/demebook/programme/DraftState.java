package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What is being done about a draft, or was. In JSON a lower-case word. */
public enum DraftState {
    WAITING,
    COMPUTING,
    READY,
    /** Somebody stopped it; the best plan so far is there, if there was one. */
    STOPPED,
    /** No plan keeps all constraints. */
    IMPOSSIBLE,
    FAILED;

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public boolean isOver() {
        return this != WAITING && this != COMPUTING;
    }
}
