package org.demebook.programme;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What keepers answered to a plan, for its coordinators. Litters of animals that the reader may not see any more are left out and not
 * counted.
 *
 * @param sides of the litters, two each
 * @param answered how many of them have answered
 * @param share of the sides, in [0, 1]; absent where there is no litter
 * @param litters in the order of the plan
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record AnswersView(
        UUID plan, int sides, int answered, @Nullable Double share, List<Answered> litters) {
    /**
     * @param dam studbook number
     * @param sire likewise
     * @param answers at most one of each side, the dam's first
     */
    public record Answered(
            UUID litter,
            String dam,
            String sire,
            LitterState state,
            @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Said> answers) {}

    /**
     * @param reason absent of an acceptance
     * @param note as its keeper worded it
     * @param answeredOn the day, UTC
     */
    public record Said(
            Side side,
            Answer answer,
            @Nullable AnswerReason reason,
            @Nullable String note,
            LocalDate answeredOn) {}
}
