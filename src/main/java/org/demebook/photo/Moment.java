package org.demebook.photo;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Locale;
import org.demebook.notation.TextColumn;

/** When a litter was photographed: as it was found, or after young and ova were taken apart. */
public enum Moment {
    BEFORE_SEPARATION,
    AFTER_SEPARATION;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Moment parse(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "before-separation" -> BEFORE_SEPARATION;
            case "after-separation" -> AFTER_SEPARATION;
            default -> throw new IllegalArgumentException("Write before-separation or after-separation");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<Moment> {
        Column() {
            super(Moment::word, Moment::parse);
        }
    }
}
