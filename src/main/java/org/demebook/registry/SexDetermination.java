package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.validation.constraints.NotNull;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * How a sex was determined, and how sure that is. Newborn snakes are easily sexed wrong; common practice, no source.
 *
 * @param confidence {@code confirmed} only by DNA or by breeding: giving birth, laying, or siring with DNA
 */
public record SexDetermination(
        @NotNull Method method, @NotNull Confidence confidence) {
    public enum Method {
        /** Depth of the probe in subcaudal scales. */
        PROBING,
        /** Everted in the newborn, by trained hands only. */
        POPPING,
        /** Larger in males: weak evidence. */
        SPURS,
        ULTRASOUND,
        /** A sex-specific marker. */
        DNA,
        /** It gave birth, laid, or sired young. */
        BREEDING,
        LOOKS;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        static Method parse(String word) {
            return SexDetermination.parse(Method.class, word);
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The least sure first. */
    public enum Confidence {
        PRESUMED,
        EXAMINED,
        CONFIRMED;

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        static Confidence parse(String word) {
            return SexDetermination.parse(Confidence.class, word);
        }

        @JsonValue
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public SexDetermination {
        if (confidence == Confidence.CONFIRMED && method != Method.DNA && method != Method.BREEDING) {
            throw new IllegalArgumentException(
                    "A sex is confirmed by dna or by breeding alone; write examined, or presumed, for another method");
        }
    }

    static SexDetermination of(String method, String confidence) {
        return new SexDetermination(Method.parse(method), Confidence.parse(confidence));
    }

    public boolean presumed() {
        return confidence == Confidence.PRESUMED;
    }

    public boolean confirmed() {
        return confidence == Confidence.CONFIRMED;
    }

    private static <E extends Enum<E>> E parse(Class<E> kind, String word) {
        return Arrays.stream(kind.getEnumConstants())
                .filter(value -> value.name().equalsIgnoreCase(word.strip()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("Write one of "
                        + Arrays.stream(kind.getEnumConstants())
                                .map(value -> value.name().toLowerCase(Locale.ROOT))
                                .collect(Collectors.joining(", "))));
    }
}
