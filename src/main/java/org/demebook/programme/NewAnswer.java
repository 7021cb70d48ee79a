package org.demebook.programme;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import org.demebook.notation.Words;
import org.jspecify.annotations.Nullable;

/**
 * An answer to a litter that the plan in force proposes. To accept is to consent to what both sides learn when the other accepts
 * too: for twelve months they may read number and whereabouts of this animal.
 *
 * @param answer {@code accept}; {@code cannot}: the animal cannot breed in this season; {@code later}: not in this season;
 *     {@code decline}: not this pair
 * @param reason of {@code cannot}: {@code animal-dead} to {@code paired-already}; of {@code later}: {@code rests} to {@code
 *     not-ready}; of {@code decline}: {@code own-plans} to {@code no-reason}; of {@code accept} none
 * @param note for the coordinators, who alone read it
 */
public record NewAnswer(
        @NotNull Answer answer,

        @Nullable AnswerReason reason,

        @Nullable @Size(max = 500) String note) {

    /** The note as it is kept. */
    @Nullable
    String words() {
        return Words.orNull(note);
    }

    boolean hasItsReason() {
        return answer == Answer.ACCEPT ? reason == null : reason != null && reason.isFor(answer);
    }
}
