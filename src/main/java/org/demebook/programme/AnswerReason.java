package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** Why a keeper does not accept. In JSON lower-case words with a hyphen. */
public enum AnswerReason {
    ANIMAL_DEAD(Answer.CANNOT),
    ANIMAL_GONE(Answer.CANNOT),
    ANIMAL_ILL(Answer.CANNOT),
    NO_ROOM(Answer.CANNOT),
    PAIRED_ALREADY(Answer.CANNOT),
    RESTS(Answer.LATER),
    TEST_DUE(Answer.LATER),
    IN_QUARANTINE(Answer.LATER),
    NOT_READY(Answer.LATER),
    OWN_PLANS(Answer.DECLINE),
    TOO_FAR(Answer.DECLINE),
    BORDER(Answer.DECLINE),
    ANOTHER_PARTNER(Answer.DECLINE),
    NO_REASON(Answer.DECLINE);

    private final Answer answer;

    AnswerReason(Answer answer) {
        this.answer = answer;
    }

    /** The answer that it goes with. */
    public Answer answer() {
        return answer;
    }

    boolean isFor(Answer said) {
        return answer == said;
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static AnswerReason parse(String word) {
        return Arrays.stream(values())
                .filter(value -> value.word().equals(word))
                .findAny()
                .orElseThrow(() -> new IllegalArgumentException("Write "
                        + Arrays.stream(values()).map(AnswerReason::word).collect(Collectors.joining(", "))));
    }

    @JsonValue
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
