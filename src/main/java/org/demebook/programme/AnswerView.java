package org.demebook.programme;

import java.time.LocalDate;
import java.util.UUID;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * What the reader's side answered to a litter.
 *
 * @param reason absent of an acceptance
 * @param answeredOn the day, UTC
 * @param state what both keepers answered, together
 */
@ShownTo(ShownTo.Whom.WRITER_AND_HOLDER)
public record AnswerView(
        UUID litter, Answer answer, @Nullable AnswerReason reason, LocalDate answeredOn, LitterState state) {}
