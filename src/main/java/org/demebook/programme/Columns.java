package org.demebook.programme;

import jakarta.persistence.Converter;
import org.demebook.notation.TextColumn;

/** How words of this room stand in a column: as they are in JSON. */
final class Columns {
    private Columns() {}

    @Converter(autoApply = true)
    static class OfAnswer extends TextColumn<Answer> {
        OfAnswer() {
            super(Answer::word, Answer::parse);
        }
    }

    @Converter(autoApply = true)
    static class OfAnswerReason extends TextColumn<AnswerReason> {
        OfAnswerReason() {
            super(AnswerReason::word, AnswerReason::parse);
        }
    }
}
