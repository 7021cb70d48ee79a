package org.demebook.registry;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Locale;
import org.demebook.notation.TextColumn;

/**
 * What two littermates from one sac are to each other. Twins of boids are rare: one case in some 600 litters of <i>Boa
 * constrictor</i>, and one suspected non-identical pair in <i>Chilabothrus angulifer</i> (abstract, about 2022).
 */
public enum TwinKind {
    /** One genome: their kinship is that of an animal with itself, (1 + F) / 2. */
    IDENTICAL,
    /** Perhaps from two ova: linked, and otherwise littermates like any two. */
    UNCLEAR;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static TwinKind parse(String word) {
        return switch (word.strip().toLowerCase(Locale.ROOT)) {
            case "identical" -> IDENTICAL;
            case "unclear" -> UNCLEAR;
            default -> throw new IllegalArgumentException("Write identical or unclear");
        };
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<TwinKind> {
        Column() {
            super(TwinKind::word, TwinKind::parse);
        }
    }
}
