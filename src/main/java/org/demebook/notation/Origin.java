package org.demebook.notation;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Where an animal came into the world, as far as it is known. In JSON lower-case words with a hyphen. */
public enum Origin {
    WILD_CAUGHT,
    /** Bred by animals in a keeper's care; a litter of a female taken from the wild when already gravid is not. */
    CAPTIVE_BRED,
    UNKNOWN;

    /**
     * Reads what the trade writes, in English or German. Common practice, no source.
     *
     * @throws IllegalArgumentException with a sentence for the keeper; also for what may mean either, such as
     *     captive hatched, captive born or farmed
     */
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Origin parse(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s\\p{Z}\\p{Pd}_]+", "-");
        return switch (word) {
            case "wild-caught", "wc", "w.c.", "wild", "wild-collected", "wildfang", "wf" -> WILD_CAUGHT;
            case "captive-bred",
                    "cb",
                    "c.b.",
                    "cbb",
                    "bred-in-captivity",
                    "captive-bred-and-born",
                    "captive-born-and-bred",
                    "nachzucht",
                    "nz",
                    "dnz",
                    "enz" -> CAPTIVE_BRED;
            case "unknown", "u", "unk", "unk.", "?", "unbekannt" -> UNKNOWN;
            case "captive-hatched",
                    "captive-born",
                    "ch",
                    "c.h.",
                    "farmed",
                    "farm-raised",
                    "farm-bred",
                    "fr",
                    "ranched" ->
                throw new IllegalArgumentException(
                        "This may mean young of a female taken from the wild when already gravid; write captive-bred"
                                + " if both parents were in a keeper's care when they mated, wild-caught if not, or"
                                + " unknown");
            default ->
                throw new IllegalArgumentException(
                        "This does not read as an origin; write wild-caught, captive-bred or unknown");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
