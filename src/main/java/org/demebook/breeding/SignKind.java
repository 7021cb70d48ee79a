package org.demebook.breeding;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What can be seen of a female's breeding cycle. */
public enum SignKind {
    COPULATION,
    /** The swelling of the ova in mid-body. */
    OVULATION,
    POST_OVULATION_SHED,
    LAYING,
    LABOUR_STARTED,
    LABOUR_FINISHED;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static SignKind parse(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.word().equals(word.strip().toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "Write " + Arrays.stream(values()).map(SignKind::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** In a sentence. */
    String spoken() {
        return word().replace('-', ' ').replace("post ovulation", "post-ovulation");
    }

    boolean isLabour() {
        return this == LABOUR_STARTED || this == LABOUR_FINISHED;
    }
}
