package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a keeper says to a litter that a plan proposes for an animal of theirs. In JSON lower-case words. */
public enum Answer {
    /** It shall be. */
    ACCEPT,
    /** The animal cannot breed in this season. */
    CANNOT,
    /** Not in this season, and gladly in another. */
    LATER,
    /** Not this pair. */
    DECLINE;

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static Answer parse(String word) {
        return Arrays.stream(values())
                .filter(value -> value.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException(
                        "Write " + Arrays.stream(values()).map(Answer::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
