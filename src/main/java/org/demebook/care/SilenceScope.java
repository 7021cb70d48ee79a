package org.demebook.care;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** How far a silence goes. In JSON lower-case words with a hyphen. */
public enum SilenceScope {
    /** This one task. */
    TASK,
    /** Every task of the kind for this animal. */
    KIND_OF_ANIMAL,
    /** Every task of the kind in the collection. */
    KIND;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static SilenceScope parse(String word) {
        return Arrays.stream(values())
                .filter(scope -> scope.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("Write "
                        + Arrays.stream(values()).map(SilenceScope::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<SilenceScope> {
        Column() {
            super(SilenceScope::word, SilenceScope::parse);
        }
    }
}
