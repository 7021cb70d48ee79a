package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.Locale;
import org.demebook.notation.TextColumn;
import org.demebook.notation.Words;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * Where an animal, or the founders that it descends from, are said to come from, and how surely. Common practice, no source.
 *
 * @param locality in the keeper's words; the population's when nothing is said
 */
public record LocalityClaim(
        @Nullable @Size(max = LONGEST) String locality,
        @NotNull Certainty certainty) {
    public static final int LONGEST = 200;

    /** The surest first. */
    @Schema(name = "LocalityCertainty")
    public enum Certainty {
        /** There is a paper: a permit, a field number, a studbook. */
        DOCUMENTED,
        /** Somebody who should know said so. */
        STATED,
        /** Something speaks against it. */
        DOUBTFUL,
        UNKNOWN;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        public static Certainty parse(String word) {
            return switch (word.strip().toLowerCase(Locale.ROOT)) {
                case "documented" -> DOCUMENTED;
                case "stated" -> STATED;
                case "doubtful" -> DOUBTFUL;
                case "unknown" -> UNKNOWN;
                default -> throw new IllegalArgumentException("Write documented, stated, doubtful or unknown");
            };
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        boolean isWeakerThan(Certainty other) {
            return compareTo(other) > 0;
        }

        /** Whether a locality may be taken as it is said. */
        public boolean holds() {
            return this == DOCUMENTED || this == STATED;
        }

        @Converter(autoApply = true)
        static class Column extends TextColumn<Certainty> {
            Column() {
                super(Certainty::word, Certainty::parse);
            }
        }
    }

    /** With the locality written out. */
    public LocalityClaim in(String ownLocality) {
        var said = Words.orNull(locality);
        return new LocalityClaim(said == null ? ownLocality : said, certainty);
    }

    /** Who registers an animal and says nothing of its locality states that it is of the population's. */
    static LocalityClaim of(@Nullable LocalityClaim stated, String ownLocality) {
        return stated == null ? new LocalityClaim(ownLocality, Certainty.STATED) : stated.in(ownLocality);
    }

    boolean isOfAnother(LocalityClaim other) {
        return !String.valueOf(locality)
                .strip()
                .equalsIgnoreCase(String.valueOf(other.locality).strip());
    }

    String words() {
        return "%s (%s)".formatted(locality, certainty.word());
    }
}
