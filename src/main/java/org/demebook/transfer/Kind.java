package org.demebook.transfer;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** Why an animal changes hands. In JSON lower-case words with a hyphen. */
public enum Kind {
    SALE,
    GIFT,
    EXCHANGE,
    /** The holder changes, the owner stays. */
    BREEDING_LOAN,
    /** Back to the owner. */
    LOAN_RETURN;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Kind parse(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException(
                        "Write " + Arrays.stream(values()).map(Kind::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether the animal becomes the receiver's own. */
    public boolean changesOwner() {
        return this != BREEDING_LOAN && this != LOAN_RETURN;
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<Kind> {
        Column() {
            super(Kind::word, Kind::parse);
        }
    }
}
