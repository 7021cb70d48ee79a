package org.demebook.web.season;

import java.util.Arrays;
import java.util.List;
import org.demebook.programme.Answer;
import org.demebook.programme.AnswerReason;

/** The reasons for one answer: whoever names a reason has named the answer. */
public record Reasons(Answer answer, List<AnswerReason> reasons) {
    static List<Reasons> all() {
        return Arrays.stream(Answer.values())
                .filter(answer -> answer != Answer.ACCEPT)
                .map(answer -> new Reasons(
                        answer,
                        Arrays.stream(AnswerReason.values())
                                .filter(reason -> reason.answer() == answer)
                                .toList()))
                .toList();
    }
}
