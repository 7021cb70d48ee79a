package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** Why a keeper does not accept. In JSON lower-case words with a hyphen. */
enum AnswerReason {
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

    boolean isFor(Answer said) {
        return answer == said;
    }

    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    static AnswerReason parse(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    @JsonValue
    String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
