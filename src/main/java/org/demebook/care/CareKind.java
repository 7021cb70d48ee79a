package org.demebook.care;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import jakarta.persistence.Converter;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.demebook.notation.TextColumn;

/** What a care task is about; one can silence all of a kind. In JSON lower-case words with a hyphen. */
public enum CareKind {
    /** A birth, a laying or a hatching, from the first likely day to the last. */
    DUE_WINDOW,
    /** From here on a birth would be early, but has been seen. */
    EARLY_BIRTH,
    /** The likely days begin. */
    BIRTH_LIKELY,
    /** The likely days are over. */
    BIRTH_OVERDUE,
    /** Labour has gone on for long. */
    LABOUR_CHECK,
    INCUBATION_CHECK,

    FIRST_SHED_CHECK,
    SEPARATION,
    FIRST_MEAL,
    NEXT_MEAL,
    WEIGHING,
    BEDDING,
    PHOTOGRAPH,

    /** The dam's first meal after a birth. */
    RECOVERY_MEAL,
    /** The dam's mass some weeks after a birth. */
    RECOVERY_WEIGHING,

    TEST_BEFORE_PAIRING,
    QUARANTINE_END,

    /** The plan in force proposes a litter, and its keeper did not answer yet. */
    SEASON_ANSWER,
    /** The day of pairing of a litter that both keepers accepted. */
    SEASON_PAIRING,
    /** Somebody asks for an animal, and its keeper did not answer yet. */
    APPROACH_ANSWER,

    /** What is shared with others ends soon. */
    GRANT_RENEWAL,

    /** Written down by the keeper. */
    OWN;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static CareKind parse(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException(
                        "Write " + Arrays.stream(values()).map(CareKind::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Whether nature sets its day, so that no keeper moves it. */
    public boolean isOfABirth() {
        return switch (this) {
            case DUE_WINDOW, EARLY_BIRTH, BIRTH_LIKELY, BIRTH_OVERDUE, LABOUR_CHECK -> true;
            case INCUBATION_CHECK,
                    FIRST_SHED_CHECK,
                    SEPARATION,
                    FIRST_MEAL,
                    NEXT_MEAL,
                    WEIGHING,
                    BEDDING,
                    PHOTOGRAPH,
                    RECOVERY_MEAL,
                    RECOVERY_WEIGHING,
                    TEST_BEFORE_PAIRING,
                    QUARANTINE_END,
                    SEASON_ANSWER,
                    SEASON_PAIRING,
                    APPROACH_ANSWER,
                    GRANT_RENEWAL,
                    OWN -> false;
        };
    }

    @Converter(autoApply = true)
    static class Column extends TextColumn<CareKind> {
        Column() {
            super(CareKind::word, CareKind::parse);
        }
    }
}
