package org.demebook.handover;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** How a sheet stands today. In JSON lower-case words. */
public enum SheetState {
    CURRENT("It is what the register says today."),
    OUTDATED("It was issued by this register, which says something else of the animal today: ask for a fresh sheet."),
    SUPERSEDED("It was issued by this register; a later sheet takes its place."),
    WITHDRAWN("It was issued by this register and withdrawn by who issued it."),
    /** Its words were taken out of this node; their digest stays. */
    ERASED("It was issued by this register, which no longer keeps what it says and cannot compare it."),
    /** What is stored is not what was issued. */
    ALTERED("It is not as it was issued: do not rely on it, and tell the keepers of the register.");

    private final String inWords;

    SheetState(String inWords) {
        this.inWords = inWords;
    }

    public String inWords() {
        return inWords;
    }

    /** Whether it is as it was issued. */
    boolean genuine() {
        return this != ERASED && this != ALTERED;
    }

    @JsonValue
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
